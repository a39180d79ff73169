import { completionOf, wordBefore } from "../../src/workbench/completion";

describe("the word before the cursor", () => {
  test.each([
    ["=mousse.tirage.sug", "mousse.tirage.sug"],
    ["=1+su", "su"],
    ["=SUM(baseWine_vol", "baseWine_vol"],
    ["=Kühl", "Kühl"],
    ["=log1", "log1"],
    ["=SUM(1,2)", ""],
    ["=SUM(", ""],
    ["=3*2", ""],
    ["", ""],
  ])("of %s is %s", (text, word) => {
    expect(wordBefore(text)).toBe(word);
  });
});

describe("the name that a word stands for", () => {
  const known = ["SUBTOTAL", "SUM", "SUMIF", "wine_a", "wine"].map((name) => ({ name }));
  const name = (word: string, picked: string) => completionOf(word, picked, known)?.name;

  test("is the first that begins so", () => {
    expect(name("su", "")).toBe("SUBTOTAL");
  });
  test("is the one picked in the list, if it begins so", () => {
    expect(name("su", "SUMIF")).toBe("SUMIF");
  });
  test("is not one picked before more was typed", () => {
    expect(name("sumi", "SUBTOTAL")).toBe("SUMIF");
  });
  test("is itself when typed in full, though the list shows another", () => {
    expect(name("sum", "SUMIF")).toBe("SUM");
    expect(name("Wine", "wine_a")).toBe("wine");
  });
  test("is none where nothing begins so, or nothing is typed", () => {
    expect(name("suz", "SUM")).toBeUndefined();
    expect(name("", "SUM")).toBeUndefined();
  });
});

import { completionOf, wordAt, type Piece } from "../../src/workbench/completion";

describe("the word at the cursor", () => {
  const pieces = (...texts: string[]): Piece[] =>
    texts.map((text) => ({ text, name: /\p{L}/u.test(text) && !text.includes('"') }));
  const at = (cursor: number, ...texts: string[]) => wordAt(pieces(...texts), cursor)?.text;

  test("is the name that ends there, with where it stands", () => {
    expect(wordAt(pieces("=", "1", "+", "mousse.tirage.su"), 19)).toEqual({
      text: "mousse.tirage.su",
      from: 3,
      to: 19,
    });
  });
  test("is the whole name where the cursor is inside it", () => {
    expect(at(2, "=", "sum", "(", "1", ")")).toBe("sum");
    expect(at(4, "=", "sum", "(", "1", ")")).toBe("sum");
  });
  test("leaves spaces around it where they are", () => {
    expect(wordAt(pieces("=", "1", "+", "  su "), 7)).toEqual({ text: "su", from: 5, to: 7 });
  });
  test("is none before it, after a bracket, in a number or a text, or beyond the end", () => {
    expect(at(1, "=", "sum")).toBeUndefined();
    expect(at(5, "=", "sum", "(", "1", ")")).toBeUndefined();
    expect(at(6, "=", "sum", "(", "1", ")")).toBeUndefined();
    expect(at(4, "=", '"su"')).toBeUndefined();
    expect(at(9, "=", "sum")).toBeUndefined();
    expect(wordAt([], 0)).toBeUndefined();
  });
  test("is none in what is not a name alone", () => {
    expect(at(4, "=", "-su")).toBeUndefined();
    expect(at(11, "=", "Scratch!su")).toBeUndefined();
    expect(
      wordAt(
        [
          { text: "=", name: false },
          { text: "log1", name: false },
        ],
        5,
      ),
    ).toBeUndefined();
  });
});

describe("the name that a word stands for", () => {
  const known = ["SUBTOTAL", "SUM", "SUMIF", "wine_a", "wine"].map((name) => ({ name }));
  const name = (word: string, line?: string, picked = false) =>
    completionOf(word, line === undefined ? undefined : { name: line, picked }, known)?.name;

  test("is the first that begins so", () => {
    expect(name("su")).toBe("SUBTOTAL");
  });
  test("is the one that stands out in the list, if it begins so", () => {
    expect(name("su", "SUMIF")).toBe("SUMIF");
  });
  test("is not one that stood out before more was typed", () => {
    expect(name("sumi", "SUBTOTAL")).toBe("SUMIF");
    expect(name("sumi", "SUBTOTAL", true)).toBe("SUMIF");
  });
  test("is itself when typed in full, unless another is picked", () => {
    expect(name("sum")).toBe("SUM");
    expect(name("Wine", "wine_a")).toBe("wine");
    expect(name("sum", "SUMIF")).toBe("SUM");
    expect(name("sum", "SUMIF", true)).toBe("SUMIF");
  });
  test("is none where nothing begins so", () => {
    expect(name("suz", "SUM", true)).toBeUndefined();
  });
});

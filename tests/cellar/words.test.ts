import { isoFromSerial, serialFromDate, serialFromIso } from "../../src/cellar/ageing";
import { domains, isWithin, rangeText, within, type Domain } from "../../src/cellar/domains";
import { fold, matcher } from "../../src/cellar/matching";
import { Refusal, isRefusal, unanswerable, wordGiven, wordNumber } from "../../src/cellar/refusal";
import { designationNamed } from "../../src/cellar/rules/designations";
import { sourceText, commonPractice, source } from "../../src/cellar/rules/source";
import { bandOfTerm } from "../../src/cellar/sweetness";
import { expectRefusal } from "./refusing";

describe("matching", () => {
  test.each([
    ["  Extra-Brut ", "extra brut"],
    ["DOSAGE ZÉRO", "dosage zero"],
    ["demi  -  sec", "demi sec"],
    ["cre\u0301mant", "cremant"],
    ["\u00a0brut\u00a0", "brut"],
    ["", ""],
  ])("%j folds to %j", (text, folded) => expect(fold(text)).toBe(folded));

  test("the first entry with such a word, or a refusal with all that is known", () => {
    const list = [
      { id: 1, words: ["Un", "Uno"] },
      { id: 2, words: ["Deux", "un"] },
    ];
    const found = matcher(list, (entry) => entry.words);
    const match = (given: unknown) => found(given, "which").id;
    expect(match("UNO")).toBe(1);
    expect(match("un")).toBe(1);
    expect(match(" deux")).toBe(2);
    const known = { argument: "which", remedy: /^give one of: Un, Uno, Deux, un$/u, kind: "domain" } as const;
    for (const given of ["trois", "", null, undefined, 1, true, ["un"], {}])
      expectRefusal(() => match(given), { ...known, given });
  });

  test("a part of a word, or more than it, is no match", () => {
    expect(() => bandOfTerm("bru", "EU", "term")).toThrow(/term is "bru"; give one of/u);
    expect(() => designationNamed("Cava Reservas", "designation")).toThrow(/Cava Reserva, /u);
  });
});

describe("refusals", () => {
  test.each([
    [undefined, "blank"],
    [null, "blank"],
    ["", "blank"],
    [0.1 + 0.2, "0.30000000000000004"],
    [-0, "0"],
    [1e21, "1e+21"],
    [NaN, "not a finite number"],
    [Infinity, "not a finite number"],
    [true, "TRUE"],
    [false, "FALSE"],
    ["brut", '"brut"'],
    ["x".repeat(41), `"${"x".repeat(40)}…"`],
    [["a"], "a range or list"],
    [{}, "not a number or text"],
  ])("%p is quoted back as %s", (given, words) => expect(wordGiven(given)).toBe(words));

  test("numbers to seven digits", () => expect(wordNumber(1 / 3)).toBe("0.3333333"));

  test("under the name by which the user knows it", () => {
    const refusal = unanswerable("dose_gL", 5, "give more").renamed("tirage.dose_gL");
    expect(refusal.message).toBe("tirage.dose_gL is 5; give more");
    expect(refusal.kind).toBe("unanswerable");
    expect(unanswerable("a", 5, "give more").renamed("b", "6 g").message).toBe('b is "6 g"; give more');
  });

  test("known also from another copy of the module, and nothing else is", () => {
    expect(isRefusal(unanswerable("a", 1, "b"))).toBe(true);
    expect(isRefusal(Object.assign(new Error(), { name: "Refusal", remedy: "", kind: "domain" }))).toBe(true);
    for (const other of [new Error("Refusal"), null, undefined, { name: "Refusal", remedy: "", kind: "" }])
      expect(isRefusal(other)).toBe(false);
    expect(unanswerable("a", 1, "b")).toBeInstanceOf(Refusal);
  });
});

describe("domains", () => {
  const named: [string, Domain][] = Object.entries(domains);

  test.each(named)("%s: both bounds, and just beyond them", (_name, domain) => {
    // the smallest step that a whole-number rule leaves room for
    const step = domain.whole ? 1 : 1e-9 * Math.max(1, Math.abs(domain.max));
    expect(domain.min).toBeLessThan(domain.max);
    expect(isWithin(domain, domain.min)).toBe(!domain.aboveMin);
    expect(isWithin(domain, domain.max)).toBe(!domain.belowMax);
    expect(isWithin(domain, domain.min - step)).toBe(false);
    expect(isWithin(domain, domain.max + step)).toBe(false);
    expect(isWithin(domain, domain.min + step)).toBe(true);
    expect(isWithin(domain, domain.max - step)).toBe(true);
    expect(isWithin(domain, domain.min + step / 2)).toBe(!domain.whole);
    for (const never of [NaN, Infinity, -Infinity]) expect(isWithin(domain, never)).toBe(false);
  });

  test("ranges in words", () => {
    expect(rangeText(domains.temperatureC)).toBe("-5 to 45 °C");
    expect(rangeText(domains.volumeHl)).toBe("more than 0, at most 100000 hL");
    expect(rangeText(domains.percentBelow100)).toBe("0 to less than 100 %");
    expect(rangeText(domains.bottles)).toBe("a whole number, 0 to 100000000 bottles");
    expect(rangeText({ what: "", unit: "", min: 0, max: 1, aboveMin: true, belowMax: true })).toBe(
      "more than 0, less than 1",
    );
  });

  test.each([85, NaN, "12", true, null, undefined, "", [12], {}])("%p is no temperature", (given) => {
    expectRefusal(() => within(domains.temperatureC, given, "temperature_C"), {
      argument: "temperature_C",
      given,
      remedy: /^give -5 to 45 °C$/u,
      kind: "domain",
    });
  });
});

describe("dates in files", () => {
  test.each(["2024-02-29", "1900-03-01", "9999-12-31"])("%s there and back", (iso) =>
    expect(isoFromSerial(serialFromIso(iso)!)).toBe(iso),
  );
  test.each([
    "2023-02-29",
    "2024-13-01",
    "2024-00-10",
    "2024-4-14",
    "14.4.2024",
    "0050-01-01",
    " 2024-04-14",
  ])("%s is no date", (text) => expect(serialFromIso(text)).toBeUndefined());
  test("2024-04-14", () => expect(serialFromIso("2024-04-14")).toBe(serialFromDate(2024, 4, 14)));
});

test("a source says how sure it is", () => {
  expect(sourceText(source("a text", "memory"))).toBe("a text (memory)");
  expect(sourceText(commonPractice)).toBe("common practice, no source");
});

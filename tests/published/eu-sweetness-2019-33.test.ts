/**
 * Sweetness terms, EU: Delegated Regulation (EU) 2019/33 annex III part A (bounds read in its predecessor and in the
 * German text), g/L of glucose + fructose. The tolerance of 3 g/L is secondary; the words in other languages are
 * from memory.
 */
import { bandOfTerm, permittedTerms, sweetnessMarginGL, sweetnessVerdict } from "../../src/cellar/sweetness";
import { LANGUAGES, sweetnessRules } from "../../src/cellar/rules/sweetness-bands";
import { invertGL } from "../../src/cellar/units";

const terms = (sugar: number, sugarAdded = true) => permittedTerms(invertGL(sugar), sugarAdded, "EU", "en");
const verdict = (term: string, sugar: number, sugarAdded = true) =>
  sweetnessVerdict(bandOfTerm(term, "EU", "term"), invertGL(sugar), sugarAdded);
const JUST = 1e-9;

test.each([
  // brut nature < 3 · extra brut 0 to 6 · brut < 12 · extra dry 12 to 17 · dry 17 to 32 · medium dry 32 to 50 · sweet > 50
  [0, ["extra brut", "brut"]],
  [6, ["extra brut", "brut"]],
  [6 + JUST, ["brut"]],
  [12 - JUST, ["brut"]],
  [12, ["extra dry"]],
  [17 - JUST, ["extra dry"]],
  [17, ["extra dry", "dry"]],
  [17 + JUST, ["dry"]],
  [32 - JUST, ["dry"]],
  [32, ["dry", "medium dry"]],
  [32 + JUST, ["medium dry"]],
  [50, ["medium dry"]],
  [50 + JUST, ["sweet"]],
])("%d g/L, sugar added: %j", (sugar, expected) => expect(terms(sugar)).toEqual(expected));

test.each([
  [0, ["brut nature", "extra brut", "brut"]],
  [3 - JUST, ["brut nature", "extra brut", "brut"]],
  [3, ["extra brut", "brut"]],
  [12, ["extra dry"]],
])("%d g/L, no sugar added: %j", (sugar, expected) => expect(terms(sugar, false)).toEqual(expected));

test.each([
  ["extra brut", 9, 9 + JUST],
  ["brut", 15, 15 + JUST],
  ["extra dry", 9, 9 - JUST],
  ["extra dry", 20, 20 + JUST],
  ["dry", 14, 14 - JUST],
  ["dry", 35, 35 + JUST],
  ["medium dry", 29, 29 - JUST],
  ["medium dry", 53, 53 + JUST],
  ["sweet", 47, 47 - JUST],
])("%s: the analysis may lie 3 g/L off, at %d but not at %d g/L", (term, inside, outside) => {
  expect(verdict(term, inside)).toBe("within tolerance");
  expect(verdict(term, outside)).toBe("not permitted");
});

test("no tolerance lifts the condition that no sugar was added", () => {
  expect(verdict("brut nature", 2)).toBe("not permitted");
  expect(verdict("brut nature", 2, false)).toBe("permitted");
  expect(verdict("brut nature", 4, false)).toBe("within tolerance");
  expect(verdict("brut nature", 4)).toBe("not permitted");
});

test.each([
  // weighed sucrose of 12.0 g/L analyses as 12.6: no brut any more
  ["brut", 9, 3],
  ["brut", 12.6, -0.6],
  ["extra brut", 0, 6],
  ["extra dry", 13, 1],
  ["extra dry", 16.5, 0.5],
  ["extra dry", 11, -1],
  ["sweet", 60, 10],
  ["sweet", 45, -5],
])("%s at %d g/L is %d g/L from its nearer bound", (term, sugar, margin) => {
  expect(sweetnessMarginGL(bandOfTerm(term, "EU", "term"), invertGL(sugar))).toBeCloseTo(margin, 12);
});

test.each([
  ["dosage zéro", 3],
  ["naturherb", 3],
  ["EXTRA HERB", 6],
  ["herb", 12],
  ["extra trocken", 17],
  ["trocken", 32],
  ["asciutto", 32],
  ["seco", 32],
  ["abboccato", 50],
  ["meio seco", 50],
  ["semi-seco", 50],
  ["doux", null],
  ["dolce", null],
])("%s has the upper bound %p (memory)", (term, high) => {
  expect(bandOfTerm(term, "EU", "term").high).toBe(high);
});

test("seven bands, each with a word in each of six languages, and no word with two meanings", () => {
  expect(sweetnessRules.EU.bands).toHaveLength(7);
  expect(LANGUAGES).toEqual(["en", "fr", "de", "es", "it", "pt"]);
  const bandsOfWord = new Map<string, Set<number>>();
  sweetnessRules.EU.bands.forEach((band, index) =>
    Object.values(band.terms)
      .flat()
      .forEach((word) => bandsOfWord.set(word, (bandsOfWord.get(word) ?? new Set()).add(index))),
  );
  expect(bandsOfWord.size).toBeGreaterThan(20);
  for (const [, bands] of bandsOfWord) expect(bands.size).toBe(1);
});

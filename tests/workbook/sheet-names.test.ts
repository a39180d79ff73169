/**
 * Names of sheets are legal in every program: at most 31 characters, none of : \ / ? * [ ], no apostrophe at either
 * end, and none that differs from another by case alone.
 */
import { freeName, freeSheetName } from "../../src/workbook/sheet-names";

const letters = (count: number) => "abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz".slice(0, count);

test.each<[string, string, readonly string[], string]>([
  ["free", "Notes", [], "Notes"],
  ["taken in another case", "NOTES", ["nOtEs"], "NOTES (2)"],
  ["the copy is taken in another case", "Notes", ["notes", "NOTES (2)"], "Notes (3)"],
  ["only the copy is there", "Notes", ["Notes (2)"], "Notes"],
  ["just short enough", letters(31), [], letters(31)],
  ["one too long", letters(32), [], `${letters(30)}…`],
  ["a number takes its four characters", letters(31), [letters(31)], `${letters(26)}… (2)`],
  ["cut at a space", `${letters(29)} xyz`, [], `${letters(29)}…`],
  ["cut at an apostrophe", `${letters(28)}'' xyz`, [], `${letters(28)}…`],
  ["an apostrophe inside stays", `d'${letters(40)}`, [], `d'${letters(28)}…`],
  ["a pair of code units that would be split", `${letters(29)}🍾xyz`, [], `${letters(29)}…`],
  ["a pair that just fits", `${letters(28)}🍾xyz`, [], `${letters(28)}🍾…`],
])("%s", (_name, plain, taken, expected) => {
  expect(freeName(plain, taken)).toBe(expected);
  expect(expected.length).toBeLessThanOrEqual(31);
});

test("ten copies and more: two figures take another character", () => {
  const taken: string[] = [];
  for (let count = 1; count <= 10; count++) taken.push(freeName(letters(31), taken));
  expect(taken.at(-2)).toBe(`${letters(26)}… (9)`);
  expect(taken.at(-1)).toBe(`${letters(25)}… (10)`);
});

test.each([..."[]:*?/\\\u0000\u001f\t\n"])("%j is none of a sheet's name", (forbidden) =>
  expect(freeSheetName("Plan", `a${forbidden}b`, [])).toBe("Plan · a b"),
);

test.each([
  ["several in a row are one space", "a:/?b", "Plan · a b"],
  ["spaces at both ends go", "  a  b ", "Plan · a b"],
  ["several apostrophes at the end", "a'''", "Plan · a"],
  ["apostrophes elsewhere stay", "'a' b", "Plan · 'a' b"],
  ["a space before the apostrophe goes with it", "a '", "Plan · a"],
  ["nothing left of the name", "'", "Plan ·"],
])("%s", (_name, batch, expected) => expect(freeSheetName("Plan", batch, [])).toBe(expected));

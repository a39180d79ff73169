/**
 * Numbers as typed.
 */
import { shownNumber, typedNumber } from "../../src/taskpane/typed-numbers";

test.each([
  ["10.6", 10.6],
  ["10,6", 10.6],
  [" 60 ", 60],
  ["-25", -25],
  ["−25", -25],
  ["0", 0],
  ["1234", 1234],
  ["1.25", 1.25],
  ["0,500", 0.5],
  ["0.125", 0.125],
  ["1250", 1250],
])("%j is %d", (typed, number) => expect(typedNumber(typed)).toBe(number));

test("nothing typed is blank", () => expect(typedNumber("  ")).toBeNull());

test.each([
  "1,000",
  "1.000",
  "12.500",
  "35.000",
  "1,234,567",
  "1.234,5",
  "ten",
  "1e5",
  "0x10",
  "5 bar",
  "--5",
  "Infinity",
  "NaN",
  "1/2",
])("%j is not guessed at: the text itself goes on to be refused", (typed) =>
  expect(typedNumber(typed)).toBe(typed.trim()),
);

test("a number is shown short", () => {
  expect(shownNumber(10 / 3)).toBe("3.33333");
  expect(shownNumber(60)).toBe("60");
  expect(shownNumber(0.012)).toBe("0.012");
});

test("with the reader's own mark for the decimals, and is read again", () => {
  for (const [locale, shown] of [
    ["en-US", "13.208"],
    ["fr-FR", "13,208"],
    ["de-DE", "13,208"],
  ] as const)
    expect(shownNumber(13.208, locale)).toBe(shown);
  expect(typedNumber(shownNumber(5.25, "fr-FR"))).toBe(5.25);
});

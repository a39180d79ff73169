/**
 * What an input cell accepts is what its field accepts: bounds, whole numbers, options, lengths, days, blanks.
 */
import { choice, date, number, optional, text } from "../../src/cellar/batch/field-kinds";
import type { Domain } from "../../src/cellar/domains";
import { validationOf } from "../../src/workbook/validation";

const domain: Domain = { what: "volume", unit: "hL", min: 2, max: 50 };
/** The spreadsheet's number of a day, counted from 30 December 1899. */
const serial = (iso: string) => (Date.parse(iso) - Date.parse("1899-12-30")) / 86_400_000;

test("a number between bounds, which are allowed", () =>
  expect(validationOf(number("Base wine", domain))).toEqual({
    kind: "decimal",
    min: 2,
    max: 50,
    title: "Base wine",
    message: "Give 2 to 50 hL: the number without its unit.",
    allowBlank: false,
  }));

test("a bound that is not allowed is refused, and what anyone types inside of it is not", () => {
  const above = validationOf(number("n", { ...domain, aboveMin: true }));
  const below = validationOf(number("n", { ...domain, belowMax: true }));
  if (above.kind !== "decimal" || below.kind !== "decimal") throw new Error("of another kind");
  expect([above.min > 2, above.min < 2.0001, above.max]).toEqual([true, true, 50]);
  expect([below.max < 50, below.max > 49.9999, below.min]).toEqual([true, true, 2]);
});

test("a count takes whole numbers only", () =>
  expect(validationOf(number("n", { ...domain, whole: true }))).toMatchObject({
    kind: "whole",
    min: 2,
    max: 50,
  }));

test("an optional number may stay blank, within the same bounds", () =>
  expect(validationOf(optional("SO2", domain))).toMatchObject({
    kind: "decimal",
    min: 2,
    max: 50,
    message: "Give 2 to 50 hL, or blank: the number without its unit.",
    allowBlank: true,
  }));

test("a number with something assumed must still be given in the sheet", () =>
  expect(validationOf(number("n", domain, { blank: 3 })).allowBlank).toBe(false));

test("text of any length up to its own, or none", () =>
  expect(validationOf(text("Lot", { maxLength: 60 }))).toEqual({
    kind: "textLength",
    max: 60,
    title: "Lot",
    message: "Give text of at most 60 characters.",
    allowBlank: true,
  }));

describe("a choice", () => {
  const field = choice("Set by", ["pressure", "dose"], { blank: "dose" });
  const listed = {
    kind: "list",
    options: ["pressure", "dose"],
    title: "Set by",
    message: "Give one of: pressure, dose.",
    allowBlank: false,
  };
  test("from its options", () => expect(validationOf(field)).toStrictEqual(listed));
  test("from cells that hold them", () => {
    const from = { sheet: "Notes", row: 3, column: 1, lastRow: 4, lastColumn: 1 };
    expect(validationOf(field, from)).toStrictEqual({ ...listed, from });
  });
});

test("a day that every program counts alike, up to the last one", () => {
  const must = validationOf(date("Tirage date"));
  // programs disagree on days before 1 March 1900
  expect(must).toMatchObject({ kind: "date", min: serial("1900-03-01"), max: serial("9999-12-31") });
  expect(must).toMatchObject({ allowBlank: false, message: "Give a date like 2026-04-14." });
  expect(validationOf(date("Disgorged on", { blank: "" })).allowBlank).toBe(true);
});

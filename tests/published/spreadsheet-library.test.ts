/**
 * Compound interest and months against an independent library of spreadsheet functions from the registry (formulajs):
 * FV for money tied up, EDATE for ends of periods.
 */
import * as formulajs from "@formulajs/formulajs";
import { addMonths, isoFromSerial, serialFromDate } from "../../src/cellar/ageing";
import { labelAlcohol } from "../../src/functions/label";
import { costHolding, costPacks } from "../../src/functions/cost";
import { tirageBottles } from "../../src/functions/tirage";
import { expectRelative } from "../support/relative";

test.each([
  [1000, 24, 5],
  [36_000, 22, 4.5],
  [1, 600, 100],
  [250, 1, 0.5],
])("%d for %d months at %d % a year: future value less the amount", (amount, months, annualPct) => {
  // a monthly rate that makes the annual one when compounded
  const monthly = (1 + annualPct / 100) ** (1 / 12) - 1;
  const future = -(formulajs.FV(monthly, months, 0, amount, 0) as number);
  expectRelative(costHolding(amount, months, annualPct), future - amount, 1e-9);
});

test("ends of periods: a date in each month of a leap year and of a common one, for 1 to 60 months", () => {
  for (const year of [2024, 2025]) {
    for (let month = 1; month <= 12; month++) {
      for (const day of [1, 28, 29, 30, 31]) {
        const start = serialFromDate(year, month, day);
        if (isoFromSerial(start).slice(5, 7) !== String(month).padStart(2, "0")) continue;
        for (const months of [1, 2, 6, 9, 12, 18, 36, 60]) {
          const end = formulajs.EDATE(new Date(year, month - 1, day), months) as unknown as Date;
          const theirs = serialFromDate(end.getFullYear(), end.getMonth() + 1, end.getDate());
          expect([isoFromSerial(start), months, addMonths(start, months)]).toEqual([
            isoFromSerial(start),
            months,
            theirs,
          ]);
        }
      }
    }
  }
});

test("rounding up, down and to halves", () => {
  for (const [need, pack] of [
    [6600, 1000],
    [8245, 1218],
    [1, 25],
    [25, 25],
    [25.001, 25],
  ] as const) {
    expect(costPacks(need, pack)).toBe(formulajs.ROUNDUP(need / pack, 0));
  }
  for (const hl of [0.75, 7.5, 62.34, 19.29]) {
    expect(tirageBottles(hl)).toBe(formulajs.ROUNDDOWN((hl * 100_000) / 750, 0));
  }
  for (const vol of [11.24, 11.26, 11.74, 11.76, 12])
    expect(labelAlcohol(vol)).toBe(formulajs.MROUND(vol, 0.5));
});

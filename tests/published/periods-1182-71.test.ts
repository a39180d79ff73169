/**
 * Periods in months: Regulation (EEC, Euratom) 1182/71 art. 3 (memory): they end on the same day of the last month, or on
 * its last day. Dates as spreadsheet serials, 1 = 1 January 1900 with the non-existent 29 February 1900.
 */
import { addMonths, dateFromSerial, isoFromSerial, serialFromDate } from "../../src/cellar/ageing";

const isLeap = (year: number) => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
const daysIn = (year: number, month: number) =>
  month === 2 ? (isLeap(year) ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;

/** The calendar by counting, without the platform's dates: serial 61 is 1 March 1900. */
function serialByCounting(year: number, month: number, day: number): number {
  let serial = 61 - 1;
  for (let y = 1900; y < year; y++) serial += isLeap(y) ? 366 : 365;
  for (let m = 1; m < month; m++) serial += daysIn(year, m);
  return serial - 31 - 28 + day;
}

function laterByHand(year: number, month: number, day: number, months: number): number {
  const count = year * 12 + (month - 1) + months;
  const [toYear, toMonth] = [Math.floor(count / 12), (count % 12) + 1];
  return serialByCounting(toYear, toMonth, Math.min(day, daysIn(toYear, toMonth)));
}

test.each([
  [[2024, 5, 31], 9, "2025-02-28"],
  [[2023, 5, 31], 9, "2024-02-29"],
  [[2024, 2, 29], 12, "2025-02-28"],
  [[2024, 2, 29], 48, "2028-02-29"],
  [[2024, 8, 31], 1, "2024-09-30"],
  [[2024, 12, 31], 2, "2025-02-28"],
  [[2099, 11, 30], 3, "2100-02-28"],
  [[2024, 5, 31], 0, "2024-05-31"],
  [[2025, 2, 28], 9, "2025-11-28"],
] as const)("%j and %d months: %s", ([year, month, day], months, iso) => {
  expect(isoFromSerial(addMonths(serialFromDate(year, month, day), months))).toBe(iso);
});

test("serials that every spreadsheet knows", () => {
  expect(serialFromDate(1900, 3, 1)).toBe(61);
  expect(serialFromDate(1970, 1, 1)).toBe(25_569);
  expect(serialFromDate(2000, 1, 1)).toBe(36_526);
  expect(serialFromDate(9999, 12, 31)).toBe(2_958_465);
});

test("every day from 1900 to 2112, there and back", () => {
  let serial = 61;
  let wrong = 0;
  for (let year = 1900; year <= 2112; year++)
    for (let month = year === 1900 ? 3 : 1; month <= 12; month++)
      for (let day = 1; day <= daysIn(year, month); day++, serial++) {
        const back = dateFromSerial(serial);
        const same = back.year === year && back.month === month && back.day === day;
        if (!same || serialFromDate(year, month, day) !== serial) wrong++;
      }
  expect(wrong).toBe(0);
  // 213 years of 365 days, 52 leap days (1900 and 2100 have none), less January and February 1900
  expect(serial - 61).toBe(213 * 365 + 52 - 59);
});

test("every day of 2023 to 2028 and of 2096 to 2104, for each of 13 periods", () => {
  let compared = 0;
  const wrong: string[] = [];
  for (const [first, last] of [
    [2023, 2028],
    [2096, 2104],
  ] as const)
    for (let year = first; year <= last; year++)
      for (let month = 1; month <= 12; month++)
        for (let day = 1; day <= daysIn(year, month); day++)
          for (const months of [0, 1, 2, 9, 11, 12, 15, 18, 24, 30, 36, 60, 600]) {
            compared++;
            const serial = serialByCounting(year, month, day);
            if (addMonths(serial, months) !== laterByHand(year, month, day, months))
              wrong.push(`${year}-${month}-${day} + ${months}`);
          }
  expect(wrong).toEqual([]);
  expect(compared).toBeGreaterThan(70_000);
});

test("the time of day is dropped", () => {
  expect(addMonths(serialFromDate(2024, 5, 31) + 0.75, 9)).toBe(serialFromDate(2025, 2, 28));
});

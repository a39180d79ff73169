/**
 * Look-ups of regulation say which row was used, its bounds, its source and mark, and the day it was recorded.
 */
import { RECORDED } from "../../src/cellar/rules/source";
import { explain } from "../../src/explain/explain";
import { citedText } from "../../src/explain/sources";
import type { Working } from "../../src/explain/types";

const working = (id: string, ...args: unknown[]) => explain(id, args) as Working;
const said = ({ steps }: Working) =>
  steps.filter(({ argument }) => argument === undefined).map(({ what, shown }) => `${what}: ${shown}`);

test.each([
  ["SWEETNESS.TERM", [12], /EU\) 2019\/33 annex III part A \(read/u],
  ["SWEETNESS.TERMS", [5], /EU\) 2019\/33/u],
  ["SWEETNESS.CHECK", ["brut", 12, true, "OIV"], /OIV Code/u],
  ["SWEETNESS.MARGIN", ["brut", 9], /EU\) 2019\/33/u],
  ["SWEETNESS.LIMITS", ["extra dry"], /EU\) 2019\/33/u],
  ["PRESSURE.CLASS", [5], /1308\/2013 annex VII part II \(memory/u],
  ["PRESSURE.CLASS", [5, 750, "CA-QC"], /Québec/u],
  ["AGEING.MINIMUM", ["Crémant"], /trade body \(secondary/u],
  ["AGEING.EARLIEST", [45_443, "Sekt b.A."], /German wine law.*\(memory/u],
  ["AGEING.DESIGNATIONS", [], /trade body \(secondary/u],
  ["LABEL.ALCOHOLCHECK", [12, 11, "US"], /27 CFR.*\(secondary/u],
  ["DOSAGE.TRIAL", [750, 0, 600, 8], /EU\) 2019\/33/u],
] as const)("%s%p cites its row and the day", (id, args, text) => {
  const cited = working(id, ...args).sources.map(citedText);
  const row = cited.find((each) => text.test(each));
  expect(row).toContain(`recorded ${RECORDED}`);
});

test("the sweetness row, its bounds and why drier ones do not hold", () => {
  expect(said(working("SWEETNESS.TERM", 12))).toEqual([
    'Row "brut nature": less than 3 g/L, only where no sugar was added; the wine has 12 g/L: does not hold',
    'Row "extra brut": at most 6 g/L; the wine has 12 g/L: does not hold',
    'Row "brut": less than 12 g/L; the wine has 12 g/L: does not hold',
    'Row "extra dry": 12 to 17 g/L, both included; the wine has 12 g/L: holds',
    "The first row that holds, in that language: extra dry",
  ]);
});

test("a term checked: condition, tolerance and verdict", () => {
  expect(said(working("SWEETNESS.CHECK", "brut nature", 2))).toEqual([
    'Row used: "brut nature": less than 3 g/L, only where no sugar was added',
    "The term asks for no sugar added after the second fermentation, and no tolerance lifts that: not met",
    "Tolerance of an analysis, below the low and above the high bound: 3 and 3 g/L",
    "The wine has 2 g/L: not permitted",
  ]);
});

test("the pressure class, also where nothing holds and where a small bottle has its own bound", () => {
  expect(said(working("PRESSURE.CLASS", 2.7))).toEqual([
    'Row "quality sparkling wine": at least 3.5 bar at 20 °C; the wine has 2.7: does not hold',
    'Row "sparkling wine": at least 3 bar at 20 °C; the wine has 2.7: does not hold',
    'Row "semi-sparkling wine": 1 to 2.5 bar at 20 °C; the wine has 2.7: does not hold',
    "No row holds: between classes",
  ]);
  expect(said(working("PRESSURE.CLASS", 3.2, 200))[0]).toBe(
    'Row "quality sparkling wine": at least 3 bar at 20 °C in bottles under 250 mL; the wine has 3.2: holds',
  );
});

test("a date by the last-day rule", () => {
  // 31 May 2024 and nine months: February 2025 has 28 days
  const earliest = working("AGEING.EARLIEST", 45_443, "EU traditional method");
  expect(earliest.steps.at(-1)).toMatchObject({
    what: "9 months from 2024-05-31; the last month has no such day, so on its last",
    shown: "2025-02-28",
  });
});

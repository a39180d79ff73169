/**
 * The table of checks as it is written: every verdict stands out where it is not good, and limits of ours may be typed
 * over.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { CHECK_KEYS } from "../../src/cellar/batch/checks";
import { planSheet } from "../../src/workbook/plan/sheet";
import { sampleInputs } from "../support/samples";
import { cellAt, placeNamed } from "../support/sheet-cells";

const inputs = sampleInputs("oxlip-hill-brut.json");
const sheet = planSheet(inputs, planBatch(inputs), []);
const rowOf = (key: string) => placeNamed(sheet, `plan_check_${key}`)!;

test("each verdict stands out as stop and as look again", () => {
  expect(sheet.highlights.map(({ word, look }) => [word, look])).toEqual([
    ["stop", "bad"],
    ["look again", "doubtful"],
  ]);
  for (const { cells } of sheet.highlights)
    for (const key of CHECK_KEYS) {
      const { row, column } = rowOf(key);
      expect([key, cells.some((cell) => cell.row === row && cell.column === column)]).toEqual([key, true]);
    }
});

const LIMIT = 3;
test("limits by common practice are numbers to type over, those of the rules follow the rules", () => {
  // as common practice has them: 2 g/L, 11.5 and 13 % vol, 103 %, 30 °C, −20 °C, 1 g/L
  const ours = {
    dryness: 2,
    baseAlcohol: 11.5,
    alcoholAfter: 13,
    filled: 103,
    modelRange: 30,
    neckBath: -20,
    termMargin: 1,
  };
  for (const [key, value] of Object.entries(ours)) {
    const { value: limit, formula } = cellAt(sheet, rowOf(key).row, LIMIT)!;
    expect([key, limit, formula]).toEqual([key, value, undefined]);
  }
  for (const key of ["totalSo2", "tirageRise", "labelAlcohol"])
    expect([key, cellAt(sheet, rowOf(key).row, LIMIT)!.formula]).toEqual([
      key,
      expect.stringContaining('"EU"'),
    ]);
  // a verdict that goes by words has no limit
  for (const key of ["yeast", "term", "bottleSize"])
    expect([key, cellAt(sheet, rowOf(key).row, LIMIT)]).toEqual([key, undefined]);
});

test("figures of checks are shown with the same digits as their limits", () => {
  const VALUE = 1;
  for (const [key, format] of [
    ["tirageRise", "#,##0.00"],
    ["filled", "#,##0.0"],
    ["leesMonths", "#,##0"],
  ] as const)
    for (const column of [VALUE, LIMIT])
      expect([key, column, cellAt(sheet, rowOf(key).row, column)!.format]).toEqual([key, column, format]);
});

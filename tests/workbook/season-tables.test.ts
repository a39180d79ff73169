/**
 * The tables of a season, line by line: the parts of the costs, the materials of one's own and the needs that the
 * order is added up from, held against the calculation module and sums written out here.
 */
import { OTHER_KEYS } from "../../src/cellar/batch/materials";
import { batchNeed, orderLines } from "../../src/cellar/season/orders";
import type { Batch } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { sampleBatches } from "../support/samples";
import { lineOf, placeOf, rowSaying, seasonOf, valueOf, workedBatch } from "../support/season-cells";
import { cellAt } from "../support/sheet-cells";
import { situations } from "../support/situations";

const batches: Batch[] = [
  ...sampleBatches(),
  // materials of its own with two names, and what really came of it
  situations()[1]!,
  workedBatch({ actual: { cost: 41_000, bottlesFinished: 13_300 } }),
  workedBatch({ actual: { cost: 9_000.5, bottlesFinished: 120 } }),
];
const sheet = seasonOf(batches);

describe("each table names its batches, line by line", () => {
  const TABLES = [
    ...["Batches", "Costs by their parts, and as they came", "Other materials of each batch"],
    ...["How the calendar comes about", "Needed, spare included", "Pack size, where something is needed"],
    ...["Packs if the batch orders alone", "Cost of those packs", "Needed on"],
  ];
  test.each(TABLES.map((title) => [title]))("%s", (title) => {
    // the first name below the title, and the others after it
    const first = rowSaying(sheet, batches[0]!.inputs.batch.name, rowSaying(sheet, title));
    expect(first - rowSaying(sheet, title)).toBeLessThanOrEqual(2);
    batches.forEach(({ inputs }, index) => {
      const { value, formula } = cellAt(sheet, first + index, 0)!;
      expect([value, formula !== undefined]).toEqual([inputs.batch.name, true]);
    });
  });
});

describe("the costs", () => {
  const first = rowSaying(
    sheet,
    batches[0]!.inputs.batch.name,
    rowSaying(sheet, "Costs by their parts, and as they came"),
  );
  const last = (season: SheetData) => placeOf(season, "season_total_actualFinished");

  test("actual ones stand beside the planned ones, blank where there are none, and are added up", () => {
    const { row, column } = last(sheet);
    expect(row).toBe(first + batches.length);
    const actual = batches.map((_, index) => lineOf(sheet, first + index, column + 1).slice(-2));
    // the samples have none
    expect(actual).toEqual([
      ["", ""],
      ["", ""],
      ["", ""],
      ["", ""],
      [41_000, 13_300],
      [9_000.5, 120],
    ]);
    expect(valueOf(sheet, "season_total_actualCost")).toBe(50_000.5);
    expect(valueOf(sheet, "season_total_actualFinished")).toBe(13_420);
  });

  test("of a batch are all its parts, and the season's parts are all its costs", () => {
    const parts = sheet.names.filter(({ name }) => name.startsWith("season_total_part_"));
    batches.forEach(({ plan }, index) => {
      const own = parts.map(({ column }) => Number(cellAt(sheet, first + index, column)!.value));
      expect(own.reduce((sum, each) => sum + each, 0)).toBeCloseTo(plan.costs.total, 6);
    });
    const all = parts.reduce((sum, { name }) => sum + Number(valueOf(sheet, name)), 0);
    expect(all).toBeCloseTo(Number(valueOf(sheet, "season_total_cost")), 6);
    expect(valueOf(sheet, "season_total_part_tirageLabour")).toBeCloseTo(
      batches.reduce((sum, { plan }) => sum + plan.costs.tirageLabour, 0),
      6,
    );
  });

  test("in two currencies are not added, bottles are", () => {
    const season = seasonOf([
      batches[4]!,
      workedBatch({ batch: { currency: "CHF" }, actual: { bottlesFinished: 9 } }),
    ]);
    const totals = season.names.filter(({ name }) => /^season_total_(part_|actualCost)/.test(name));
    expect(totals.length).toBeGreaterThan(5);
    expect(totals.map(({ name }) => valueOf(season, name))).toEqual(totals.map(() => ""));
    expect(valueOf(season, "season_total_actualFinished")).toBe(13_309);
  });
});

test("what each batch calls its materials of its own, the need and the packs", () => {
  const title = rowSaying(sheet, "Other materials of each batch");
  batches.forEach(({ inputs, plan }, index) =>
    expect(lineOf(sheet, title + 1 + index, 7)).toEqual([
      inputs.batch.name,
      ...OTHER_KEYS.flatMap((key) => [
        inputs.materials[key].name,
        inputs.materials[key].need,
        plan.costs.lines[key].packs,
      ]),
    ]),
  );
  // 1300 and 3 % more in packs of 100; 7.5 in packs of 2
  expect(lineOf(sheet, title + 1 + 3, 7).slice(1)).toEqual(["Dividers", 1300, 14, "Tape", 7.5, 4]);
});

test("needs of each batch: a block for each kind of figure, a column for each line of the order", () => {
  const lines = orderLines(batches.map(({ inputs }) => inputs.batch.bottle_mL));
  const blocks = [
    ["Needed, spare included", "needed"],
    ["Pack size, where something is needed", "pack"],
    ["Packs if the batch orders alone", "packs"],
    ["Cost of those packs", "cost"],
    ["Needed on", "day"],
  ] as const;
  for (const [title, kind] of blocks) {
    const head = rowSaying(sheet, title);
    expect(lineOf(sheet, head, lines.length + 1).slice(1)).toEqual(lines.map(({ label }) => label));
    batches.forEach((each, index) =>
      expect(lineOf(sheet, head + 1 + index, lines.length + 1).slice(1)).toEqual(
        lines.map((one) => batchNeed(one, each)[kind]),
      ),
    );
  }
});

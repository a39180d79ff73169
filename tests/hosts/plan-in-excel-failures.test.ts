/**
 * A plan and its sheets written to Excel's genuine proxies, with a failure in every round trip, after actions all over
 * it: nothing is left behind, and the message is Excel's.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { excelHost } from "../../src/hosts/excel/excel-host";
import { batchBook } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { standInWorkbook, type Failure, type StandIn } from "../support/excel-proxies";
import { everything } from "../support/excel-writing";
import { sampleFiles, sampleInputs } from "../support/samples";

const batches = sampleFiles.slice(0, 2).map((file) => {
  const inputs = sampleInputs(file);
  return { inputs, plan: planBatch(inputs) };
});
const one = batchBook(batches.slice(0, 1), []).sheets;
/** Of which some are copies. */
const two = batchBook(batches, [], { formulas: "values" }).sheets;

const before = {
  sheets: [
    { name: "Mine", cells: { A1: { value: "mine" } }, names: [{ name: "price", own: "$A$1" }] },
    { name: "Prices", notes: { B2: "a note" } },
  ],
};
const stateOf = ({ sheets }: StandIn) =>
  sheets.map(({ id, name, cells, names, notes, done }) => [id, name, [...cells], names, [...notes], done]);
const untouched = stateOf(standInWorkbook(before));

/** Actions that the proxies send in each round trip. */
async function actionsOf(sheets: readonly SheetData[]): Promise<number[]> {
  const workbook = standInWorkbook(before);
  await excelHost(everything).write({ sheets });
  return workbook.roundTrips.map(({ actions }) => actions);
}

async function writing(sheets: readonly SheetData[], failure: Failure) {
  const workbook = standInWorkbook({ ...before, failures: [failure] });
  const outcome = await excelHost(everything)
    .write({ sheets })
    .catch((error: Error) => error.message);
  return { workbook, outcome };
}

/** The first and the last ones, and others all over. */
const sampled = (count: number, samples: number) => [
  ...new Set([
    ...[0, 1, count - 1].filter((index) => index >= 0 && index < count),
    ...Array.from({ length: samples }, (_, index) => Math.floor((index * count) / samples)),
  ]),
];

describe.each([
  ["a batch's sheets", one, 60],
  ["two batches of values, some of them copies", two, 6],
])("%s", (_what, sheets, samples) => {
  test.each([1, 2, 3])("round trip %i fails after any number of its actions", async (roundTrip) => {
    const counts = await actionsOf(sheets);
    expect(counts).toHaveLength(4);
    const indexes = sampled(counts[roundTrip - 1]!, samples);
    for (const afterActions of indexes) {
      const { workbook, outcome } = await writing(sheets, { roundTrip, afterActions });
      expect([afterActions, outcome]).toEqual([afterActions, `round trip ${roundTrip} failed`]);
      expect(stateOf(workbook)).toEqual(untouched);
    }
  });

  test.each([1, 2, 3])("round trip %i never arrives, or its answer is lost", async (roundTrip) => {
    for (const failure of [{ roundTrip }, { roundTrip, unanswered: true }]) {
      const { workbook, outcome } = await writing(sheets, failure);
      expect(outcome).toBe(`round trip ${roundTrip} failed`);
      expect(stateOf(workbook)).toEqual(untouched);
    }
  });

  test("round trip 4 fails after any number: the sheets stand, and what is missing is said", async () => {
    const counts = await actionsOf(sheets);
    for (const afterActions of sampled(counts[3]!, samples)) {
      const { workbook, outcome } = await writing(sheets, { roundTrip: 4, afterActions });
      expect(outcome).toEqual([
        expect.stringMatching(/^Not all of these could be set: [\w ]+\. Excel said: /),
      ]);
      expect(workbook.sheets).toHaveLength(2 + sheets.length);
      // all that can be had is there: once more for what comes after
      expect(workbook.roundTrips.length).toBeLessThanOrEqual(5);
    }
  });
});

/**
 * Copied sheets in Excel when something fails: every failure in turn leaves the workbook as it was. And steps to
 * undo, which copies cannot be in.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { SheetData } from "../../src/workbook/data";
import { standInWorkbook, type Failure, type StandIn } from "../support/excel-proxies";
import { emptySheet } from "../support/excel-workbook";
import { cell, everything, matching, namesOf, planLike, sheetOf } from "../support/excel-writing";

const plan = (name: string, volume: number): SheetData =>
  sheetOf([cell(name), cell(volume, { column: 1, style: "input" }), cell(0, { row: 1, formula: "B1*2" })], {
    name,
    names: [{ name: "volume", row: 0, column: 1 }],
  });
const season = sheetOf([cell(0, { formula: "'Plan 1'!B1+'Plan 3'!B1" })], { name: "Season", first: true });
const sheets = [plan("Plan 1", 1), season, plan("Plan 2", 2), plan("Plan 3", 3)];

const before = { sheets: [{ name: "Notes", cells: { A1: { value: "mine" } } }, { name: "Prices" }] };
const stateOf = (workbook: StandIn) =>
  workbook.sheets.map(({ id, name, cells, names, done }) => [id, name, [...cells], names, done]);
const untouched = stateOf(standInWorkbook(before));

async function writing(...failures: Failure[]): Promise<{ workbook: StandIn; outcome: string }> {
  const workbook = standInWorkbook({ ...before, failures });
  const outcome = await excelHost(everything)
    .write({ sheets })
    .then(
      () => "written",
      (error: Error) => error.message,
    );
  return { workbook, outcome };
}

test("nothing fails: one model, two copies, one alone", async () => {
  const { workbook, outcome } = await writing();
  expect(outcome).toBe("written");
  expect(workbook.roundTrips).toHaveLength(4);
  expect(namesOf(workbook)).toEqual(["Season", "Notes", "Prices", "Plan 1", "Plan 2", "Plan 3"]);
  expect(matching(workbook, /^$/, "Copy")).toHaveLength(2);
  expect(workbook.active).toBe("Plan 1");
});

describe("a failure leaves the workbook as it was", () => {
  test.each([1, 2, 3])("round trip %i never arrives", async (roundTrip) => {
    const { workbook, outcome } = await writing({ roundTrip });
    expect(outcome).toBe(`round trip ${roundTrip} failed`);
    expect(stateOf(workbook)).toEqual(untouched);
  });

  test.each([1, 2, 3])("round trip %i is done, but the answer is lost", async (roundTrip) => {
    const { workbook, outcome } = await writing({ roundTrip, unanswered: true });
    expect(outcome).toBe(`round trip ${roundTrip} failed`);
    expect(stateOf(workbook)).toEqual(untouched);
  });

  test.each([1, 2, 3])("round trip %i fails after any of its actions", async (roundTrip) => {
    let failed = 0;
    for (let afterActions = 0; ; afterActions++) {
      const { workbook, outcome } = await writing({ roundTrip, afterActions });
      if (outcome === "written") break;
      failed++;
      expect(outcome).toBe(`round trip ${roundTrip} failed`);
      expect(stateOf(workbook)).toEqual(untouched);
    }
    expect(failed).toBeGreaterThan([0, 2, 30, 30][roundTrip]!);
  });

  test("sheets of the copies' names that someone else makes meanwhile stay", async () => {
    for (const moment of [2, 3]) {
      const workbook = standInWorkbook({
        ...before,
        meanwhile: (roundTrip, { sheets: all }) => {
          if (roundTrip === moment) all.push(emptySheet("{theirs}", "Plan 3"));
        },
      });
      await expect(excelHost(everything).write({ sheets })).rejects.toThrow(/Plan 3 is taken/);
      expect(workbook.sheets.map(({ id }) => id)).toEqual(["{existing-0}", "{existing-1}", "{theirs}"]);
    }
  });
});

describe("steps to undo", () => {
  const two = [planLike("Plan 1", 30), planLike("Plan 2", 31)];
  const options = (run: jest.SpyInstance) => run.mock.calls.map(([first]: unknown[]) => first);

  test("copies are never in one, as Excel would refuse it", async () => {
    const run = jest.spyOn((standInWorkbook(before), Excel), "run");
    await excelHost(everything).write({ sheets });
    expect(options(run)).toEqual([{}]);
    run.mockRestore();
  });

  test.each([2, 3, 4])("refused in round trip %i, all is done once more without, once", async (roundTrip) => {
    const failure = { roundTrip, afterActions: 1, code: "UndoNotSupported" };
    const workbook = standInWorkbook({ ...before, failures: [failure] });
    const run = jest.spyOn(Excel, "run");
    const host = excelHost(everything);
    await host.write({ sheets: two });
    expect(namesOf(workbook)).toEqual(["Notes", "Prices", "Plan 1", "Plan 2"]);
    expect(options(run)).toEqual([{ mergeUndoGroup: true }, { delayForCellEdit: true }, {}]);
    // and not tried again
    await host.write({ sheets: [planLike("Plan 3", 10)] });
    expect(options(run).slice(3)).toEqual([{}]);
    run.mockRestore();
  });

  test("any other error is not tried again", async () => {
    const workbook = standInWorkbook({ ...before, failures: [{ roundTrip: 3, afterActions: 1 }] });
    await expect(excelHost(everything).write({ sheets: two })).rejects.toThrow("round trip 3 failed");
    expect(workbook.roundTrips).toHaveLength(4);
  });
});

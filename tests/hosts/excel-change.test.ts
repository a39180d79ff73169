/**
 * Values put into cells that are there in Excel, on the genuine Excel proxies: these cells and no others, all or
 * none.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { CellChange } from "../../src/hosts/host";
import { standInWorkbook, type Failure, type GivenSheet, type StandIn } from "../support/excel-proxies";
import { everything, operationsOf } from "../support/excel-writing";

const sheets: readonly GivenSheet[] = [
  {
    name: "Plan · Jo's",
    cells: {
      A1: { value: "Volume" },
      B1: { value: 12 },
      B2: { value: "007" },
      B3: { value: "=1+1" },
      B4: { value: 24, formula: "=B1*2" },
      B5: { value: "#N/A", error: true },
      B6: { value: true },
      B8: { value: "Brut" },
    },
  },
  { name: "Plan 2", cells: { B1: { value: 1 }, C7: { value: 45_000 } } },
  { name: "Notes", cells: { B1: { value: "mine" } } },
];
const change = (sheet: string, address: string, value: CellChange["value"]): CellChange => ({
  sheet,
  row: Number(address.slice(1)) - 1,
  column: address.charCodeAt(0) - 65,
  value,
});
const changes = [
  ...["B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8"].map((address, index) =>
    change("Plan · Jo's", address, index + 100),
  ),
  change("Plan 2", "C7", 46_000),
  change("Plan 2", "E2", "new"),
];

/** Formulas without results, which the stand-in does not calculate. */
const stateOf = (workbook: StandIn) =>
  workbook.sheets.map(({ name, cells, formats, done }) => [
    name,
    [...cells].map(([place, content]) => [place, content.formula ?? content]).sort(),
    [...formats],
    done,
  ]);
const untouched = stateOf(standInWorkbook({ sheets }));

async function changing(
  given: readonly CellChange[],
  failures: readonly Failure[] = [],
  meanwhile?: (roundTrip: number, workbook: StandIn) => void,
) {
  const workbook = standInWorkbook({ sheets, failures, ...(meanwhile && { meanwhile }) });
  const outcome = await excelHost(everything)
    .change(given)
    .then(
      () => "changed",
      (error: Error) => error.message,
    );
  return { workbook, outcome };
}

describe("what is put in", () => {
  test("numbers, dates, booleans; text as text; null clears", async () => {
    const { workbook } = await changing([
      change("Plan · Jo's", "B1", 12.5),
      change("Plan · Jo's", "B2", "=1+1"),
      change("Plan · Jo's", "B3", "3/4"),
      change("Plan · Jo's", "B6", false),
      change("Plan · Jo's", "B8", null),
      change("Plan · Jo's", "C1", "TRUE"),
      change("plan 2", "C7", 46_000),
    ]);
    const [first, second, third] = workbook.sheets.map(({ cells }) => Object.fromEntries(cells));
    expect(first).toEqual({
      "0 0": { value: "Volume" },
      "0 1": { value: 12.5 },
      "0 2": { value: "TRUE" },
      "1 1": { value: "=1+1" },
      "2 1": { value: "3/4" },
      "3 1": { value: 24, formula: "=B1*2" },
      "4 1": { value: "#N/A", error: true },
      "5 1": { value: false },
    });
    expect(second).toEqual({ "0 1": { value: 1 }, "6 2": { value: 46_000 } });
    expect(third).toEqual({ "0 1": { value: "mine" } });
  });

  test("only contents are set, and only of these cells, in as few ranges as hold them", async () => {
    const { workbook } = await changing(changes);
    const set = operationsOf(workbook).map(({ sheet, on, name }) => `${sheet?.name} ${on} ${name}`);
    expect(set.sort()).toEqual([
      "Plan 2 GetRange(C7) Formulas",
      "Plan 2 GetRange(E2) Formulas",
      "Plan · Jo's GetRange(B1:B8) Formulas",
    ]);
    expect(workbook.roundTrips).toHaveLength(2);
  });

  test("two round trips for two hundred sheets", async () => {
    const names = Array.from({ length: 200 }, (_, index) => `Plan ${index + 1}`);
    const workbook = standInWorkbook({ sheetNames: names });
    await excelHost(everything).change(names.map((name, index) => change(name, "B9", index)));
    expect(workbook.roundTrips).toHaveLength(2);
    expect(workbook.sheets.map(({ cells }) => cells.get("8 1")?.value)).toEqual(
      names.map((_, index) => index),
    );
  });

  test("the last value for a cell counts", async () => {
    const { workbook } = await changing([change("Notes", "B1", 1), change("NOTES", "B1", 2)]);
    expect(workbook.sheets[2]!.cells.get("0 1")).toEqual({ value: 2 });
  });

  test("no changes, no round trip", async () => {
    expect((await changing([])).workbook.roundTrips).toEqual([]);
  });
});

describe("all or none", () => {
  test.each<[string, Failure]>([
    ["reading never arrives", { roundTrip: 1 }],
    ["reading gets no answer", { roundTrip: 1, unanswered: true }],
    ["writing never arrives", { roundTrip: 2 }],
    ["writing gets no answer", { roundTrip: 2, unanswered: true }],
  ])("%s: as it was, and said so", async (_what, failure) => {
    const { workbook, outcome } = await changing(changes, [failure]);
    expect(outcome).toBe(
      `The cells could not be changed: round trip ${failure.roundTrip} failed. Nothing was changed.`,
    );
    expect(stateOf(workbook)).toEqual(untouched);
  });

  test.each([1, 2])("round trip %i fails after any of its actions", async (roundTrip) => {
    let failed = 0;
    for (let afterActions = 0; ; afterActions++) {
      const { workbook, outcome } = await changing(changes, [{ roundTrip, afterActions }]);
      if (outcome === "changed") break;
      failed++;
      expect(outcome).toMatch(/Nothing was changed\.$/);
      expect(stateOf(workbook)).toEqual(untouched);
    }
    expect(failed).toBeGreaterThan(8);
  });

  test("a sheet that is gone is named, whether before or during the change", async () => {
    for (const moment of [1, 2]) {
      const { workbook, outcome } = await changing(changes, [], (roundTrip, { sheets: all }) => {
        if (roundTrip === moment) all.splice(1, 1);
      });
      expect(outcome).toBe('There is no sheet named "Plan 2" any more; nothing was changed.');
      expect(stateOf(workbook)).toEqual([untouched[0], untouched[2]]);
    }
  });

  test("what cannot be taken back is said, with the cells and the first error", async () => {
    const failures = [
      { roundTrip: 2, unanswered: true },
      { roundTrip: 4, afterActions: 0 },
    ];
    const { workbook, outcome } = await changing(changes, failures);
    expect(outcome).toMatch(/could not be changed: round trip 2 failed\. .*could not be taken back/);
    for (const cells of ["'Plan · Jo''s'!B1:B8", "'Plan 2'!C7", "'Plan 2'!E2"])
      expect(outcome).toContain(cells);
    expect(stateOf(workbook)).not.toEqual(untouched);
  });
});

describe("one step to undo, where there is that", () => {
  const optionsOf = (run: jest.SpyInstance) => run.mock.calls.map(([first]: unknown[]) => first);

  test("a group where Excel has them", async () => {
    const run = jest.spyOn((standInWorkbook({ sheets }), Excel), "run");
    await excelHost(everything).change(changes);
    await excelHost((_set, version) => version !== "1.20").change(changes);
    expect(optionsOf(run)).toEqual([{ mergeUndoGroup: true }, {}]);
    run.mockRestore();
  });

  test("where the group is refused, once more without it", async () => {
    const failures = [{ roundTrip: 2, afterActions: 4, code: "UndoNotSupported" }];
    const workbook = standInWorkbook({ sheets, failures });
    const run = jest.spyOn(Excel, "run");
    await excelHost(everything).change(changes);
    expect(optionsOf(run)).toEqual([{ mergeUndoGroup: true }, { delayForCellEdit: true }, {}]);
    expect(workbook.sheets[1]!.cells.get("6 2")).toEqual({ value: 46_000 });
    run.mockRestore();
  });
});

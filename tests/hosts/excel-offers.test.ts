/**
 * What is left out where Excel does not offer it, on the genuine Excel proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { SheetData } from "../../src/workbook/data";
import { standInWorkbook, type StandIn } from "../support/excel-proxies";
import {
  everything,
  planLike,
  written,
  operationsOf,
  matching,
  blockOf,
  cellsIn,
} from "../support/excel-writing";

describe("what Excel offers", () => {
  const sheet: SheetData = {
    ...planLike("Plan", 60),
    merges: [{ row: 0, column: 0, lastColumn: 3 }],
    names: [{ name: "plan_volume", row: 3, column: 1 }],
    validations: [
      { row: 3, column: 1, kind: "decimal", min: 0, max: 1, title: "t", message: "m", allowBlank: true },
    ],
  };
  const before = (limit: number) => (version: string) => Number(version.split(".")[1]) < limit;
  const bareWorkbook = async () => blockOf(await written([sheet]), "Formulas");

  test.each([
    [1, []],
    [4, ["Merge", "ColumnWidth"]],
    [7, ["Merge", "ColumnWidth", "SuspendApiCalculationUntilNextSync"]],
    [9, ["Merge", "ColumnWidth", "SuspendApiCalculationUntilNextSync", "FreezeRows", "Rule"]],
    [
      20,
      [
        "Merge",
        "ColumnWidth",
        "SuspendApiCalculationUntilNextSync",
        "FreezeRows",
        "Rule",
        "SuspendScreenUpdatingUntilNextSync",
        "Zoom",
      ],
    ],
  ])("before ExcelApi 1.%i the rest is left out and the cells are whole", async (limit, expected) => {
    const workbook = await written([sheet], {}, before(limit));
    const features = [
      "Merge",
      "ColumnWidth",
      "SuspendApiCalculationUntilNextSync",
      "FreezeRows",
      "Rule",
      "SuspendScreenUpdatingUntilNextSync",
      "Zoom",
    ];
    const used = new Set(operationsOf(workbook).map(({ name }) => name));
    expect(features.filter((feature) => used.has(feature))).toEqual(expected);
    expect(matching(workbook, /^Names$/).length > 0).toBe(limit > 4);
    expect(matching(workbook, /GetRanges/).length > 0).toBe(limit > 9);
    expect(blockOf(workbook, "Formulas")).toEqual(await bareWorkbook());
    expect(workbook.roundTrips).toHaveLength(limit > 9 ? 4 : 3);
  });

  test("without areas each range gets the same look by itself", async () => {
    const cellsWith = (workbook: StandIn, name: string) =>
      matching(workbook, /\.Format\.(Font|Fill)$/, name)
        .flatMap(({ on, args }) =>
          on.includes("()") ? [] : cellsIn(on).map((at) => `${at} ${String(args[0])}`),
        )
        .sort();
    const one = await written([sheet]);
    const other = await written([sheet], {}, before(9));
    for (const name of ["Bold", "Italic", "Size", "Color"])
      expect(cellsWith(other, name)).toEqual(cellsWith(one, name));
  });

  test("where the user calculates by hand, the new sheets are calculated", async () => {
    const workbook = await written([sheet], { calculationMode: "Manual" });
    expect(matching(workbook, /^Application$/, "SuspendApiCalculationUntilNextSync")).toEqual([]);
    expect(matching(workbook, /^$/, "Calculate").map(({ sheet: on, args }) => [on!.name, args[0]])).toEqual([
      ["Plan", true],
    ]);
  });

  test("one step to undo, where there is that", async () => {
    standInWorkbook();
    const run = jest.spyOn(Excel, "run");
    await excelHost(everything).write({ sheets: [sheet] });
    expect(run.mock.calls[0]![0]).toEqual({ mergeUndoGroup: true });
    standInWorkbook();
    run.mockClear();
    await excelHost((_set, version) => version !== "1.20").write({ sheets: [sheet] });
    expect(run.mock.calls[0]![0]).toEqual({});
    run.mockRestore();
  });

  test("Office is asked, and only once something is written", async () => {
    const workbook = standInWorkbook();
    const isSetSupported = jest.fn((_set: string, version: string) => version !== "1.4");
    const host = excelHost();
    Object.assign(globalThis, { Office: { context: { requirements: { isSetSupported } } } });
    await host.write({ sheets: [sheet] });
    expect(isSetSupported).toHaveBeenCalledWith("ExcelApi", "1.4");
    expect(matching(workbook, /^Names$/)).toEqual([]);
    Reflect.deleteProperty(globalThis, "Office");
  });
});

/**
 * Charts, pages and lists by their cells in Excel, on the genuine Excel proxies: what is asked of which object, that
 * Excel has it all from the version on that is asked for, and that a plan does without.
 */
import { readFileSync } from "node:fs";
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { ChartData, SheetData, Validation } from "../../src/workbook/data";
import { bars, chartSheet, column, lines, stages } from "../support/charts";
import { standInWorkbook, type Operation, type StandInOptions } from "../support/excel-proxies";

const sheetWith = (charts: readonly ChartData[], name = "Plan"): SheetData => ({
  ...chartSheet,
  name,
  charts,
});

async function written(
  sheets: readonly SheetData[],
  options: StandInOptions = {},
  offers: (version: number) => boolean = () => true,
) {
  const workbook = standInWorkbook(options);
  await excelHost((set, version) => set === "ExcelApi" && offers(Number(version.split(".")[1]))).write({
    sheets,
  });
  return workbook;
}

/** What was asked, with a chart's own name for the call that made it. */
async function asked(sheets: readonly SheetData[]): Promise<Operation[]> {
  const { roundTrips } = await written(sheets);
  return roundTrips
    .flatMap(({ operations }) => operations)
    .map((each) => ({ ...each, on: each.on.replace(/^Charts\.Add\([^)]*\)[^)]*\)/, "chart") }));
}
const settings = (operations: readonly Operation[], on: string) =>
  Object.fromEntries(operations.filter((each) => each.on === on).map(({ name, args }) => [name, args[0]]));

describe("lines", () => {
  let operations: Operation[];
  beforeAll(async () => (operations = await asked([sheetWith([lines])])));

  test("one series comes with the chart, the others by name, each with its own cells", () => {
    expect(operations.find(({ on, name }) => on === "Charts" && name === "Add")?.args).toEqual([
      "XYScatterLinesNoMarkers",
      "Plan!GetRange(B2:B6)",
      "Columns",
    ]);
    expect(settings(operations, "chart.Series.GetItemAt(0)")).toEqual({
      Name: "Planned",
      SetValues: "Plan!GetRange(B2:B6)",
      SetXAxisValues: "Plan!GetRange(A2:A6)",
    });
    expect(settings(operations, "chart.Series.Add(Rating,)")).toEqual({
      SetValues: "Plan!GetRange(D2:D6)",
      SetXAxisValues: "Plan!GetRange(A2:A6)",
    });
  });

  test("told apart by dashes", () => {
    const styles = operations.filter(({ name }) => name === "LineStyle").map(({ args }) => args[0]);
    expect(styles).toEqual(["Continuous", "Dash", "RoundDot"]);
  });

  test("limits, formats and titles of the axes", () => {
    expect(settings(operations, "chart.Axes.ValueAxis")).toMatchObject({
      Minimum: 0,
      Maximum: 12,
      NumberFormat: "0.0",
    });
    expect(settings(operations, "chart.Axes.ValueAxis.Title")).toEqual({ Text: "Pressure, bar" });
    const x = settings(operations, "chart.Axes.CategoryAxis");
    expect(x).toMatchObject({ NumberFormat: "0" });
    expect(Object.keys(x)).not.toEqual(expect.arrayContaining(["Minimum"]));
    expect(Object.keys(x)).not.toEqual(expect.arrayContaining(["ReversePlotOrder"]));
  });

  test("its place, its title, a legend", () => {
    expect(operations.find(({ name }) => name === "SetPosition")?.args).toEqual(["G1", "N15"]);
    expect(settings(operations, "chart.Title")).toEqual({ Text: "Pressure & temperature" });
    expect(settings(operations, "chart.Legend")).toEqual({ Visible: true, Position: "Bottom" });
  });
});

test("bars: the first category on top, the values' axis below, no legend, no title where there is none", async () => {
  const operations = await asked([sheetWith([bars])]);
  expect(settings(operations, "chart.Axes.CategoryAxis")).toMatchObject({
    ReversePlotOrder: true,
    Position: "Maximum",
    TickLabelSpacing: 1,
  });
  expect(settings(operations, "chart.Axes.CategoryAxis.Title")).toEqual({ Visible: false });
  expect(settings(operations, "chart.Axes.ValueAxis.Title")).toEqual({ Text: "EUR a bottle" });
  expect(settings(operations, "chart.Legend")).toEqual({ Visible: false });
  expect(settings(operations, "chart.Series.GetItemAt(0)")).not.toHaveProperty("Overlap");
});

test("stacked bars: a gap has no fill, no edge and no name in the legend", async () => {
  const operations = await asked([sheetWith([stages])]);
  expect(settings(operations, "chart.Series.GetItemAt(0)")).toMatchObject({ Name: " ", Overlap: 100 });
  const fills = operations
    .filter(({ on }) => on.endsWith(".Format.Fill"))
    .map(({ name, args }) => [name, ...args]);
  expect(fills[0]).toEqual(["Clear"]);
  expect(fills.slice(1).map(([name]) => name)).toEqual(["SetSolidColor", "SetSolidColor"]);
  expect(fills[1]![1]).not.toBe(fills[2]![1]);
  expect(settings(operations, "chart.Series.GetItemAt(0).Format.Line")).toEqual({ Clear: undefined });
});

test("cells of another sheet, and cells beside one another", async () => {
  const across = { row: 20, column: 1, lastRow: 20, lastColumn: 3 };
  const chart: ChartData = {
    ...lines,
    categories: column(0, 1, 5, "Other"),
    series: [{ title: "One", values: across, look: "solid" }],
  };
  const operations = await asked([sheetWith([chart]), sheetWith([], "Other")]);
  expect(operations.find(({ on, name }) => on === "Charts" && name === "Add")?.args.slice(1)).toEqual([
    "Plan!GetRange(B21:D21)",
    "Rows",
  ]);
  expect(settings(operations, "chart.Series.GetItemAt(0)").SetXAxisValues).toBe("Other!GetRange(A2:A6)");
});

describe("round trips", () => {
  test.each([1, 12])("%i sheets with charts take four", async (count) => {
    const sheets = Array.from({ length: count }, (_, index) =>
      sheetWith([lines, bars, stages], `Plan ${index + 1}`),
    );
    const { roundTrips } = await written(sheets);
    expect(roundTrips).toHaveLength(4);
    const added = roundTrips.flatMap(({ operations }) => operations).filter(({ on }) => on === "Charts");
    expect(added).toHaveLength(3 * count);
  });

  test("where a chart or the printer fails, the plan stands", async () => {
    const workbook = await written([sheetWith([lines])], { failures: [{ roundTrip: 4, afterActions: 5 }] });
    expect(workbook.sheets.map(({ name }) => name)).toContain("Plan");
  });

  test("charts come before the print settings, which some machines refuse", async () => {
    const { roundTrips } = await written([sheetWith([lines]), sheetWith([bars], "Plan 2")]);
    const places = roundTrips.at(-1)!.operations.map(({ on }) => on.split(/[.(]/)[0]);
    expect(places.lastIndexOf("Charts")).toBeLessThan(places.indexOf("PageLayout"));
  });
});

describe("versions", () => {
  const TYPES = readFileSync(require.resolve("@types/office-js/index.d.ts"), "utf8");
  const CLASSES: readonly (readonly [RegExp, string])[] = [
    [/^Charts$/, "ChartCollection"],
    [/^chart$/, "Chart"],
    [/Series$/, "ChartSeriesCollection"],
    [/Series\.(GetItemAt|Add)\([^)]*\)$/, "ChartSeries"],
    [/Format\.Font$/, "ChartFont"],
    [/Format\.Line$/, "ChartLineFormat"],
    [/Format\.Fill$/, "ChartFill"],
    [/^chart\.Title$/, "ChartTitle"],
    [/^chart\.Legend$/, "ChartLegend"],
    [/Axis$/, "ChartAxis"],
    [/Axis\.Title$/, "ChartAxisTitle"],
    [/MajorGridlines$/, "ChartGridlines"],
  ];

  /** The version that the published types give for a member. */
  function versionOf({ on, name }: Operation): number {
    const [, type] = CLASSES.find(([pattern]) => pattern.test(on)) ?? [];
    const body = new RegExp(`\\n    class ${type} extends [^]*?\\n    }\\n`).exec(TYPES)?.[0] ?? "";
    const member = name[0]!.toLowerCase() + name.slice(1);
    const said = new RegExp(`Api set: ExcelApi 1\\.(\\d+)\\]?(?:(?!\\*/)[^])*\\*/\\s+${member}[(:]`).exec(
      body,
    );
    if (!said) throw new Error(`${on} has no ${member}`);
    return Number(said[1]);
  }

  test("nothing on a chart is newer than the version that is asked for", async () => {
    const operations = (await asked([sheetWith([lines, bars, stages])])).filter(({ on }) =>
      /^chart/i.test(on),
    );
    expect(operations.length).toBeGreaterThan(80);
    const versions = operations.map(versionOf);
    expect(Math.max(...versions)).toBe(8);
  });

  test("left out where Excel is older; the rest is written", async () => {
    const older = await written([sheetWith([lines])], {}, (version) => version < 8);
    const operations = older.roundTrips.flatMap(({ operations: each }) => each);
    expect(operations.filter(({ on }) => on.startsWith("Charts"))).toEqual([]);
    expect(operations.map(({ name }) => name)).toContain("Formulas");
    const enough = await written([sheetWith([lines])], {}, (version) => version <= 8);
    expect(
      enough.roundTrips.flatMap(({ operations: each }) => each).filter(({ on }) => on === "Charts"),
    ).toHaveLength(1);
  });
});

test.each([
  [true, "Landscape"],
  [false, "Portrait"],
])("landscape %s", async (landscape, orientation) => {
  const operations = await asked([{ ...sheetWith([]), landscape }]);
  expect(settings(operations, "PageLayout").Orientation).toBe(orientation);
});

test("a list by its cells; rules of other cells are not taken for the same", async () => {
  const rule = (row: number, last: number): Validation => ({
    row,
    column: 2,
    title: "Batch",
    message: "One of the batches.",
    allowBlank: true,
    kind: "list",
    options: ["a, b"],
    from: column(0, 1, last, "O'Neil"),
  });
  const operations = await asked([{ ...sheetWith([]), validations: [rule(0, 5), rule(1, 5), rule(5, 6)] }]);
  const sources = operations.filter(({ name }) => name === "Rule").map(({ on, args }) => [on, args[0]]);
  expect(sources).toEqual([
    ["GetRange(C1:C2).DataValidation", { list: { inCellDropDown: true, source: "='O''Neil'!$A$2:$A$6" } }],
    ["GetRange(C6).DataValidation", { list: { inCellDropDown: true, source: "='O''Neil'!$A$2:$A$7" } }],
  ]);
});

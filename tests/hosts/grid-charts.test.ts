/**
 * Charts in the grid without a page: kept with their sheet, read from their cells, given back for the file.
 */
import { chartsOf, readChart } from "../../src/hosts/grid/chart-cells";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import { ruleFromGrid, ruleToGrid } from "../../src/hosts/grid/validation";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import type { Area, SheetData, Validation } from "../../src/workbook/data";
import { chartSheet, column, lines } from "../support/charts";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { packageParts } from "../support/ooxml";

const far: SheetData = {
  ...chartSheet,
  name: "Far",
  landscape: false,
  charts: [{ ...lines, categories: column(0, 1, 5, chartSheet.name), place: column(40, 200, 220) }],
};

let grid: HeadlessGrid;
let host: GridHost;
beforeAll(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
  const done = grid.settled();
  await host.write({ sheets: [chartSheet, far] });
  await done;
});
afterAll(() => grid.dispose());

const book = () => grid.api.getActiveWorkbook()!;
const sheetNamed = (name: string) => book().getSheetByName(name)!;
const back = (name: string) => host.read().sheets.find((sheet) => sheet.name === name)!;

test("charts and the way of the pages are read back; a sheet of the user's own has none", () => {
  expect(back(chartSheet.name)).toMatchObject({ charts: chartSheet.charts, landscape: true });
  expect(back("Far")).toMatchObject({ charts: far.charts, landscape: false });
  book().insertSheet("Own");
  expect(back("Own")).toMatchObject({ charts: [], landscape: false });
});

test("what is saved from the grid holds the charts", async () => {
  const file = await writeWorkbookFile({ sheets: [back(chartSheet.name)] });
  const charts = [...packageParts(file).keys()].filter((path) => /charts\/chart\d+\.xml$/.test(path));
  expect(charts).toHaveLength(3);
});

test("the sheet has room for a chart that lies beyond its cells", () => {
  const { lastRow, lastColumn } = far.charts[0]!.place;
  expect(sheetNamed("Far").getMaxRows()).toBeGreaterThan(lastRow);
  expect(sheetNamed("Far").getMaxColumns()).toBeGreaterThan(lastColumn);
});

test("a chart's numbers are those of its cells, of another sheet too, and follow a changed one", async () => {
  const sheet = sheetNamed("Far");
  const [chart] = chartsOf(sheet);
  expect(readChart(book(), sheet, chart!)).toMatchObject({
    categories: [0, 5, 10, 15, 20],
    series: [
      [4, 5, 6, 7, 8],
      [2, 2.5, 3, 3.5, 4],
      [9, 9, 9, 9, 9],
    ],
  });
  const done = grid.settled();
  sheet.getRange("B2").setValue({ f: "=2*3" });
  sheetNamed(chartSheet.name).getRange("A6").setValue(25);
  sheet.getRange("C3").setValue({ f: '=IF(TRUE, "", 1)' });
  sheet.getRange("C4").setValue({ f: "=1/0" });
  await done;
  const { categories, series } = readChart(book(), sheet, chart!);
  expect(categories).toEqual([0, 5, 10, 15, 25]);
  expect(series[0]![0]).toBe(6);
  expect(series[1]!.slice(1, 3)).toEqual(["", null]);
});

test("cells of a sheet that is gone are blank", () => {
  const sheet = sheetNamed("Far");
  const lost = { ...lines, categories: column(0, 1, 3, "Nowhere") };
  expect(readChart(book(), sheet, lost).categories).toEqual([null, null, null]);
});

test("a copied sheet draws its own cells", () => {
  const copy = book().duplicateSheet(sheetNamed(chartSheet.name));
  copy.getRange("B2").setValue(1.5);
  const read = (sheet: typeof copy) => readChart(book(), sheet, chartsOf(sheet)[0]!).series[0]![0];
  expect(read(copy)).toBe(1.5);
  expect(read(sheetNamed(chartSheet.name))).toBe(4);
});

describe("lists by their cells", () => {
  const rule = (from: Area): Validation => ({
    row: 2,
    column: 3,
    title: "Batch",
    message: "One of the batches.",
    allowBlank: true,
    kind: "list",
    options: [],
    from,
  });

  test.each<[string, Area, string]>([
    ["of the same sheet", column(0, 0, 8), "=$A$1:$A$9"],
    ["of another", column(27, 9, 11, "Other"), "='Other'!$AB$10:$AB$12"],
    ["of one with an apostrophe", column(0, 0, 8, "O'Neil! 1"), "='O''Neil! 1'!$A$1:$A$9"],
    ["one cell", column(0, 4, 4, "Other"), "='Other'!$A$5"],
  ])("%s", (_name, from, formula) => {
    const written = ruleToGrid(rule(from), "rule-1");
    expect(written.formula1).toBe(formula);
    expect(ruleFromGrid(written)).toEqual([rule(from)]);
  });

  test("as the grid may write them, and what only looks like one", () => {
    const read = (formula1: string) =>
      ruleFromGrid({ ...ruleToGrid(rule(column(0, 0, 1)), "r"), formula1 })[0];
    expect(read("=Other!b2:B4")).toMatchObject({ from: column(1, 1, 3, "Other"), options: [] });
    for (const text of ["A1:A9,B2", "=SUM(A1:A9)", "=A0"]) expect(read(text)).not.toHaveProperty("from");
    expect(read("yes,no")).toMatchObject({ options: ["yes", "no"] });
  });
});

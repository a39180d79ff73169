/**
 * The same sheets through every host that writes into an open workbook: the grid, in its own engine, and Excel, on its
 * genuine proxies. What is there in the end is the same picture, and that of what was to be written.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { gridHost } from "../../src/hosts/grid/grid-host";
import { seasonBook, type Formulas } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { chartSheet } from "../support/charts";
import { standInWorkbook } from "../support/excel-proxies";
import { cell, everything, sheetOf } from "../support/excel-writing";
import { headlessGrid } from "../support/grid";
import type { Picture, SheetPicture } from "../support/picture";
import { pictureOfData } from "../support/picture-data";
import { pictureOfExcel } from "../support/picture-excel";
import { seasonBatches } from "../support/season";

/** The sheet that is there from the start is no part of it. */
const written = (picture: Picture): Picture => ({
  ...picture,
  sheets: picture.sheets.filter(({ name }) => name !== "Sheet1"),
});

async function inGrid(sheets: readonly SheetData[]): Promise<Picture> {
  const grid = await headlessGrid();
  try {
    const host = gridHost(grid.api);
    expect(await host.write({ sheets })).toEqual([]);
    const active = grid.api.getActiveWorkbook()!.getActiveSheet().getSheetName();
    return written(pictureOfData(host.read().sheets, active));
  } finally {
    grid.dispose();
  }
}

async function inExcel(sheets: readonly SheetData[]): Promise<Picture> {
  const workbook = standInWorkbook();
  expect(await excelHost(everything).write({ sheets })).toEqual([]);
  return written(pictureOfExcel(workbook));
}

/** Whole pixels make a column a little wider or narrower. */
const WIDTH = 0.15;

function expectSame(found: Picture, expected: Picture): void {
  expect(found.sheets.map(({ name }) => name)).toEqual(expected.sheets.map(({ name }) => name));
  expect(found.active).toBe(expected.active);
  found.sheets.forEach((sheet, index) => {
    const { columnWidths, ...rest } = sheet;
    const { columnWidths: widths, ...other } = expected.sheets[index]!;
    expect(rest).toEqual(other);
    expect(columnWidths).toHaveLength(widths.length);
    columnWidths.forEach((width, column) => expect(Math.abs(width - widths[column]!)).toBeLessThan(WIDTH));
  });
}

const KINDS: readonly Formulas[] = ["add-in", "values"];
describe.each(KINDS)("a season of two batches, %s", (formulas) => {
  const sheets = seasonBook(seasonBatches(2), formulas);
  // the first one that is written is shown, and one that goes first comes before all others
  const wanted = pictureOfData(sheets, sheets[0]!.name);
  let [grid, excel]: Picture[] = [];
  beforeAll(async () => ([grid, excel] = [await inGrid(sheets), await inExcel(sheets)]));

  test("there is something of everything in it", () => {
    const counts = (of: (sheet: SheetPicture) => object) =>
      wanted.sheets.reduce((sum, sheet) => sum + Object.keys(of(sheet)).length, 0);
    expect(wanted.sheets.map(({ name }) => name.split(" ")[0])).toEqual([
      "Season",
      ...["Plan", "What-if", "Register", "Plan", "What-if", "Register"],
      "Notes",
    ]);
    expect(counts(({ contents }) => contents)).toBeGreaterThan(3000);
    expect(counts(({ formats }) => formats)).toBeGreaterThan(500);
    for (const some of [
      "names",
      "merges",
      "rowHeights",
      "rules",
      "highlights",
      "charts",
      "tables",
    ] as const) {
      expect([some, counts((sheet) => sheet[some])]).not.toEqual([some, 0]);
    }
    expect(counts(({ notes }) => notes) > 1000).toBe(formulas === "values");
    expect(wanted.sheets.some(({ frozen }) => frozen.rows > 0 && frozen.columns > 0)).toBe(true);
  });

  test("in Excel it is what was to be written", () => expectSame(excel!, wanted));
  test("in the grid it is what was to be written", () => expectSame(grid!, wanted));
  test("in both it is the same", () => expectSame(excel!, grid!));
});

test("sheets with a chart of each kind, gridlines, a page of its own, columns frozen alone", async () => {
  const sheets: SheetData[] = [
    { ...chartSheet, frozenColumns: 1, gridlines: true, pagesTall: 3 },
    // the first row and column are blank
    sheetOf(
      [
        cell(2, { row: 1, column: 2, format: "0.0" }),
        cell("=2", { row: 2, column: 1 }),
        cell(null, { row: 2, column: 2, formula: "C2*2" }),
      ],
      { name: "Away" },
    ),
    {
      ...chartSheet,
      name: "Second",
      charts: [],
      landscape: false,
      first: true,
      printArea: { row: 0, column: 0, lastRow: 5, lastColumn: 3 },
      validations: [
        {
          row: 1,
          column: 0,
          title: "One",
          message: "Of two.",
          allowBlank: true,
          kind: "list",
          options: ["a", "b"],
        },
        {
          row: 2,
          column: 0,
          title: "Day",
          message: "A day.",
          allowBlank: false,
          kind: "date",
          min: 61,
          max: 50_000,
        },
      ],
    },
  ];
  // the sheet that goes first
  const wanted = pictureOfData([sheets[2]!, sheets[0]!, sheets[1]!], chartSheet.name);
  expectSame(await inExcel(sheets), wanted);
  expectSame(await inGrid(sheets), wanted);
});

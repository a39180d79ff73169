/**
 * Cells that stand out by a word, and frozen panes, as they reach Excel on the genuine Excel proxies.
 */
import { makings, shapeOf } from "../../src/hosts/excel/alike";
import { addSheets } from "../../src/hosts/excel/add-sheets";
import { offeredBy } from "../../src/hosts/excel/offered";
import type { Highlight, SheetData } from "../../src/workbook/data";
import { highlightLooks } from "../../src/workbook/styles";
import { standInWorkbook } from "../support/excel-proxies";
import type { Sheet } from "../support/excel-workbook";
import { cell, cellsIn, everything, matching, sheetOf, written } from "../support/excel-writing";

const stop: Highlight = {
  word: 'stop "now"',
  look: "bad",
  cells: [2, 3, 4, 9].map((row) => ({ row, column: 1 })),
};
const check: Highlight = { word: "check", look: "doubtful", cells: stop.cells };
const sheet = (more: Partial<SheetData> = {}) =>
  sheetOf([cell("Volume")], { highlights: [stop, check], ...more });

test("one format for each word, on all its cells", async () => {
  const workbook = await written([sheet()]);
  const on = /^GetRanges\(([^)]*)\)\.ConditionalFormats$/;
  const added = matching(workbook, on, "Add");
  expect(added.map(({ args }) => args[0])).toEqual(["CellValue", "CellValue"]);
  for (const each of added) expect(cellsIn(each.on)).toEqual(["B3", "B4", "B5", "B10"]);
  const set = (name: string) => matching(workbook, /\.CellValue\b/, name).map(({ args }) => args[0]);
  expect(set("Rule")).toEqual([
    { formula1: '="stop ""now"""', operator: "EqualTo" },
    { formula1: '="check"', operator: "EqualTo" },
  ]);
  const { bad, doubtful } = highlightLooks;
  // the fill's colour and the font's, of each
  expect(set("Color")).toEqual([bad.fill, bad.color, doubtful.fill, doubtful.color].map((rgb) => `#${rgb}`));
  expect(set("Bold")).toEqual([true, true]);
});

test("more cells than one address holds", async () => {
  const cells = Array.from({ length: 200 }, (_, index) => ({ row: index * 2, column: index % 3 }));
  const workbook = await written([sheet({ highlights: [{ ...stop, cells }] })]);
  const on = matching(workbook, /ConditionalFormats$/, "Add").map((each) => each.on);
  expect(on.length).toBeGreaterThan(1);
  for (const each of on) expect(/\(([^)]*)\)/.exec(each)![1]!.length).toBeLessThanOrEqual(255);
  expect(on.flatMap(cellsIn).sort()).toEqual(
    cells.map(({ row, column }) => `${"ABC"[column]}${row + 1}`).sort(),
  );
});

test.each<[string, number]>([
  ["1.8", 0],
  ["1.9", 2],
])("up to ExcelApi %s there are %i formats", async (last, count) => {
  const limit = Number(last.split(".")[1]);
  const workbook = await written([sheet()], {}, (version) => Number(version.split(".")[1]) <= limit);
  expect(matching(workbook, /ConditionalFormats$/, "Add")).toHaveLength(count);
});

describe("frozen", () => {
  test.each<[string, number, number, [string, unknown][]]>([
    ["rows", 3, 0, [["FreezeRows", 3]]],
    ["columns", 0, 2, [["FreezeColumns", 2]]],
    ["rows and columns", 3, 2, [["FreezeAt", "A1:B3"]]],
    ["nothing", 0, 0, []],
  ])("%s", async (_what, frozenRows, frozenColumns, expected) => {
    const workbook = await written([sheet({ frozenRows, frozenColumns })]);
    expect(matching(workbook, /^FreezePanes$/).map(({ name, args }) => [name, args[0]])).toEqual(expected);
  });
});

describe("in copies the same as in full", () => {
  const frozen = { frozenRows: 2, frozenColumns: 1 };
  const sheets = ["One", "Two", "Three"].map((name, index) => ({
    ...sheet({ ...frozen, name }),
    cells: [cell(index), cell("stop", { row: 2, column: 1 })],
  }));
  const state = ({ name, done }: Sheet) => [name, done.map((each) => JSON.stringify(each)).sort()];

  test("formats and panes", async () => {
    const copied = await written(sheets);
    expect(matching(copied, /^$/, "Copy")).toHaveLength(2);
    const full = standInWorkbook();
    await addSheets(sheets, makings(sheets, false), offeredBy(everything), {});
    expect(copied.sheets.map(state)).toEqual(full.sheets.map(state));
    const last = full.sheets.at(-1)!.done.map(({ on, name }) => `${on} ${name}`);
    expect(last).toEqual(
      expect.arrayContaining(["FreezePanes FreezeAt", "GetRanges(B3:B5,B10).ConditionalFormats Add"]),
    );
  });

  test.each<[string, Partial<SheetData>]>([
    ["another word", { highlights: [stop, { ...check, word: "note" }] }],
    ["other cells", { highlights: [stop, { ...check, cells: check.cells.slice(1) }] }],
    ["another look", { highlights: [stop, { ...check, look: "bad" }] }],
    ["frozen columns", { frozenColumns: 2 }],
  ])("not from a sheet with %s", (_what, more) => {
    expect(shapeOf({ ...sheets[0]!, ...more })).not.toBe(shapeOf(sheets[0]!));
  });
});

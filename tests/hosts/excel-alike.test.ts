/**
 * Sheets of one shape in Excel: what counts as the same shape, and how each sheet is made.
 */
import { differingCells, laterRules, makings, shapeOf } from "../../src/hosts/excel/alike";
import { copyName, draftNames } from "../../src/hosts/excel/drafts";
import type { PlacedCell, SheetData, Validation } from "../../src/workbook/data";
import { cell, sheetOf } from "../support/excel-writing";

const listFrom = (sheet: string | undefined): Validation => ({
  row: 1,
  column: 1,
  title: "Designation",
  message: "One of the list.",
  allowBlank: true,
  kind: "list",
  options: ["a"],
  from: { ...(sheet !== undefined && { sheet }), row: 0, column: 5, lastRow: 3, lastColumn: 5 },
});

const base = sheetOf(
  [
    cell("Volume"),
    cell(12, { row: 0, column: 1, style: "input", format: "0.0" }),
    cell(24, { row: 1, column: 1, style: "result", formula: "B1*2" }),
  ],
  {
    columnWidths: [20, 10],
    rowHeights: new Map([[1, 29]]),
    merges: [{ row: 2, column: 0, lastColumn: 1 }],
    names: [{ name: "volume", row: 0, column: 1 }],
    validations: [listFrom(undefined)],
  },
);
const withCell = (index: number, more: Partial<PlacedCell>): SheetData => ({
  ...base,
  cells: base.cells.map((each, at) => (at === index ? { ...each, ...more } : each)),
});

describe("the same shape", () => {
  test.each<[string, SheetData]>([
    ["another value", withCell(1, { value: 30 })],
    ["another text", withCell(0, { value: "Tank" })],
    ["another formula", withCell(2, { formula: "B1*3" })],
    ["a formula where a value was", withCell(1, { formula: "1+1" })],
    ["another name", { ...base, name: "Plan · Rosé" }],
    ["another page, place and charts", { ...base, pagesTall: 5, landscape: true, first: true, charts: [] }],
    ["the sheet itself named in a rule", { ...base, validations: [listFrom(base.name)] }],
  ])("%s", (_what, sheet) => expect(shapeOf(sheet)).toBe(shapeOf(base)));

  test.each<[string, SheetData]>([
    ["style", withCell(0, { style: "note" })],
    ["format", withCell(1, { format: "0.00" })],
    ["no format", withCell(1, { format: undefined })],
    ["place of a cell", withCell(2, { row: 3 })],
    ["a cell less", { ...base, cells: base.cells.slice(1) }],
    ["widths", { ...base, columnWidths: [20, 11] }],
    ["heights", { ...base, rowHeights: new Map([[1, 30]]) }],
    ["merges", { ...base, merges: [] }],
    ["frozen rows", { ...base, frozenRows: 1 }],
    ["place of a name", { ...base, names: [{ name: "volume", row: 1, column: 1 }] }],
    ["rules", { ...base, validations: [] }],
    ["cells of a rule", { ...base, validations: [listFrom("Other")] }],
    ["gridlines", { ...base, gridlines: true }],
  ])("not with another: %s", (_what, sheet) => expect(shapeOf(sheet)).not.toBe(shapeOf(base)));
});

test("cells differ by value or formula, never by a formula's cached value", () => {
  expect(differingCells(base, withCell(2, { value: 99 }))).toEqual([]);
  expect(differingCells(base, withCell(1, { value: 13 })).map(({ value }) => value)).toEqual([13]);
  expect(differingCells(base, withCell(2, { formula: "B1" })).map(({ formula }) => formula)).toEqual(["B1"]);
  expect(differingCells(base, withCell(1, { formula: "B1", value: 12 }))).toHaveLength(1);
});

describe("how sheets are made", () => {
  const named = (name: string, more: Partial<SheetData> = {}) => ({ ...base, name, ...more });

  test("the first of a shape is the model, the only one of a shape stands alone", () => {
    const sheets = [named("A"), named("B", { gridlines: true }), named("C"), named("D")];
    expect(makings(sheets, true)).toMatchObject([
      { kind: "model" },
      { kind: "alone" },
      { kind: "copy", of: 0 },
      { kind: "copy", of: 0 },
    ]);
    expect(makings(sheets, false).map(({ kind }) => kind)).toEqual(Array(4).fill("alone"));
  });

  test("what reads a new sheet, in whatever case, waits; what reads another does not", () => {
    const reading = (name: string, ...formulas: string[]) =>
      sheetOf(
        formulas.map((formula, row) => cell(1, { row, formula, format: "0" })),
        { name },
      );
    const formulas = ["'b''s'!A1+1", "SUM('A'!B1:B4)", "'Old'!A1", "A1"];
    const [model] = makings([reading("A", ...formulas), reading("B's", ...formulas)], true);
    const start = model?.kind === "model" ? model.start.cells : [];
    expect(start.map(({ formula }) => formula)).toEqual([undefined, undefined, "'Old'!A1", "A1"]);
    expect(start.map(({ format }) => format)).toEqual(["0", "0", "0", "0"]);
    expect(start[0]!.value).toBeNull();
  });

  test("rules that name cells wait too", () => {
    const plain: Validation = { ...listFrom(undefined), kind: "textLength", max: 5 };
    const sheet = named("A", { validations: [plain, listFrom("Lists")] });
    const [model] = makings([sheet, { ...sheet, name: "B" }], true);
    expect(model).toMatchObject({ kind: "model", start: { validations: [plain] } });
    expect(laterRules(sheet)).toEqual([listFrom("Lists")]);
  });
});

test("drafts and their copies have names that Excel takes", () => {
  const drafts = draftNames(999);
  expect(new Set(drafts).size).toBe(999);
  expect(Math.max(...drafts.map((name) => copyName(name).length))).toBeLessThanOrEqual(31);
});

/**
 * What a sheet has besides its cells: rules, highlights, merges, heights, charts, tables, what is printed and frozen.
 */
import { choice, text } from "../../src/cellar/batch/field-kinds";
import { cell, mousse } from "../../src/workbook/formula";
import {
  asTheyAre,
  layOut,
  type CellSpec,
  type ChartSpec,
  type Layout,
  type Row,
} from "../../src/workbook/layout";

const page = { frozenRows: 2, pagesTall: 3, landscape: true };
const keyed = (key: string): CellSpec => ({ value: 1, style: "result", key });
const laidOut = (rows: readonly Row[], more: Partial<Layout> = {}) =>
  layOut({ name: "Oxlip Hill", rows, columnWidths: [30, 9, 9], page, ...more });

test("nothing but what it is given", () => {
  const { cells, ...rest } = laidOut([{ cells: [{ value: "x", style: "label" }] }]);
  expect(cells).toStrictEqual([{ row: 0, column: 0, value: "x", style: "label" }]);
  expect(rest).toStrictEqual({
    name: "Oxlip Hill",
    columnWidths: [30, 9, 9],
    rowHeights: new Map(),
    ...{ merges: [], names: [], validations: [], charts: [], highlights: [], tables: [] },
    gridlines: false,
    frozenColumns: 0,
    ...page,
  });
});

test("columns stay in view, and the sheet goes first, where its page says so", () => {
  const sheet = laidOut([], { page: { ...page, frozenColumns: 2, first: true } });
  expect([sheet.frozenColumns, sheet.frozenRows, sheet.first]).toEqual([2, 2, true]);
});

test("a cell keeps its value, look and format beside its formula", () => {
  const spec: CellSpec = { value: 7, style: "key", format: "0.0", formula: mousse("X", cell("a")) };
  const [, placed] = laidOut([{ cells: [keyed("a"), undefined, spec] }]).cells;
  expect(placed).toStrictEqual({
    ...{ row: 0, column: 2, value: 7, style: "key", format: "0.0" },
    formula: "MOUSSE.X(A1)",
  });
});

test("rules stand on the cells of fields; a list may be other cells", () => {
  const from = { sheet: "Notes", row: 1, column: 0, lastRow: 2, lastColumn: 0 };
  const [rules, lot] = [choice("Rules", ["EU", "OIV"], { blank: "EU" }), text("Lot", { maxLength: 60 })];
  const rows: Row[] = [
    { cells: [] },
    { cells: [undefined, { value: "EU", style: "input", field: rules }] },
    { cells: [{ value: null, style: "input", field: lot }] },
  ];
  const sheet = laidOut(rows, { listOf: (field) => (field === rules ? from : undefined) });
  expect(sheet.validations).toHaveLength(2);
  expect(sheet.validations[0]).toMatchObject({ row: 1, column: 1, kind: "list", title: "Rules", from });
  expect(sheet.validations[1]).toMatchObject({ row: 2, column: 0, kind: "textLength", max: 60 });
  expect(laidOut(rows).validations[0]).not.toHaveProperty("from");
});

test("cells that hold the word of a check stand out for both words", () => {
  const judged: CellSpec = { value: "fine", style: "verdict", judged: true };
  const cells = [
    { row: 0, column: 1 },
    { row: 2, column: 0 },
  ];
  const sheet = laidOut([{ cells: [undefined, judged] }, { cells: [keyed("a")] }, { cells: [judged] }]);
  expect(sheet.highlights).toStrictEqual([
    { word: "stop", look: "bad", cells },
    { word: "look again", look: "doubtful", cells },
  ]);
});

test("merged cells and tall rows, only where there are some", () => {
  const rows: Row[] = [
    { cells: [] },
    { cells: [], merge: [1, 4], lines: 1 },
    { cells: [], lines: 2 },
    { cells: [], lines: 3, height: 5 },
  ];
  const sheet = laidOut(rows);
  expect(sheet.merges).toStrictEqual([{ row: 1, column: 1, lastColumn: 4 }]);
  expect([...sheet.rowHeights.keys()]).toEqual([2, 3]);
  expect(sheet.rowHeights.get(3)).toBe(5);
});

test("charts and tables are put where their cells are", () => {
  const rows: Row[] = [
    { cells: [keyed("here")] },
    { cells: [] },
    { cells: [keyed("x1"), keyed("y1")] },
    { cells: [keyed("x2"), keyed("y2")] },
  ];
  const chart: ChartSpec = {
    ...{ kind: "bars", title: "t", description: "d", horizontal: { title: "h" }, vertical: { title: "v" } },
    ...{ at: "here", rows: 4, columns: [1, 6], categories: { first: "x1", last: "x2" } },
    series: [{ title: "s", look: "dark", values: { first: "y1", last: "y2" } }],
  };
  const tables = [{ name: "Batches", first: "x1", last: "y2" }];
  const sheet = laidOut(rows, { charts: [chart, { ...chart, at: "x2" }], tables });
  expect(sheet.charts[0]).toStrictEqual({
    ...{ kind: "bars", title: "t", description: "d", horizontal: { title: "h" }, vertical: { title: "v" } },
    place: { row: 0, column: 1, lastRow: 3, lastColumn: 6 },
    categories: { row: 2, column: 0, lastRow: 3, lastColumn: 0 },
    series: [{ title: "s", look: "dark", values: { row: 2, column: 1, lastRow: 3, lastColumn: 1 } }],
  });
  expect(sheet.charts[1]!.place).toEqual({ row: 3, column: 1, lastRow: 6, lastColumn: 6 });
  expect(sheet.tables).toStrictEqual([
    { name: "Batches", area: { row: 2, column: 0, lastRow: 3, lastColumn: 1 } },
  ]);
});

describe("what is printed", () => {
  const rows: Row[] = [{ cells: [keyed("a")] }, { cells: [keyed("end")] }, { cells: [keyed("c")] }];
  const more = { ...asTheyAre, rows: (given: readonly Row[]) => [...given, { cells: [keyed("d")] }] };
  test("so many columns, down to a cell", () => {
    const printed = { ...page, printed: { columns: 2, to: "end" } };
    const area = { row: 0, column: 0, lastRow: 1, lastColumn: 1 };
    expect(laidOut(rows, { page: printed }).printArea).toEqual(area);
    expect(laidOut(rows, { page: printed, rendering: more }).printArea).toEqual(area);
    expect(laidOut(rows, { page: printed })).not.toHaveProperty("printed");
  });
  test("not the rows that a rendering adds", () =>
    expect(laidOut(rows, { rendering: more }).printArea).toEqual({
      ...{ row: 0, column: 0, lastRow: 2, lastColumn: 2 },
    }));
  test("otherwise everything", () => expect(laidOut(rows)).not.toHaveProperty("printArea"));
});

test("a cell is looked for here, then on the sheets it reads, then where the rendering knows it", () => {
  const asking = (name: string): Row => ({ cells: [{ value: 0, style: "result", formula: cell(name) }] });
  const rows = [{ cells: [keyed("own")] }, asking("own"), asking("plan"), asking("notes")];
  const sheet = laidOut(rows, {
    elsewhere: (name) => (name === "notes" ? undefined : "Plan!B2"),
    rendering: { ...asTheyAre, elsewhere: (name) => `Notes!${name === "notes" ? "C3" : "D4"}` },
  });
  expect(sheet.cells.slice(1).map(({ formula }) => formula)).toEqual(["A1", "Plan!B2", "Notes!C3"]);
});

test("a cell with a name of the sheet's and one for formulas is known by the first", () => {
  const both: CellSpec = { ...keyed("inner"), name: "outer" };
  expect(laidOut([{ cells: [both] }]).names).toEqual([{ name: "outer", row: 0, column: 0 }]);
});

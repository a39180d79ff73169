/**
 * Requests to Excel are split by guesses of what they take: for each kind of thing that is written these are never
 * too small, even late in a long piece of work, and not much too large.
 */
import { addCharts } from "../../src/hosts/excel/charts";
import { writeCells } from "../../src/hosts/excel/contents";
import { addNotes, addTables } from "../../src/hosts/excel/extras";
import { addHighlights } from "../../src/hosts/excel/highlights";
import { applyLooks } from "../../src/hosts/excel/looks";
import { layOutPages, writeSheet } from "../../src/hosts/excel/sheet";
import { addValidations } from "../../src/hosts/excel/validations";
import { seasonBook } from "../../src/workbook/book";
import type { CellStyle, Highlight, PlacedCell, SheetData } from "../../src/workbook/data";
import { looks } from "../../src/workbook/styles";
import { expectHonest, OFFERED } from "../support/excel-guesses";
import { cell, planLike, sheetOf } from "../support/excel-writing";
import { seasonBatches } from "../support/season";

const COUNT = 300;
const column = (of: (row: number) => Partial<PlacedCell>): PlacedCell[] =>
  Array.from({ length: COUNT }, (_, row) => cell(row, { row, ...of(row) }));
const [season, plan, whatIf, register] = seasonBook(seasonBatches(3)) as SheetData[];
const written: [string, SheetData][] = [
  ["a season", season!],
  ["a plan", plan!],
  ["a what-if", whatIf!],
  ["a register", register!],
  ["a long table", planLike("Plan", 2000)],
  [
    "a wide block of numbers",
    sheetOf(
      Array.from({ length: 9_000 }, (_, at) => cell(at % 7, { row: Math.floor(at / 60), column: at % 60 })),
    ),
  ],
  ["words beyond ASCII", sheetOf(column(() => ({ value: "Überschaum ".repeat(20) })))],
  [
    "nothing but names",
    sheetOf([cell(1)], { names: column(() => ({})).map((at) => ({ ...at, name: `ü_${at.row}` })) }),
  ],
];

test.each(written)("%s in full", (_what, data) => expectHonest((sheet) => writeSheet(sheet, data, OFFERED)));

test.each(["input", "heading", "total", "columnHead", "verdict", "indentedHead"] satisfies CellStyle[])(
  "the look of a %s, of cells far apart",
  (style) => {
    expect(looks[style]).toBeDefined();
    const apart = sheetOf(column((row) => ({ row: 3 * row, column: row % 7, style })));
    return expectHonest((sheet) => applyLooks(sheet, apart, OFFERED));
  },
);

test.each<[string, (row: number) => PlacedCell["value"]]>([
  ["numbers", (row) => row],
  ["texts", (row) => `lot ${row}`],
])("single cells that differ in a copy: %s", (_what, value) =>
  expectHonest((sheet) =>
    writeCells(
      sheet,
      column((row) => ({ row: 2 * row, value: value(row) })),
    ),
  ),
);

test("single formulas that differ in a copy", () =>
  expectHonest((sheet) =>
    writeCells(
      sheet,
      column((row) => ({ row: 2 * row, formula: `B${row}*2` })),
    ),
  ));

test("rules, each for itself", () => {
  const validations = plan!.validations.map((rule, index) => ({ ...rule, title: `rule ${index}` }));
  return expectHonest((sheet) => addValidations(sheet, { ...plan!, validations }, OFFERED));
});

test.each([1, 2])("highlights in cells %i apart", (apart) => {
  const highlights = Array.from({ length: 30 }, (_, index): Highlight => ({
    word: `word "${index}"`,
    look: "bad",
    cells: Array.from({ length: 20 }, (__, row) => ({ row: row * apart, column: 1 })),
  }));
  return expectHonest((sheet) => addHighlights(sheet, sheetOf([], { highlights }), OFFERED));
});

test.each<[string, string]>([
  ["short notes", "=B1*2"],
  ["notes as long as formulas are", "=IF(ISNUMBER(B1),B1,NA())*".repeat(12)],
  ["notes with quotes and letters that take more room", '="Überschäumend"&" „süß“"'.repeat(9)],
])("%s", (_what, note) => expectHonest((sheet) => addNotes(sheet, sheetOf(column(() => ({ note }))))));

test.each([
  ["of a season", season!],
  ["of a plan", plan!],
])("charts %s", (_what, data) => expectHonest((sheet) => addCharts(sheet, data)));

test("tables", () => {
  const tables = Array.from({ length: 30 }, (_, index) => ({
    name: `lots_${index}`,
    area: { row: 0, column: 2 * index, lastRow: 99, lastColumn: 2 * index + 1 },
  }));
  const heads = tables.flatMap(({ area }) =>
    [0, 1].map((at) => cell(`head ${at}`, { column: area.column + at })),
  );
  return expectHonest(function* (sheet) {
    yield* writeCells(sheet, heads);
    yield* addTables(sheet, sheetOf([], { tables }));
  });
});

const printArea = { row: 0, column: 0, lastRow: 9_999, lastColumn: 25 };
test.each([
  ["print settings", sheetOf([], { landscape: true })],
  ["print settings with a print area", sheetOf([], { printArea, pagesTall: 2 })],
])("%s", (_what, data) => expectHonest((sheet) => layOutPages(sheet, data), 1_000));

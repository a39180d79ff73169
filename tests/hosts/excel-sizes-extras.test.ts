/**
 * How much goes to Excel for notes, highlights and tables, and for a season of values. Excel on the web takes at most
 * 5 MB at once (learn.microsoft.com, "Resource limits and performance optimization for Office Add-ins").
 */
import { noteBytes, PAGE_BYTES, TABLE_BYTES, writingBytes } from "../../src/hosts/excel/requests";
import { seasonBook } from "../../src/workbook/book";
import type { Highlight, PlacedCell, SheetData } from "../../src/workbook/data";
import { cell, sheetOf, written } from "../support/excel-writing";
import { seasonBatches } from "../support/season";

jest.setTimeout(60_000);

const LIMIT = 5_000_000;
const trips = async (...sheets: SheetData[]) => (await written(sheets)).roundTrips.map(({ bytes }) => bytes);

/** Rather too large, but not by much. */
const within = (guess: number, real: number) => {
  process.stdout.write(`guessed ${guess}, sent ${real}: ${(guess / real).toFixed(2)}\n`);
  expect(guess).toBeGreaterThan(real);
  expect(guess).toBeLessThan(1.6 * real + 5_000);
};

const column = (count: number, note: (row: number) => string | undefined): PlacedCell[] =>
  Array.from({ length: count }, (_, row) => cell(row, { row, note: note(row) }));

describe("sizes are guessed rather too large, but not by much", () => {
  test.each<[string, (row: number) => string]>([
    ["short notes", (row) => `=B${row + 1}*2`],
    ["notes as long as formulas are", (row) => `=IF(ISNUMBER(B${row}),B${row},NA())*`.repeat(12)],
    ["notes with quotes and letters that take more room", () => '="Überschäumend"&" „süß“"'.repeat(9)],
  ])("%s", async (_what, note) => {
    const [one, other] = [column(300, note), column(300, () => undefined)].map((cells) => sheetOf(cells));
    const [, , , noted = 0] = await trips(one!);
    const [, , , plain = 0] = await trips(other!);
    within(noteBytes(one!), noted - plain);
  });

  const highlights = (count: number, apart: number): Highlight[] =>
    Array.from({ length: count }, (_, index) => ({
      word: `word "${index}"`,
      look: "bad",
      cells: Array.from({ length: 20 }, (__, row) => ({ row: row * apart, column: 1 })),
    }));

  test.each<[string, number]>([
    ["in one block", 1],
    ["in separate cells", 2],
  ])("highlights %s", async (_what, apart) => {
    const plain = sheetOf([cell(1)]);
    const lit = { ...plain, highlights: highlights(10, apart) };
    const [, , full = 0] = await trips(lit);
    const [, , bare = 0] = await trips(plain);
    within(writingBytes(lit) - writingBytes(plain), full - bare);
  });

  test("a table", async () => {
    const cells = ["Lot", "Bottles"].map((head, at) => cell(head, { column: at, style: "columnHead" }));
    const area = { row: 0, column: 0, lastRow: 99, lastColumn: 1 };
    const sheet = sheetOf(cells, { tables: [{ name: "lots", area }] });
    const [, , , withTable = 0] = await trips(sheet);
    const [, , , without = 0] = await trips({ ...sheet, tables: [] });
    within(TABLE_BYTES, withTable - without);
  });

  test("print settings, with a print area", async () => {
    const printArea = { row: 0, column: 0, lastRow: 99, lastColumn: 9 };
    const [, around = 0, , last = 0] = await trips(sheetOf([cell(1)], { printArea, landscape: true }));
    within(PAGE_BYTES, last - around);
  });
});

describe("a season of values only", () => {
  const formulasIn = (sheets: readonly SheetData[]) =>
    sheets.flatMap(({ cells }) => cells.filter(({ formula }) => formula !== undefined)).length;

  test("of 20 batches never sends more than 5 MB at once, and has a note for each formula", async () => {
    const batches = seasonBatches(20);
    const sheets = seasonBook(batches, "values");
    const workbook = await written(sheets);
    const bytes = workbook.roundTrips.map((trip) => trip.bytes);
    process.stdout.write(`season of 20, values only: ${bytes.join(" + ")} bytes\n`);
    expect(Math.max(...bytes)).toBeLessThan(LIMIT);
    expect(formulasIn(sheets)).toBe(0);
    // the season itself is made of its own formulas with functions, as any other
    const calculated = formulasIn(seasonBook(batches));
    expect(calculated).toBeGreaterThan(10_000);
    const notes = workbook.sheets.reduce((sum, sheet) => sum + sheet.notes.size, 0);
    expect(notes).toBe(calculated);
    for (const sheet of workbook.sheets) {
      expect([...sheet.cells.values()].filter(({ formula }) => formula !== undefined)).toEqual([]);
    }
  });
});

/**
 * How much goes to Excel at once for whole seasons, of which one sheet alone can be more than Excel takes: on the web
 * 5 MB each way (learn.microsoft.com, "Resource limits and performance optimization for Office Add-ins").
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { planBatch } from "../../src/cellar/batch/plan";
import { batchBook, seasonBook, seasonOf } from "../../src/workbook/book";
import { cellAddress, type SheetData } from "../../src/workbook/data";
import { standInWorkbook, type RoundTrip, type StandIn } from "../support/excel-proxies";
import { everything, namesOf, written } from "../support/excel-writing";
import { sampleFiles, sampleInputs } from "../support/samples";
import { seasonBatches } from "../support/season";

const LIMIT = 5_000_000;
const sizesOf = ({ roundTrips }: StandIn) =>
  roundTrips.flatMap(({ bytes, answerBytes }) => [bytes, answerBytes]);

/** In as few requests as their bytes take, but for a part of each that stays empty; `more`: for what is read. */
function expectSplit(workbook: StandIn, what: string, more = 0): void {
  const { roundTrips } = workbook;
  const total = roundTrips.reduce((sum, { bytes }) => sum + bytes, 0);
  const most = Math.max(...sizesOf(workbook));
  process.stdout.write(`${what}: ${total} bytes in ${roundTrips.length} round trips, at most ${most}\n`);
  expect(total).toBeGreaterThan(LIMIT);
  expect(most).toBeLessThan(LIMIT);
  expect(roundTrips.length).toBeLessThan(5 + total / 3_500_000 + more);
}

/** The sheet that compares them all; the batches are one and the same, which their sheet does not mind. */
function seasonSheetOf(count: number, formulas: "add-in" | "values" = "add-in"): SheetData {
  const inputs = sampleInputs(sampleFiles[0]!);
  const [plan] = batchBook([{ inputs, plan: planBatch(inputs) }], []).plans;
  return seasonOf(
    Array.from({ length: count }, () => plan!),
    [],
    undefined,
    formulas,
  );
}

const filled = ({ cells }: SheetData) =>
  cells.filter(({ value, formula }) => formula !== undefined || (value ?? "") !== "").length;

describe("the one sheet of a season of 400 batches", () => {
  const sheet = seasonSheetOf(400);

  test("is sent in several requests, and all of it arrives", async () => {
    const workbook = await written([sheet]);
    expectSplit(workbook, "season of 400, its own sheet");
    // before all others
    const there = workbook.sheets[0]!;
    expect(there.cells.size).toBe(filled(sheet));
    expect(there.names.map(({ name }) => name)).toEqual(sheet.names.map(({ name }) => name));
    for (const { row, column, formula } of sheet.cells) {
      if (formula !== undefined) expect(there.cells.get(`${row} ${column}`)!.formula).toBe(`=${formula}`);
    }
    const formats = sheet.cells.filter(({ format }) => format !== undefined);
    expect(formats.length).toBeGreaterThan(10_000);
    for (const { row, column, format } of formats) {
      expect(there.formats.get(`${row} ${column}`)).toBe(format === "General" ? undefined : format);
    }
  });

  test("is split as well where it is the model of a copy", async () => {
    const workbook = await written([sheet, { ...sheet, name: "Season 2" }]);
    expectSplit(workbook, "two of them alike");
    expect(workbook.sheets.slice(0, 2).map(({ cells }) => cells.size)).toEqual([
      filled(sheet),
      filled(sheet),
    ]);
  });

  test.each(["fails", "is to be the last"])("leaves nothing behind when its second part %s", async (how) => {
    // after the look, the beginning and the first part
    const second = 4;
    const abort = new AbortController();
    const workbook = standInWorkbook({
      failures: how === "fails" ? [{ roundTrip: second, afterActions: 3 }] : [],
      meanwhile: (roundTrip) => {
        if (how !== "fails" && roundTrip === second - 1) abort.abort(new Error("enough"));
      },
    });
    const progress = { tell: () => undefined, signal: abort.signal };
    await expect(excelHost(everything).write({ sheets: [sheet] }, progress)).rejects.toThrow(
      how === "fails" ? `round trip ${second} failed` : "enough",
    );
    const formulasIn = ({ operations }: RoundTrip) =>
      operations.filter(({ name }) => name === "Formulas").length;
    expect(formulasIn(workbook.roundTrips[2]!)).toBeGreaterThan(0);
    expect(namesOf(workbook)).toEqual(["Sheet1"]);
  });
});

test("the one sheet of a season of 200 batches as values, with a note for each formula", async () => {
  const sheet = seasonSheetOf(200, "values");
  const workbook = await written([sheet]);
  expectSplit(workbook, "season of 200, its own sheet as values");
  const noted = sheet.cells.filter(({ note }) => note !== undefined).length;
  expect(noted).toBeGreaterThan(10_000);
  expect(workbook.sheets[0]!.notes.size).toBe(noted);
});

describe("the one sheet of a season of 100 batches", () => {
  const sheet = seasonSheetOf(100);
  const formulas = sheet.cells.filter(({ formula }) => formula !== undefined).length;
  /** What a note may say already is asked for with room for 2 kB each. */
  const questions = (formulas * 2_400) / 4_700_000;

  test("frozen, and put back when that fails at its end", async () => {
    const failing = { failures: [] as { roundTrip: number; afterActions: number }[] };
    const workbook = await written([sheet], failing);
    const before = new Map(workbook.sheets[0]!.cells);
    const opened = workbook.roundTrips.length;
    expect(await excelHost(everything).freeze(sheet.name)).toBe(formulas);
    const last = workbook.roundTrips.length;
    expectSplit(
      { ...workbook, roundTrips: workbook.roundTrips.slice(opened) },
      "season of 100, its own sheet frozen",
      6 + questions,
    );
    expect(workbook.sheets[0]!.notes.size).toBe(formulas);
    expect([...workbook.sheets[0]!.cells.values()].some(({ formula }) => formula !== undefined)).toBe(false);

    failing.failures.push({ roundTrip: last, afterActions: 3 });
    const other = await written([sheet], failing);
    await expect(excelHost(everything).freeze(sheet.name)).rejects.toThrow(`round trip ${last} failed`);
    expectSplit({ ...other, roundTrips: other.roundTrips.slice(last) }, "and put back", 6);
    expect(new Map(other.sheets[0]!.cells)).toEqual(before);
    expect(other.sheets[0]!.notes.size).toBe(0);
  });

  test("frozen where each formula has a long note of its own already: the answers are split too", async () => {
    const workbook = await written([sheet]);
    const { notes } = workbook.sheets[0]!;
    const remark = "Checked with the cellar book. ".repeat(30);
    for (const { row, column, formula } of sheet.cells)
      if (formula !== undefined) notes.set(cellAddress(row, column), remark);
    const opened = workbook.roundTrips.length;
    expect(await excelHost(everything).freeze(sheet.name)).toBe(formulas);
    const { roundTrips } = { ...workbook, roundTrips: workbook.roundTrips.slice(opened) };
    expect(formulas * remark.length).toBeGreaterThan(LIMIT);
    expect(Math.max(...sizesOf({ ...workbook, roundTrips }))).toBeLessThan(LIMIT);
    expect(notes.size).toBe(formulas);
    expect([...notes.values()].every((text) => text.startsWith(`${remark}\n=`))).toBe(true);
  });
});

describe("many small sheets", () => {
  test.each([
    [200, "each of a shape of its own", (index: number) => [index + 1]],
    [600, "all alike", () => [10]],
  ])("%i with print settings and charts, %s", async (count, what, columnWidths) => {
    const charted = seasonBook(seasonBatches(1)).find(({ charts }) => charts.length > 1)!;
    const sheets = Array.from({ length: count }, (_, index): SheetData => ({
      ...charted,
      name: `Plan · Überschäumend süß ${index}`,
      cells: charted.cells.slice(0, 40),
      names: charted.names.slice(0, 5),
      validations: charted.validations.slice(0, 5),
      columnWidths: columnWidths(index),
    }));
    const workbook = await written(sheets);
    expectSplit(workbook, `${count} small sheets, ${what}`);
    expect(workbook.sheets.slice(1).map(({ name }) => name)).toEqual(sheets.map(({ name }) => name));
  });
});

describe("a season of values only", () => {
  const formulasIn = (sheets: readonly SheetData[]) =>
    sheets.flatMap(({ cells }) => cells.filter(({ formula }) => formula !== undefined)).length;

  test("of 20 batches never sends more than 5 MB at once, and has a note for each formula", async () => {
    const batches = seasonBatches(20);
    const sheets = seasonBook(batches, "values");
    const workbook = await written(sheets);
    expectSplit(workbook, "season of 20, values only");
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

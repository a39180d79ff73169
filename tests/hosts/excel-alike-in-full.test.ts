/**
 * Sheets of one shape in Excel, on the genuine Excel proxies: copies with what differs end up as if each had been
 * written in full.
 */
import { addSheets } from "../../src/hosts/excel/add-sheets";
import { makings } from "../../src/hosts/excel/alike";
import { offeredBy } from "../../src/hosts/excel/offered";
import { seasonBook } from "../../src/workbook/book";
import type { SheetData, Validation } from "../../src/workbook/data";
import { standInWorkbook } from "../support/excel-proxies";
import { nameValue, type Sheet } from "../support/excel-workbook";
import {
  cell,
  everything,
  matching,
  namesOf,
  operationsOf,
  sheetOf,
  written,
} from "../support/excel-writing";
import { seasonBatches, seasonSheets } from "../support/season";

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

/** What is in the end on a sheet, in whatever order and blocks it came there. */
const state = (sheet: Sheet) => ({
  name: sheet.name,
  cells: Object.fromEntries(sheet.cells),
  formats: Object.fromEntries(sheet.formats),
  names: sheet.names.map((each) => [each.name, nameValue(sheet, each)]),
  notes: [...sheet.notes],
  done: sheet.done
    .filter(({ name }) => name !== "_ValidateArraySize")
    .map((each) => JSON.stringify(each))
    .sort(),
});
const inFull = async (sheets: readonly SheetData[]) => {
  const workbook = standInWorkbook();
  await addSheets(sheets, makings(sheets, false), offeredBy(everything), {});
  return workbook;
};

describe("as if written in full", () => {
  test("a season: plans, what follows them, and the lists they use", async () => {
    const sheets = seasonBook(seasonBatches(5));
    const [one, other] = [await written(sheets), await inFull(sheets)];
    expect(one.sheets.map(state)).toEqual(other.sheets.map(state));
    expect(matching(one, /^$/, "Copy").length).toBeGreaterThan(5);
    expect(matching(other, /^$/, "Copy")).toEqual([]);
    expect(other.sheets.at(-2)!.cells.size).toBeGreaterThan(100);
  });

  test("sheets that read one another and themselves, and a list of another new sheet", async () => {
    const plan = (name: string, next: string, volume: number) =>
      sheetOf(
        [
          cell(`Lot ${volume}`),
          cell(volume, { row: 1, column: 1, style: "input" }),
          cell(0, { row: 2, column: 1, formula: `'${next}'!B2+'${name}'!B2`, style: "result" }),
          cell("007", { row: 3 }),
        ],
        { name, names: [{ name: "volume", row: 1, column: 1 }], validations: [listFrom("Lists")] },
      );
    const total = sheetOf([cell(0, { formula: "'Three'!B2+'Two'!B2" })], { name: "Season", first: true });
    const sheets = [
      plan("One", "Two", 1),
      total,
      plan("Two", "Three", 2),
      sheetOf([cell("a", { column: 5 })], { name: "Lists", gridlines: true }),
      plan("Three", "One", 3),
    ];
    const [one, other] = [await written(sheets), await inFull(sheets)];
    expect(namesOf(one)).toEqual(["Season", "Sheet1", "One", "Two", "Lists", "Three"]);
    expect(one.sheets.map(state)).toEqual(other.sheets.map(state));
    const rules = one.sheets
      .at(-1)!
      .done.filter(({ on, name }) => on.endsWith("DataValidation") && name === "Rule");
    expect(rules).toHaveLength(1);
    expect(rules[0]!.args[0]).toMatchObject({ list: { source: "='Lists'!$F$1:$F$4" } });
  });

  test("only what differs is written into a copy", async () => {
    const volumes = [1, 2, 2, 3];
    const sheets = volumes.map((volume, index) =>
      sheetOf(
        [cell("Volume"), cell(volume, { column: 1 }), cell("hL", { column: 2 }), cell(volume, { column: 3 })],
        { name: `Plan ${index}` },
      ),
    );
    const workbook = await written(sheets);
    const contents = operationsOf(workbook)
      .filter(({ name }) => name === "Formulas")
      .map(({ sheet, on, args }) => [sheet!.name, on, args[0]]);
    expect(contents).toEqual([
      ["Plan 0", "GetRange(A1:D1)", [["Volume", 1, "hL", 1]]],
      ["Plan 1", "GetRange(B1)", [[2]]],
      ["Plan 1", "GetRange(D1)", [[2]]],
      ["Plan 2", "GetRange(B1)", [[2]]],
      ["Plan 2", "GetRange(D1)", [[2]]],
      ["Plan 3", "GetRange(B1)", [[3]]],
      ["Plan 3", "GetRange(D1)", [[3]]],
    ]);
  });
});

test("before ExcelApi 1.7 all are written in full", async () => {
  const sheets = seasonSheets(3);
  const workbook = await written(sheets, {}, (version) => Number(version.split(".")[1]) < 7);
  expect(matching(workbook, /^$/, "Copy")).toEqual([]);
  expect(namesOf(workbook)).toEqual(["Sheet1", ...sheets.map(({ name }) => name)]);
});

/**
 * Sheets for the Excel host, and what of them reached the stand-in workbook.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { PlacedCell, SheetData } from "../../src/workbook/data";
import { looks } from "../../src/workbook/styles";
import { standInWorkbook, type Operation, type StandIn, type StandInOptions } from "./excel-proxies";

export const everything = () => true;
export const PLAIN_COLOR = `#${looks.label.color}`;

/** Shaped like a plan: sections of labels, inputs, units, notes and formulas, and a table with a total. */
export function planLike(name: string, rows: number): SheetData {
  const cells: PlacedCell[] = [
    { row: 0, column: 0, value: name, style: "title" },
    ...["What", "Value", "Unit", "Note"].map((value, column): PlacedCell => ({
      row: 1,
      column,
      value,
      style: "columnHead",
    })),
  ];
  for (let row = 2; row < rows; row++) {
    if (row % 20 === 2) {
      for (let column = 0; column < 8; column++) {
        cells.push({ row, column, value: column === 0 ? "Tirage" : "", style: "heading" });
      }
    } else if (row % 20 > 15) {
      const at = row + 1;
      cells.push(
        { row, column: 0, value: "Sugar for the tirage", style: "label" },
        {
          row,
          column: 1,
          value: 24.5 * row,
          formula: `MOUSSE.TIRAGE.SUGAR(B${at - 6}, 0)`,
          style: "result",
          format: "0.0",
        },
        { row, column: 3, value: 2 * row, formula: `B${at}*D$5`, style: "result", format: "#,##0.00" },
        { row, column: 4, value: 46000 + row, style: "input", format: "yyyy-mm-dd" },
        { row, column: 7, value: true, formula: `B${at}>0`, style: row % 20 === 19 ? "total" : "result" },
      );
    } else {
      cells.push(
        { row, column: 0, value: "Volume of base wine", style: "label" },
        { row, column: 1, value: row * 1.25, style: "input", format: "#,##0.00" },
        { row, column: 2, value: "hL", style: "unit" },
        { row, column: 3, value: "as measured in the tank", style: "note" },
      );
    }
  }
  return {
    name,
    cells,
    columnWidths: [38, 14, 14, 11, 11, 14, 12, 14],
    rowHeights: new Map([
      [2, 29],
      [3, 29],
      [6, 42.5],
    ]),
    merges: [],
    frozenRows: 2,
    names: [],
    validations: [],
    frozenColumns: 0,
    highlights: [],
    tables: [],
    charts: [],
    gridlines: false,
    pagesTall: 2,
    landscape: false,
  };
}

export function sheetOf(cells: readonly PlacedCell[], more: Partial<SheetData> = {}): SheetData {
  return {
    ...planLike("Plan · Brut", 0),
    cells,
    columnWidths: [],
    rowHeights: new Map(),
    frozenRows: 0,
    ...more,
  };
}

export const cell = (value: PlacedCell["value"], more: Partial<PlacedCell> = {}): PlacedCell => ({
  row: 0,
  column: 0,
  value,
  style: "label",
  ...more,
});

export async function written(
  sheets: readonly SheetData[],
  options: StandInOptions = {},
  offers: (version: string) => boolean = everything,
) {
  const workbook = standInWorkbook(options);
  await excelHost((set, version) => set === "ExcelApi" && offers(version)).write({ sheets });
  return workbook;
}

/** The least that the same cells can cost: one block of contents, one of number formats, and no looks. */
export async function bareBytes({ cells }: SheetData): Promise<number> {
  const workbook = standInWorkbook();
  const rows = Math.max(...cells.map(({ row }) => row)) + 1;
  const columns = Math.max(...cells.map(({ column }) => column)) + 1;
  const blank = <Entry>(entry: Entry) =>
    Array.from({ length: rows }, () => Array<Entry>(columns).fill(entry));
  const formulas = blank<unknown>("");
  const formats = blank("General");
  for (const { row, column, value, formula, format } of cells) {
    formulas[row]![column] = formula === undefined ? (value ?? "") : `=${formula}`;
    formats[row]![column] = format ?? "General";
  }
  await Excel.run(async (context) => {
    const range = context.workbook.worksheets.getItem("Sheet1").getRangeByIndexes(0, 0, rows, columns);
    range.formulas = formulas;
    range.numberFormat = formats;
    await context.sync();
  });
  return bytesOf(workbook);
}

export const operationsOf = (workbook: StandIn) =>
  workbook.roundTrips.flatMap(({ operations }) => operations);
export const bytesOf = (workbook: StandIn) => workbook.roundTrips.reduce((sum, { bytes }) => sum + bytes, 0);
export const namesOf = (workbook: StandIn) => workbook.sheets.map(({ name }) => name);

/** What was set under this name, as "where: value". */
export const settings = (workbook: StandIn, name: string) =>
  operationsOf(workbook)
    .filter((each) => each.name === name)
    .map(({ on, args }) => `${on}: ${JSON.stringify(args[0])}`);
export const matching = (workbook: StandIn, on: RegExp, name?: string): Operation[] =>
  operationsOf(workbook).filter((each) => on.test(each.on) && (name === undefined || each.name === name));

/** A long block arrives in slices. */
export function blockOf(workbook: StandIn, property: "Formulas" | "NumberFormat"): unknown[][] {
  return operationsOf(workbook)
    .filter(({ name }) => name === property)
    .flatMap(({ args }) => args[0] as unknown[][]);
}

/** "B3:C4,E5" as single cells. */
export function cellsIn(on: string): string[] {
  const addresses = /^GetRanges?\(([^)]*)\)/.exec(on)![1]!.split(",");
  return addresses.flatMap((address) => {
    const [first, last = first] = address.split(":");
    const [, left, top] = /^([A-Z])(\d+)$/.exec(first!)!;
    const [, right, bottom] = /^([A-Z])(\d+)$/.exec(last!)!;
    const cells: string[] = [];
    for (let row = Number(top); row <= Number(bottom); row++) {
      for (let column = left!.charCodeAt(0); column <= right!.charCodeAt(0); column++) {
        cells.push(`${String.fromCharCode(column)}${row}`);
      }
    }
    return cells;
  });
}

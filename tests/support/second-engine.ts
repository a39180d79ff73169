/**
 * A written workbook file read by a second reader and calculated by a second engine.
 */
import { execFileSync } from "node:child_process";
import path from "node:path";
import * as XLSX from "@e965/xlsx";
import type { CellValue } from "../../src/workbook/data";

const NUMBER = 1;
const BOOLEAN = 4;
const ERROR = 16;
const LARGE = 256 * 1024 * 1024;

interface Result {
  readonly type: number;
  readonly shown: string;
}

export function calculatedBySecondEngine(
  file: Uint8Array,
): (sheet: string, row: number, column: number) => CellValue {
  const book = XLSX.read(file, { cellFormula: true, sheetStubs: true });
  const sheets = book.SheetNames.map((name) => ({ name, cells: inputsOf(book.Sheets[name]!) }));
  const answer = execFileSync(process.execPath, [path.join(__dirname, "second-engine.mjs")], {
    input: JSON.stringify(sheets),
    encoding: "utf8",
    maxBuffer: LARGE,
  });
  const results = JSON.parse(answer) as Result[][];
  const at = new Map<string, Result>();
  sheets.forEach(({ name, cells }, sheet) =>
    cells.forEach(({ row, column }, index) => at.set(`${name} ${row} ${column}`, results[sheet]![index]!)),
  );
  return (sheet, row, column) => valueOf(at.get(`${sheet} ${row} ${column}`));
}

function valueOf(result: Result | undefined): CellValue {
  if (!result || result.shown === "") return null;
  if (result.type === NUMBER) return Number(result.shown);
  if (result.type === BOOLEAN) return result.shown === "TRUE";
  return result.type === ERROR ? `error ${result.shown}` : result.shown;
}

/** What would be typed to get what the file holds: formulas, numbers, texts as texts; no results. */
function inputsOf(sheet: XLSX.WorkSheet): { row: number; column: number; input: string }[] {
  return Object.entries(sheet).flatMap(([address, content]) => {
    if (address.startsWith("!")) return [];
    const cell = content as XLSX.CellObject;
    const { r: row, c: column } = XLSX.utils.decode_cell(address);
    const input = inputOf(cell);
    return input === undefined ? [] : [{ row, column, input }];
  });
}

function inputOf({ f, v, t }: XLSX.CellObject): string | undefined {
  if (f !== undefined) return `=${f}`;
  if (v === undefined || v === null || v === "") return undefined;
  if (t === "b") return v ? "TRUE" : "FALSE";
  return t === "n" ? String(v) : `'${String(v)}`;
}

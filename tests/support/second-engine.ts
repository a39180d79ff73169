/**
 * A written workbook file read by a second reader and calculated by a second engine.
 */
import * as XLSX from "@e965/xlsx";
import { typed, type Typed } from "../../src/commandline/engine";
import type { CellValue } from "../../src/workbook/data";
import { shownBy, type Shown } from "./calculated-sheets";

export function calculatedBySecondEngine(file: Uint8Array): Shown {
  const book = XLSX.read(file, { cellFormula: true, sheetStubs: true });
  const sheets = book.SheetNames.map((name) => ({ name, cells: inputsOf(book.Sheets[name]!) }));
  return shownBy(sheets, (name) => `error ${name}`);
}

/** What would be typed to get what the file holds: formulas, numbers, texts as texts; no results. */
function inputsOf(sheet: XLSX.WorkSheet): Typed[] {
  return Object.entries(sheet).flatMap(([address, content]) => {
    if (address.startsWith("!")) return [];
    const { f, v } = content as XLSX.CellObject;
    const { r: row, c: column } = XLSX.utils.decode_cell(address);
    const input = f === undefined ? typed((v as CellValue | undefined) ?? null) : `=${f}`;
    return input === undefined ? [] : [{ row, column, input }];
  });
}

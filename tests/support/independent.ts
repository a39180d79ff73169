/**
 * A workbook calculated anew by LibreOffice from nothing but its inputs, and held against the calculation module.
 */
import { readFileSync } from "node:fs";
import * as XLSX from "@e965/xlsx";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { cellAddress, type CellValue, type SheetData } from "../../src/workbook/data";
import { convertBytes } from "./libreoffice";
import { isSame, withoutResults } from "./recalculated";

type Read = (sheet: string, row: number, column: number) => CellValue;

/** Every cell as LibreOffice calculates it; the file that it is given holds no results. */
export async function calculatedByLibreOffice(sheets: readonly SheetData[]): Promise<Read> {
  const bytes = await writeWorkbookFile({ sheets: sheets.map(withoutResults) });
  const file = await convertBytes(bytes, "portable.xlsx", "xlsx:Calc MS Excel 2007 XML", {
    recalculate: true,
  });
  const book = XLSX.read(readFileSync(file));
  return (sheet, row, column) => {
    const cell = book.Sheets[sheet]?.[cellAddress(row, column)] as XLSX.CellObject | undefined;
    if (cell?.t === "e") return `error ${String(cell.w ?? cell.v)}`;
    return (cell?.v as CellValue | undefined) ?? null;
  };
}

/** What differs from the figures of the calculation module, which the same sheets with our functions hold. */
export function differencesFrom(module: readonly SheetData[], read: Read): string[] {
  return module.flatMap(({ name, cells }) =>
    cells
      .filter(({ formula }) => formula !== undefined)
      .flatMap(({ row, column, value, formula }) => {
        const found = read(name, row, column);
        const same = value === null ? String(found).startsWith("error") : isSame(found, value);
        return same
          ? []
          : [
              `${name} ${cellAddress(row, column)} =${formula}: module ${String(value)}, there ${String(found)}`,
            ];
      }),
  );
}

/** Cells that show an error. */
export function errorsIn(sheets: readonly SheetData[], read: Read): string[] {
  return sheets.flatMap(({ name, cells }) =>
    cells.flatMap(({ row, column, formula }) => {
      const found = read(name, row, column);
      return typeof found === "string" && found.startsWith("error")
        ? [`${name} ${cellAddress(row, column)} =${formula}: ${found}`]
        : [];
    }),
  );
}

/**
 * The named cells of an .xlsx file, whichever program saved it.
 */
import { readXlsx, type Cell, type Sheet } from "hucre/xlsx";
import type { CellValue } from "../../workbook/data";
import type { NamedCell, NamedSheet } from "../host";
import { placeIn } from "../reference";

const DAY_MS = 86_400_000;
/** Day 0 of spreadsheet dates from March 1900 on. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** Every sheet with a cell of this name, in the workbook's order. */
export async function readNamedSheets(file: Uint8Array, name: string): Promise<NamedSheet[]> {
  const book = await readXlsx(file);
  return book.sheets.flatMap((sheet): NamedSheet[] => {
    const cells = new Map(
      (book.namedRanges ?? []).flatMap(({ name: own, range, scope }): [string, NamedCell][] => {
        const place = scope === sheet.name ? placeIn(sheet.name, range) : undefined;
        return place ? [[own, { ...place, ...contentAt(sheet, place) }]] : [];
      }),
    );
    return cells.has(name) ? [{ name: sheet.name, cells }] : [];
  });
}

function contentAt(
  sheet: Sheet,
  { row, column }: { readonly row: number; readonly column: number },
): Pick<NamedCell, "value" | "calculated"> {
  const cell = sheet.cells?.get(`${row},${column}`);
  return {
    value: plain(cell?.value ?? sheet.rows[row]?.[column]),
    calculated: cell?.formula !== undefined,
  };
}

/** Dates as serial numbers; what is no value of a cell, an error for one, is nothing. */
function plain(value: Cell["value"] | undefined): CellValue {
  if (value instanceof Date) return (value.getTime() - DAY_ZERO) / DAY_MS;
  if (typeof value === "number" || typeof value === "boolean") return value;
  return typeof value === "string" && value !== "" && !/^#[A-Z0-9/]+[!?]?$/.test(value) ? value : null;
}

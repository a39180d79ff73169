/**
 * The named cells of an .xlsx file, whichever program saved it.
 */
import { readXlsx, type Cell, type Sheet } from "hucre/xlsx";
import { cellAddress, type CellValue } from "../../workbook/data";
import type { NamedCell, NamedSheet } from "../host";
import { placeIn, type Place } from "../reference";
import { FileRefusal, readableParts } from "./package";

const DAY_MS = 86_400_000;
/** Day 0 of spreadsheet dates from March 1900 on. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** Cells so far apart that the rows between them would fill the memory. */
const MOST_CELLS = 2_000_000;

/** Every sheet with a cell of this name, in the workbook's order. No other sheet is read. */
export async function readNamedSheets(file: Uint8Array, name: string): Promise<NamedSheet[]> {
  const parts = readableParts(file);
  const { namedRanges = [] } = await readXlsx(parts, { sheets: () => false });
  const named = new Map<string, Map<string, Place>>();
  for (const { name: own, range, scope } of namedRanges) {
    const place = scope === undefined ? undefined : placeIn(scope, range);
    if (scope === undefined || !place) continue;
    const places = named.get(scope) ?? new Map<string, Place>();
    named.set(scope, places.set(own, place));
  }
  for (const [sheet, places] of named) if (!places.has(name)) named.delete(sheet);
  if (named.size === 0) return [];

  const last = lastOf([...named.values()].flatMap((places) => [...places.values()]));
  const book = await readXlsx(parts, {
    sheets: (sheet) => named.has(sheet.name),
    range: `A1:${cellAddress(last.row, last.column)}`,
  });
  return book.sheets.map((sheet) => ({
    name: sheet.name,
    cells: new Map(
      [...(named.get(sheet.name) ?? [])].map(([own, place]): [string, NamedCell] => [
        own,
        { ...place, ...contentAt(sheet, place) },
      ]),
    ),
  }));
}

function lastOf(places: readonly Place[]): Place {
  const last = places.reduce(
    (one, other) => ({ row: Math.max(one.row, other.row), column: Math.max(one.column, other.column) }),
    { row: 0, column: 0 },
  );
  if ((last.row + 1) * (last.column + 1) > MOST_CELLS) {
    throw new FileRefusal(
      `the cells of its plans lie as far apart as ${cellAddress(last.row, last.column)}, ` +
        `over more than ${MOST_CELLS / 1_000_000} million cells`,
    );
  }
  return last;
}

function contentAt(sheet: Sheet, { row, column }: Place): Pick<NamedCell, "value" | "calculated"> {
  const cell = sheet.cells?.get(`${row},${column}`);
  return {
    value: isError(cell) ? null : plain(cell?.value ?? sheet.rows[row]?.[column]),
    calculated: cell?.formula !== undefined,
  };
}

/** "#N/A" as a result is an error; typed as a text it is one. */
const isError = (cell: Cell | undefined) =>
  cell?.type === "error" ||
  (cell?.formula !== undefined && typeof cell.value === "string" && /^#[A-Z0-9/]+[!?]?$/.test(cell.value));

/** Dates as serial numbers; what is no value of a cell is nothing. */
function plain(value: Cell["value"] | undefined): CellValue {
  if (value instanceof Date) return (value.getTime() - DAY_ZERO) / DAY_MS;
  if (typeof value === "number" || typeof value === "boolean") return value;
  return typeof value === "string" && value !== "" ? value : null;
}

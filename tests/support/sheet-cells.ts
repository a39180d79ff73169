/**
 * Cells of a sheet that is data, by place and by name.
 */
import type { Area, CellValue, PlacedCell, SheetData, Validation } from "../../src/workbook/data";

export const cellAt = ({ cells }: SheetData, row: number, column: number): PlacedCell | undefined =>
  cells.find((cell) => cell.row === row && cell.column === column);

export const placeNamed = ({ names }: SheetData, wanted: string) => names.find(({ name }) => name === wanted);

export function cellNamed(sheet: SheetData, name: string): PlacedCell | undefined {
  const place = placeNamed(sheet, name);
  return place && cellAt(sheet, place.row, place.column);
}

/** What an area of one sheet holds, row by row. */
export function valuesIn(sheet: SheetData, { row, column, lastRow, lastColumn }: Area): CellValue[] {
  const columns = Array.from({ length: lastColumn - column + 1 }, (_, index) => column + index);
  const rows = Array.from({ length: lastRow - row + 1 }, (_, index) => row + index);
  return rows.flatMap((at) => columns.map((each) => cellAt(sheet, at, each)?.value ?? null));
}

/** The rule of a named cell. */
export function ruleNamed(sheet: SheetData, name: string): Validation | undefined {
  const place = placeNamed(sheet, name);
  return sheet.validations.find(({ row, column }) => row === place?.row && column === place.column);
}

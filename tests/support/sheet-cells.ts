/**
 * Cells of a sheet that is data, by place and by name.
 */
import type { PlacedCell, SheetData } from "../../src/workbook/data";

export const cellAt = ({ cells }: SheetData, row: number, column: number): PlacedCell | undefined =>
  cells.find((cell) => cell.row === row && cell.column === column);

export const placeNamed = ({ names }: SheetData, wanted: string) => names.find(({ name }) => name === wanted);

export function cellNamed(sheet: SheetData, name: string): PlacedCell | undefined {
  const place = placeNamed(sheet, name);
  return place && cellAt(sheet, place.row, place.column);
}

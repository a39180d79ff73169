/**
 * Tables as the file stores them: their heads are those that stand in the cells.
 */
import type { TableDefinition } from "hucre/xlsx";
import { cellAddress, type SheetData, type TableData } from "../../workbook/data";
import { storedText } from "./text";

export function fileTable({ name, area }: TableData, { cells }: SheetData): TableDefinition {
  const { row, column, lastRow, lastColumn } = area;
  const heads = new Map(cells.filter((cell) => cell.row === row).map((cell) => [cell.column, cell.value]));
  return {
    name,
    range: `${cellAddress(row, column)}:${cellAddress(lastRow, lastColumn)}`,
    columns: Array.from({ length: lastColumn - column + 1 }, (_, index) => ({
      name: storedText(String(heads.get(column + index) ?? "")),
    })),
    // the cells have looks of their own
    showRowStripes: false,
  };
}

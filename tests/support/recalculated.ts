/**
 * A sheet in the grid, recalculated from nothing but its inputs and held against the calculation module's figures.
 */
import { cellAddress, type CellValue, type SheetData } from "../../src/workbook/data";
import type { HeadlessGrid } from "./grid";

const ERROR = /^#(N\/A|VALUE!)$/;
const CLOSE = 1e-9;

/** The same sheet with no cached result in it, so that every number seen afterwards was calculated by the grid. */
export function withoutResults(sheet: SheetData): SheetData {
  return {
    ...sheet,
    cells: sheet.cells.map((cell) => (cell.formula === undefined ? cell : { ...cell, value: null })),
  };
}

export function rawValues(grid: HeadlessGrid, sheetName: string): CellValue[][] {
  return grid.api
    .getActiveWorkbook()!
    .getSheetByName(sheetName)!
    .getDataRange()
    .getRawValues() as CellValue[][];
}

/** Whether a figure is the module's, to 1e-9 relative; null stands for an error. */
export function isSame(found: CellValue, planned: CellValue): boolean {
  if (planned === null) return ERROR.test(String(found));
  if (typeof planned !== "number") return (found ?? "") === planned;
  return (
    typeof found === "number" &&
    Math.abs(found - planned) <= CLOSE * Math.max(Math.abs(found), Math.abs(planned))
  );
}

/** What differs between the grid's results and the module's. */
export function differences(sheet: SheetData, cells: readonly (readonly CellValue[])[]): string[] {
  return sheet.cells
    .filter((cell) => cell.formula !== undefined)
    .flatMap(({ row, column, value, formula }) => {
      const found = cells[row]?.[column] ?? null;
      return isSame(found, value)
        ? []
        : [
            `${sheet.name} ${cellAddress(row, column)} =${formula}: module ${String(value)}, grid ${String(found)}`,
          ];
    });
}

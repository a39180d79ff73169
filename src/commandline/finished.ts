/**
 * Portable sheets with a result in every cell. The plan's figures are there already; the rows of workings are not
 * the calculation module's, and a program that only shows a file would leave them blank.
 */
import type { Formulas } from "../workbook/book";
import type { PlacedCell, SheetData } from "../workbook/data";
import { calculate, typed, type Result, type Typed } from "./engine";

/** As a file should hold them. */
export const finished = (sheets: readonly SheetData[], formulas: Formulas) =>
  formulas === "portable" ? withResults(sheets) : sheets;

function withResults(sheets: readonly SheetData[]): SheetData[] {
  const filled = sheets.map(({ name, cells }) => ({ name, cells: cells.flatMap(typedCell) }));
  const results = calculate(filled);
  return sheets.map((sheet, index) => {
    const found = new Map(
      filled[index]!.cells.map(({ row, column }, at) => [keyOf(row, column), results[index]![at]!]),
    );
    return { ...sheet, cells: sheet.cells.map((cell) => completed(cell, found)) };
  });
}

const lacksResult = ({ formula, value }: PlacedCell) => formula !== undefined && value === null;

function typedCell({ row, column, formula, value }: PlacedCell): Typed[] {
  const input = formula === undefined ? typed(value) : `=${formula}`;
  return input === undefined ? [] : [{ row, column, input }];
}

function completed(cell: PlacedCell, found: ReadonlyMap<string, Result>): PlacedCell {
  const result = lacksResult(cell) ? found.get(keyOf(cell.row, cell.column)) : undefined;
  // an error result has no cached value
  return result && "value" in result ? { ...cell, value: result.value ?? "" } : cell;
}

const keyOf = (row: number, column: number) => `${row},${column}`;

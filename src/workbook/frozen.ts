/**
 * Sheets that nothing calculates any more: each result stands as a value, and its formula as a note on the cell.
 */
import type { PlacedCell, SheetData } from "./data";

export const frozen = (sheets: readonly SheetData[]): SheetData[] =>
  sheets.map((sheet) => ({ ...sheet, cells: sheet.cells.map(frozenCell) }));

function frozenCell({ formula, ...cell }: PlacedCell): PlacedCell {
  return formula === undefined ? cell : { ...cell, note: `=${formula}` };
}

/**
 * Sheets that nothing calculates any more: each result stands as a value, and its formula as a note on the cell.
 */
import type { PlacedCell, SheetData } from "./data";

const SAYING_SO =
  "Values only, as they stood: nothing here is calculated any more. Where the program keeps notes, each formula is in a note on its cell.";

export const frozen = (sheets: readonly SheetData[]): SheetData[] =>
  sheets.map((sheet) => {
    const calculates = sheet.cells.some(({ formula }) => formula !== undefined);
    return calculates ? { ...sheet, cells: sheet.cells.map(frozenCell) } : sheet;
  });

function frozenCell({ formula, ...cell }: PlacedCell): PlacedCell {
  // the line below the title says that the sheet follows its inputs
  if (cell.style === "subtitle" && cell.error === undefined) return { ...cell, value: SAYING_SO };
  return formula === undefined ? cell : { ...cell, note: `=${formula}` };
}

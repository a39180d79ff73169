/**
 * A portable season calculated by a spreadsheet engine and held against the calculation module.
 */
import { seasonBook, type Batch } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { calculatedSheets, differing } from "./calculated-sheets";

const FEW = 10;

/** A sheet without the rows of workings, which hold no figure of the module's. */
export const figuresOf = (sheet: SheetData): SheetData => ({
  ...sheet,
  cells: sheet.cells.filter(({ value }) => value !== null),
});

/**
 * What differs in a season from the module's figures, which its cells hold, and what shows an error; no more than can
 * be read.
 */
export function seasonFaults(batches: readonly Batch[]): string[] {
  const sheets = seasonBook(batches, "portable");
  const shown = calculatedSheets(sheets);
  const found = sheets.flatMap((sheet) => {
    const errors = sheet.cells.flatMap(({ row, column, formula }) => {
      const seen = shown(sheet.name, row, column);
      return formula !== undefined && String(seen).startsWith("#") ? [`=${formula}: ${seen}`] : [];
    });
    return [...differing(figuresOf(sheet), shown, sheet.name), ...errors];
  });
  return found.slice(0, FEW);
}

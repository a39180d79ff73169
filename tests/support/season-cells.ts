/**
 * What stands where in a season: cells by their names, by their places, and all that an area holds.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import type { PlacedCell, SheetData } from "../../src/workbook/data";
import type { Batch } from "../../src/workbook/book";
import { linkedPlan, type LinkedPlan } from "../../src/workbook/linked-plan";
import { planSheet } from "../../src/workbook/plan/sheet";
import { seasonSheet } from "../../src/workbook/season/sheet";
import { changed, type Sections } from "../cellar/batch/worked-batch";
import { inputsOf } from "./samples";
import { cellAt, placeNamed } from "./sheet-cells";

/** The worked batch of round numbers with some fields changed. */
export const workedBatch = (changes: Sections = {}): Batch => {
  const inputs = inputsOf(changed(changes));
  return { inputs, plan: planBatch(inputs) };
};
export const seasonOf = (batches: readonly Batch[]) => seasonSheet(batches.map(linkedTo), []);

export const linkedTo = ({ inputs, plan }: Batch): LinkedPlan =>
  linkedPlan(inputs, plan, planSheet(inputs, plan, []));

export function placeOf(sheet: SheetData, name: string): { readonly row: number; readonly column: number } {
  const place = placeNamed(sheet, name);
  if (!place) throw new Error(`no cell is named ${name}`);
  return place;
}

export function namedCell(sheet: SheetData, name: string): PlacedCell {
  const { row, column } = placeOf(sheet, name);
  return cellAt(sheet, row, column)!;
}

export const valueOf = (sheet: SheetData, name: string) => namedCell(sheet, name).value;

/** The first so many cells of a row. */
export const lineOf = (sheet: SheetData, row: number, columns: number) =>
  Array.from({ length: columns }, (_, column) => cellAt(sheet, row, column)?.value);

/** The row whose first cell says this; `after` a row, where it is said more than once. */
export function rowSaying({ cells }: SheetData, words: string, after = -1): number {
  const found = cells.find(({ row, column, value }) => column === 0 && row > after && value === words);
  if (!found) throw new Error(`no row says ${words}`);
  return found.row;
}

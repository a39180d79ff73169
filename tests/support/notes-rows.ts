/**
 * The sheet Notes, row by row.
 */
import type { Source } from "../../src/cellar/rules/source";
import type { CellValue } from "../../src/workbook/data";
import { notesSheet } from "../../src/workbook/notes/sheet";
import { cellNamed } from "./sheet-cells";

export const notes = notesSheet([]);
export const valueNamed = (name: string) => cellNamed(notes, name)?.value;

/** What stands in each row, up to its last cell; null is blank. */
function rowsOf(): readonly (readonly CellValue[])[] {
  const rows: CellValue[][] = [];
  for (const { row, column, value } of notes.cells) {
    const cells = (rows[row] ??= []);
    while (cells.length < column) cells.push(null);
    cells[column] = value;
  }
  return Array.from(rows, (row) => row ?? []);
}
export const rows = rowsOf();
export const rowsWith = (...known: readonly CellValue[]) =>
  rows.filter((row) => known.every((each) => row.includes(each)));

/** Rows below a heading and its line of heads, up to the next blank row. */
export function below(heading: string): readonly (readonly CellValue[])[] {
  const first = rows.findIndex(([title]) => String(title).startsWith(heading)) + 2;
  const end = rows.findIndex((row, index) => index >= first && row.length === 0);
  return rows.slice(first, end);
}

export const withMark = ({ text, mark }: Source) => (mark === "practice" ? text : `${text} (${mark})`);

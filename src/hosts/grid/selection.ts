/**
 * The cell that is selected in the grid, and a formula put into it.
 */
import type { FUniver } from "@univerjs/core/facade";
import { cellAddress } from "../../workbook/data";
import type { SelectedCell } from "../host";
import type { Book } from "./book";
import { putCells } from "./change";

export function selectedCell(book: Book): SelectedCell {
  const worksheet = book.getActiveSheet();
  const range = worksheet.getActiveRange();
  if (!range) throw new Error("No cell is selected; select one first.");
  const [row, column] = [range.getRow(), range.getColumn()];
  return {
    sheet: worksheet.getSheetName(),
    address: cellAddress(row, column),
    content: contentOf(worksheet, row, column),
  };
}

/** Nothing is put in where the cell has changed since it was looked at. */
export function typeFormula(api: FUniver, book: Book, cell: SelectedCell, formula: string): void {
  const { sheet, address, content } = cell;
  const worksheet = book.getSheetByName(sheet);
  if (!worksheet) throw new Error(`There is no sheet named "${sheet}" any more.`);
  const range = worksheet.getRange(address);
  const [row, column] = [range.getRow(), range.getColumn()];
  if (contentOf(worksheet, row, column) !== content) {
    throw new Error(`${address} of "${sheet}" has changed meanwhile, so nothing was put in: try again.`);
  }
  const entry = { v: null, t: null, si: null, p: null, f: formula };
  putCells(api, book, [{ sheet, cells: { [row]: { [column]: entry } } }]);
}

function contentOf(worksheet: ReturnType<Book["getActiveSheet"]>, row: number, column: number): string {
  const range = worksheet.getRange(row, column);
  return range.getFormula() || String(range.getRawValue() ?? "");
}

/**
 * What is to be written, as data. A template makes it, a host writes it; neither knows the other.
 * Rows and columns count from 0. Formulas are en-US text without the leading "=" and call the add-in's functions
 * as MOUSSE.…; each host turns that into what its file or program stores.
 */
export type CellValue = string | number | boolean | null;

export type CellStyle =
  | "title"
  | "subtitle"
  | "heading"
  | "columnHead"
  | "numberHead"
  | "indentedHead"
  | "label"
  | "unit"
  | "note"
  | "input"
  | "result"
  | "total"
  | "key"
  | "verdict"
  | "caution";

export interface CellData {
  /** The value, or the cached result of the formula; null is blank, or an error result that has no cached value. */
  readonly value: CellValue;
  readonly formula?: string;
  readonly style: CellStyle;
  /** Number format, en-US; none means general. */
  readonly format?: string;
}

export interface PlacedCell extends CellData {
  readonly row: number;
  readonly column: number;
}

/** What an input cell accepts; the message is shown when the cell is entered or refused. */
export type Validation = {
  readonly row: number;
  readonly column: number;
  readonly title: string;
  readonly message: string;
  readonly allowBlank: boolean;
} & (
  | { readonly kind: "list"; readonly options: readonly string[] }
  | { readonly kind: "decimal" | "whole"; readonly min: number; readonly max: number }
  | { readonly kind: "date"; readonly min: number; readonly max: number }
  | { readonly kind: "textLength"; readonly max: number }
);

export interface DefinedName {
  readonly name: string;
  readonly row: number;
  readonly column: number;
}

export interface Merge {
  readonly row: number;
  readonly column: number;
  readonly lastColumn: number;
  /** The same row where not given. */
  readonly lastRow?: number;
}

export interface SheetData {
  readonly name: string;
  readonly cells: readonly PlacedCell[];
  /** Widths in characters of the default font, by column. */
  readonly columnWidths: readonly number[];
  /** Row heights in points where not the default. */
  readonly rowHeights: ReadonlyMap<number, number>;
  /** Merged cells, for text that runs over several columns. */
  readonly merges: readonly Merge[];
  readonly frozenRows: number;
  /** Names that hold within this sheet. */
  readonly names: readonly DefinedName[];
  readonly validations: readonly Validation[];
  /** Whether the program draws lines between all cells. */
  readonly gridlines: boolean;
  /** Printed one page wide and at most so many pages tall; 0 is as many as it takes. */
  readonly pagesTall: number;
}

export interface WorkbookData {
  readonly sheets: readonly SheetData[];
}

export function rowCount(sheet: SheetData): number {
  return sheet.cells.reduce((rows, cell) => Math.max(rows, cell.row + 1), 0);
}

export function columnCount(sheet: SheetData): number {
  return sheet.cells.reduce((columns, cell) => Math.max(columns, cell.column + 1), sheet.columnWidths.length);
}

/** "A", "B", … "AA". */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26);
  return (rest > 0 ? columnLetters(rest - 1) : "") + String.fromCharCode(65 + (column % 26));
}

export const cellAddress = (row: number, column: number) => `${columnLetters(column)}${row + 1}`;

/** A sheet's name as it stands in a formula. */
export const quotedSheet = (name: string) => `'${name.replaceAll("'", "''")}'`;

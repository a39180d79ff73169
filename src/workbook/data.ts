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
  | "totalWord"
  | "key"
  | "verdict"
  | "caution";

export interface CellData {
  /** The value, or the cached result of the formula; null is blank, or an error. */
  readonly value: CellValue;
  /** The error that stands there, "#VALUE!"; a file keeps it where no formula gives it. */
  readonly error?: string;
  readonly formula?: string;
  readonly style: CellStyle;
  /** Number format, en-US; none means general. */
  readonly format?: string;
  /** A note on the cell, shown when it is pointed at. */
  readonly note?: string;
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
} &
  /** `from`: cells that hold the options, for a list too long to stand in the rule itself. */
  (
    | { readonly kind: "list"; readonly options: readonly string[]; readonly from?: Area }
    | { readonly kind: "decimal" | "whole"; readonly min: number; readonly max: number }
    | { readonly kind: "date"; readonly min: number; readonly max: number }
    | { readonly kind: "textLength"; readonly max: number }
  );

/** A block of cells, in the same sheet where none is named. */
export interface Area {
  readonly sheet?: string;
  readonly row: number;
  readonly column: number;
  readonly lastRow: number;
  readonly lastColumn: number;
}

/** One line or one set of bars; its values are a single column or row of cells. */
export interface ChartSeries {
  readonly title: string;
  readonly values: Area;
  /** "gap": takes room but is not drawn; what a bar begins after. Shades and dashes tell series apart without colour. */
  readonly look: "solid" | "dashed" | "dotted" | "dark" | "light" | "gap";
}

export interface ChartAxis {
  readonly title: string;
  readonly format?: string;
  readonly min?: number;
  readonly max?: number;
}

/**
 * Drawn from cells, so that it follows them. "lines": x against y, both numbers. "bars": lying, one for each
 * category, the first on top; "stackedBars": the series end to end.
 */
export interface ChartData {
  readonly kind: "lines" | "bars" | "stackedBars";
  readonly title: string;
  /** What it shows, in a sentence, for those who cannot see it. */
  readonly description: string;
  /** Numbers along the horizontal axis of lines, words beside bars: a single column or row. */
  readonly categories: Area;
  readonly series: readonly ChartSeries[];
  readonly horizontal: ChartAxis;
  readonly vertical: ChartAxis;
  /** The cells it lies over. */
  readonly place: Area;
}

/** Cells that stand out while they hold this word, which says all that the look does. */
export interface Highlight {
  readonly word: string;
  readonly look: HighlightLook;
  readonly cells: readonly { readonly row: number; readonly column: number }[];
}
export type HighlightLook = "bad" | "doubtful";

/** A block with one line of heads that the program can sort and filter; its name is unique in a workbook. */
export interface TableData {
  readonly name: string;
  readonly area: Area;
}

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
  readonly frozenColumns: number;
  /** Names that hold within this sheet. */
  readonly names: readonly DefinedName[];
  readonly validations: readonly Validation[];
  readonly highlights: readonly Highlight[];
  readonly tables: readonly TableData[];
  readonly charts: readonly ChartData[];
  /** Whether the program draws lines between all cells. */
  readonly gridlines: boolean;
  /** Printed one page wide and at most so many pages tall; 0 is as many as it takes. */
  readonly pagesTall: number;
  readonly landscape: boolean;
  /** What is printed, where not all of it. */
  readonly printArea?: Area;
  /** Goes before all other sheets; otherwise after them. */
  readonly first?: boolean;
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

/** "'Plan · Brut'!$B$2:$B$9", as it stands in a rule or a chart. */
export function areaAddress({ sheet, row, column, lastRow, lastColumn }: Area, own: string): string {
  const corner = (r: number, c: number) => `$${columnLetters(c)}$${r + 1}`;
  const first = corner(row, column);
  const range = row === lastRow && column === lastColumn ? first : `${first}:${corner(lastRow, lastColumn)}`;
  return `${quotedSheet(sheet ?? own)}!${range}`;
}

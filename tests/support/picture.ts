/**
 * What a workbook shows, whichever host wrote it: the same picture from two hosts means that they did the same.
 */
import { cellAddress, columnLetters, type CellValue, type Validation } from "../../src/workbook/data";
import { RULE_TEXT, cut } from "../../src/workbook/rule-text";

export interface Picture {
  readonly sheets: readonly SheetPicture[];
  readonly active: string | null;
}

/** Cells by their addresses; nothing in it where a sheet has none. */
export interface SheetPicture {
  readonly name: string;
  /** Formulas with their "=", and their values not at all: not every host calculates. */
  readonly contents: Readonly<Record<string, CellValue>>;
  /** Number formats but for General. */
  readonly formats: Readonly<Record<string, string>>;
  readonly names: Readonly<Record<string, string>>;
  readonly merges: readonly string[];
  /** In characters, from the first column on. */
  readonly columnWidths: readonly number[];
  /** In points, by their numbers. */
  readonly rowHeights: Readonly<Record<number, number>>;
  readonly frozen: { readonly rows: number; readonly columns: number };
  readonly gridlines: boolean;
  readonly rules: Readonly<Record<string, string>>;
  /** The words that light a cell up, each with its fill. */
  readonly highlights: Readonly<Record<string, readonly string[]>>;
  readonly charts: readonly ChartPicture[];
  readonly notes: Readonly<Record<string, string>>;
  readonly tables: readonly string[];
  readonly page: { readonly landscape: boolean; readonly tall: number; readonly area: string };
}

export interface ChartPicture {
  readonly kind: string;
  readonly title: string;
  readonly series: number;
  readonly place: string;
}

export interface Block {
  readonly row: number;
  readonly column: number;
  readonly lastRow: number;
  readonly lastColumn: number;
}

export function blockText({ row, column, lastRow, lastColumn }: Block): string {
  const first = cellAddress(row, column);
  return row === lastRow && column === lastColumn ? first : `${first}:${cellAddress(lastRow, lastColumn)}`;
}

export function cellsOf({ row, column, lastRow, lastColumn }: Block): string[] {
  const addresses: string[] = [];
  for (let at = row; at <= lastRow; at++) {
    for (let across = column; across <= lastColumn; across++) addresses.push(cellAddress(at, across));
  }
  return addresses;
}

/** A rule as a sentence: kind, bounds, whether a blank will do, and what is said of it, cut as Excel cuts it. */
export const ruleText = (
  kind: Validation["kind"],
  bounds: readonly (string | number)[],
  { allowBlank, title, message }: Pick<Validation, "allowBlank" | "title" | "message">,
) =>
  `${kind} ${bounds.join(" to ")}${allowBlank ? " or blank" : ""} | ` +
  `${cut(title, RULE_TEXT.title)} | ${cut(message, RULE_TEXT.prompt)}`;

/** In the order of their keys, so that a difference is easy to read. */
export const sorted = <Value>(entries: Iterable<readonly [string, Value]>): Record<string, Value> =>
  Object.fromEntries([...entries].sort(([one], [other]) => (one < other ? -1 : 1)));

export const absolute = (row: number, column: number) => `$${columnLetters(column)}$${row + 1}`;

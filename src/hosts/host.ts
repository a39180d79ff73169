/**
 * The small interface through which pane and workbench reach whatever spreadsheet there is.
 */
import type { CellValue, WorkbookData } from "../workbook/data";

/** A cell that has a name within its sheet. */
export interface NamedCell {
  readonly row: number;
  readonly column: number;
  /** As shown at the time; an error is null. */
  readonly value: CellValue;
  /** Whether a formula stands in it. */
  readonly calculated: boolean;
}

/** A sheet that is there, with its named cells. */
export interface NamedSheet {
  readonly name: string;
  readonly cells: ReadonlyMap<string, NamedCell>;
}

/** A value for a cell that is there; text is put in as text, null clears the cell. */
export interface CellChange {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
}

/** The calls of our functions in one cell, with the values that they were last given. */
export interface CellCalls {
  readonly address: string;
  readonly calls: readonly { readonly id: string; readonly args: readonly unknown[] }[];
  /** Whether the cell shows an error. */
  readonly failed: boolean;
}

export interface Host {
  /** How the host is called in messages to the user: "this workbook". */
  readonly name: string;
  /** Names of the sheets there are; new sheets must not take one of them. */
  sheetNames(): Promise<readonly string[]>;
  /** Adds the sheets and shows the first one. Nothing that is there is touched; on failure nothing is left behind. */
  write(book: WorkbookData): Promise<void>;
  /** Every sheet with a cell of this name, in the workbook's order. */
  sheetsNaming(name: string): Promise<readonly NamedSheet[]>;
  /** Puts values into cells that are there: all or none, in one undo step where the host has such steps. */
  change(changes: readonly CellChange[]): Promise<void>;
  /** Tells of each cell that is selected what it calls; left out by a host that cannot see that. */
  watchSelection?(tell: (cell: CellCalls) => void): void;
}

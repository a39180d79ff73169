/**
 * The small interface through which pane and workbench reach whatever spreadsheet there is.
 */
import type { WorkbookData } from "../workbook/data";

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
  /** Tells of each cell that is selected what it calls; left out by a host that cannot see that. */
  watchSelection?(tell: (cell: CellCalls) => void): void;
}

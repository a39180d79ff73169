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
  /** Whether it, or what it reads from, needs its own result. */
  readonly circular?: true;
}

/** The formula of one cell, for a host that does not see what its functions are called with. */
export interface CellFormula {
  readonly address: string;
  /** "" if none stands there. */
  readonly formula: string;
  readonly value: CellValue;
  readonly failed: boolean;
  /** What stands in the cells that the formula names, row by row; undefined for what is no range or shows an error. */
  readonly valuesOf: (
    references: readonly string[],
  ) => Promise<readonly (readonly (readonly unknown[])[] | undefined)[]>;
}

/** The cell that is selected, as it is now. */
export interface SelectedCell {
  readonly sheet: string;
  /** "B7". */
  readonly address: string;
  /** What stands in it as it would be typed, "" if it is blank. */
  readonly content: string;
}

/** How far a long piece of work has come, and whether it is to go on. */
export interface Progress {
  readonly tell: (done: number, of: number) => void;
  readonly signal: AbortSignal;
}

export interface Host {
  /** How the host is called in messages to the user: "this workbook". */
  readonly name: string;
  /** Names of the sheets there are; new sheets must not take one of them. */
  sheetNames(): Promise<readonly string[]>;
  /**
   * Adds the sheets and shows the first one. Nothing that is there is touched; on failure, or when it is not to go on,
   * nothing is left behind. Answers with what this host left out, in words: charts, notes, print settings.
   */
  write(book: WorkbookData, progress?: Progress): Promise<readonly string[]>;
  /** Every sheet with a cell of this name, in the workbook's order. */
  sheetsNaming(name: string): Promise<readonly NamedSheet[]>;
  /** Puts values into cells that are there: all or none, in one undo step where the host has such steps. */
  change(changes: readonly CellChange[]): Promise<void>;
  /** Tells of each cell that is selected what it calls; left out by a host that cannot see that. */
  watchSelection?(tell: (cell: CellCalls | CellFormula) => void): void;
  selectedCell(): Promise<SelectedCell>;
  /** Puts a formula, with its "=", into a cell that still holds what it held when it was looked at. */
  typeFormula(cell: SelectedCell, formula: string): Promise<void>;
  /** Whether formulas that give way can stay as notes on their cells. */
  keepsNotes(): boolean;
  /** Results of a whole sheet stand as values from then on, formulas as notes where the host has notes. Answers how many. */
  freeze(sheet: string): Promise<number>;
  /** Takes sheets away again that this host has written; one that is gone already is no matter. */
  remove(sheets: readonly string[]): Promise<void>;
  /** A small setting that travels with the workbook. */
  recall(key: string): Promise<string | undefined>;
  keep(key: string, value: string): Promise<void>;
}

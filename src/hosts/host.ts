/**
 * The small interface through which pane and workbench reach whatever spreadsheet there is.
 */
import type { WorkbookData } from "../workbook/data";

export interface Host {
  /** How the host is called in messages to the user: "this workbook". */
  readonly name: string;
  /** Names of the sheets there are; new sheets must not take one of them. */
  sheetNames(): Promise<readonly string[]>;
  /** Adds the sheets and shows the first one. Nothing that is there is touched; on failure nothing is left behind. */
  write(book: WorkbookData): Promise<void>;
}

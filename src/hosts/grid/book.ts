/**
 * The open workbook, and the services behind the grid's public interface.
 */
import type { Injector } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";

export type Book = NonNullable<ReturnType<FUniver["getActiveWorkbook"]>>;
/** A sheet as the engine keeps it, behind the public one. */
export type Worksheet = ReturnType<ReturnType<Book["getActiveSheet"]>["getSheet"]>;

/** The public interface has no way to the undo steps and to names by the sheet. */
export const injectorOf = (api: FUniver) => (api as unknown as { readonly _injector: Injector })._injector;

/**
 * From the first cell of the sheet to the last that holds something; the grid's own begins where something is, and ends
 * past the sheet's edge where an address beyond it was gone to and typed into.
 */
export function filledRange(worksheet: ReturnType<Book["getActiveSheet"]>) {
  const { endRow, endColumn } = worksheet.getSheet().getCellMatrix().getDataRange();
  const within = (end: number, most: number) => Math.min(Math.max(end + 1, 1), most);
  return worksheet.getRange(
    0,
    0,
    within(endRow, worksheet.getMaxRows()),
    within(endColumn, worksheet.getMaxColumns()),
  );
}

/**
 * The open workbook, and the services behind the grid's public interface.
 */
import type { Injector } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";

export type Book = NonNullable<ReturnType<FUniver["getActiveWorkbook"]>>;

/** The public interface has no way to the undo steps and to names by the sheet. */
export const injectorOf = (api: FUniver) => (api as unknown as { readonly _injector: Injector })._injector;

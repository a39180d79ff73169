/**
 * A function called as Excel calls it, with Excel's own errors.
 */
import type { Adapter } from "./adapters";

export class CellError extends Error {
  constructor(
    readonly code: string,
    readonly sentence = "",
  ) {
    super(sentence);
  }
}
const page = globalThis as { CustomFunctions?: unknown };

/** What a call gives in Excel: its result, or the error with its sentence. */
export function inExcel(calculate: Adapter["calculate"], args: readonly unknown[]): unknown {
  const before = page.CustomFunctions;
  page.CustomFunctions = { Error: CellError, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" } };
  try {
    return calculate(...args);
  } catch (error) {
    if (!(error instanceof CellError)) throw error;
    return `${error.code} ${error.message}`;
  } finally {
    if (before === undefined) delete page.CustomFunctions;
    else page.CustomFunctions = before;
  }
}

/**
 * Formulas as the file stores them. Excel keeps a call of an add-in's function under another name:
 * MOUSSE.TIRAGE.SUGAR(…) is stored as _xldudf_MOUSSE_TIRAGE_SUGAR(…).
 */
import type { WorkbookData } from "../../workbook/data";
import { refuseTooLong, storedText } from "./text";

const LONGEST_FORMULA = 8192;
const LONGEST_LITERAL = 255;

/** String literals, quoted sheet names, and names with the bracket that makes them a call. */
const PIECES = /"(?:[^"]|"")*"|'(?:[^']|'')*'|[\p{L}_\\][\p{L}\p{N}_.\\?]*\(?/gu;
const ADDIN_CALL = /^MOUSSE(?:\.[A-Z0-9_]+)+\($/i;

/** Whole pieces are looked at, so a text or a sheet name that contains "MOUSSE.X(" stays as it is. */
function renameAddinCalls(formula: string): string {
  if (!/MOUSSE\./i.test(formula)) return formula;
  return formula.replace(PIECES, (piece) =>
    ADDIN_CALL.test(piece) ? `_xldudf_${piece.toUpperCase().replaceAll(".", "_")}` : piece,
  );
}

/** A longer text must be put together with &, or Excel cannot open the file. */
function refuseLongLiterals(formula: string, where: string): void {
  for (const [piece] of formula.matchAll(PIECES)) {
    if (!piece.startsWith('"')) continue;
    refuseTooLong(
      `A text in the formula of ${where}`,
      piece.slice(1, -1).replaceAll('""', '"'),
      LONGEST_LITERAL,
    );
  }
}

/** `where` names the cell, for the message when the formula is longer than a file can hold. */
export function storedFormula(formula: string, where: string): string {
  const renamed = renameAddinCalls(formula);
  refuseTooLong(`The formula in ${where}`, renamed, LONGEST_FORMULA);
  if (renamed.includes('"')) refuseLongLiterals(renamed, where);
  return storedText(renamed);
}

export function callsAddin(book: WorkbookData): boolean {
  return book.sheets.some((sheet) =>
    sheet.cells.some(({ formula }) => formula !== undefined && renameAddinCalls(formula) !== formula),
  );
}

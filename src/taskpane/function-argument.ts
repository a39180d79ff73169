/**
 * What is typed for one argument of a function, as it stands in a formula: a number, a cell, a range, a word.
 */
import { serialFromIso } from "../cellar/ageing";
import { wordGiven } from "../cellar/refusal";
import { columnOf } from "../hosts/reference";
import { quotedSheet } from "../workbook/data";
import { isAmbiguous, typedNumber } from "./typed-numbers";

/** The part of functions.json that says what an argument is. */
export interface Argument {
  readonly name: string;
  readonly description: string;
  readonly type?: string;
  readonly dimensionality?: string;
  readonly optional?: boolean;
}

/** Cells of a sheet, from 0; without a sheet those of the cell's own. */
export interface Reference {
  readonly sheet?: string;
  readonly rows: readonly [number, number];
  readonly columns: readonly [number, number];
}

/** The argument's text in a formula, "" where it is left out, or a sentence of what is to be mended. */
export type Typed =
  { readonly formula: string; readonly reference?: Reference } | { readonly problem: string };

const CELL_WORDS = "a cell such as B7";
const WANTED = {
  number: `a number or ${CELL_WORDS}`,
  date: `a date as 2026-03-31 or ${CELL_WORDS}`,
  range: "a range such as B2:B9, or numbers with ; between them",
  truth: `TRUE, FALSE or ${CELL_WORDS}`,
  text: `a word or ${CELL_WORDS}`,
} as const;
type Kind = keyof typeof WANTED;

export function kindOf({ type, dimensionality, description }: Argument): Kind {
  if (dimensionality === "matrix") return "range";
  if (type === "boolean") return "truth";
  if (type === "string") return "text";
  return description.includes("a spreadsheet date") ? "date" : "number";
}

/** A formula holds no longer text than this. */
const LONGEST_TEXT = 255;
const THOUSANDS = "write numbers without marks for thousands: 1250, or 1.25";

export function typedArgument(argument: Argument, typed: string): Typed {
  const text = typed.trim();
  const kind = kindOf(argument);
  const refused = (remedy: string) => ({ problem: `${argument.name} is ${wordGiven(text)}; ${remedy}` });
  if (text === "") return argument.optional ? { formula: "" } : refused(`give ${WANTED[kind]}`);

  // some write "=B7" for the cell itself
  const found = referenceIn(text.replace(/^=\s*/u, ""));
  if (found) {
    const { rows, columns } = found.reference;
    const isOne = rows[0] === rows[1] && columns[0] === columns[1];
    return isOne || kind === "range" ? found : refused("give one cell, such as B7");
  }
  if (text.startsWith("=")) return refused("a formula belongs in a cell of its own; refer to that cell");
  const formula = plainValue(kind, text);
  if (formula !== undefined) return { formula };
  if (kind === "text") {
    return refused(
      text.startsWith('"') ? "close the quotation mark" : `give at most ${LONGEST_TEXT} characters`,
    );
  }
  return refused(kind === "number" && isAmbiguous(text) ? THOUSANDS : `give ${WANTED[kind]}`);
}

/** A value that is no reference, as a formula has it; nothing where it is not of its kind. */
function plainValue(kind: Kind, text: string): string | undefined {
  const number = (each: string) => {
    const value = typedNumber(each);
    return typeof value === "number" ? String(value) : undefined;
  };
  switch (kind) {
    case "number":
      return number(text);
    case "date":
      if (serialFromIso(text) === undefined) return number(text);
      return `DATE(${text.split("-").map(Number).join(", ")})`;
    case "range": {
      const numbers = text
        .replace(/^\{|\}$/gu, "")
        .split(";")
        .map(number);
      return numbers.includes(undefined) ? undefined : `{${numbers.join(";")}}`;
    }
    case "truth":
      return { true: "TRUE", yes: "TRUE", false: "FALSE", no: "FALSE" }[text.toLowerCase()];
    case "text": {
      const isQuoted = /^"(?:[^"]|"")*"$/u.test(text);
      if (!isQuoted && text.startsWith('"')) return undefined;
      const quoted = isQuoted ? text : `"${text.replaceAll('"', '""')}"`;
      return quoted.length - 2 > LONGEST_TEXT ? undefined : quoted;
    }
  }
}

const REFERENCE =
  /^(?:(?:'(?<quoted>(?:[^']|'')+)'|(?<plain>[^'"![\]:*?/\\]+))!)?(?<first>\$?[a-z]{1,3}\$?[1-9]\d{0,6})(?::(?<last>\$?[a-z]{1,3}\$?[1-9]\d{0,6}))?$/iu;
const LAST_ROW = 1_048_576;
const LAST_COLUMN = 16_384;

/** "b7" or "Sheet1!$B$7:C9", if it is a cell or range that there can be. */
function referenceIn(text: string): { formula: string; reference: Reference } | undefined {
  const parts = REFERENCE.exec(text)?.groups;
  if (!parts) return undefined;
  const sheet = parts.quoted?.replaceAll("''", "'") ?? parts.plain;
  const ends = [parts.first, parts.last ?? parts.first].map((end) => placeOf(end!));
  if (ends.some(({ row, column }) => row >= LAST_ROW || column >= LAST_COLUMN)) return undefined;
  const span = (of: readonly number[]) => [Math.min(...of), Math.max(...of)] as const;
  const cells = [parts.first!, ...(parts.last ? [parts.last] : [])].join(":").toUpperCase();
  return {
    formula: sheet === undefined ? cells : `${sheetText(sheet)}!${cells}`,
    reference: {
      ...(sheet !== undefined && { sheet }),
      rows: span(ends.map(({ row }) => row)),
      columns: span(ends.map(({ column }) => column)),
    },
  };
}

function placeOf(address: string) {
  const [, letters = "", digits] = /^([A-Z]+)(\d+)$/u.exec(address.replaceAll("$", "").toUpperCase()) ?? [];
  return { row: Number(digits) - 1, column: columnOf(letters) };
}

/** A sheet's name as it stands before "!": in quotes unless it is a plain word that is not itself a cell. */
export const sheetText = (sheet: string) =>
  /^[a-z_][a-z0-9_]*$/iu.test(sheet) && !/^(?:[a-z]{1,3}\d+|r\d*c\d*|r|c)$/iu.test(sheet)
    ? sheet
    : quotedSheet(sheet);

const isSame = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

/** What is wrong with a reference once it is known into which cell it goes and which sheets there are. */
export function misplaced(
  { sheet, rows, columns }: Reference,
  into: { readonly sheet: string; readonly address: string },
  sheets: readonly string[],
): string | undefined {
  if (sheet !== undefined && !sheets.some((each) => isSame(each, sheet))) {
    return `there is no sheet “${sheet}”; give one of those in the workbook`;
  }
  const { row, column } = placeOf(into.address);
  const isIn = ([first, last]: readonly [number, number], at: number) => first <= at && at <= last;
  return isSame(sheet ?? into.sheet, into.sheet) && isIn(rows, row) && isIn(columns, column)
    ? `${into.address} is the cell that the call goes into; select another one, or refer to another`
    : undefined;
}

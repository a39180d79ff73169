/**
 * A spreadsheet engine for the command line, where no spreadsheet program runs.
 */
import { execFileSync } from "node:child_process";
import path from "node:path";
import type { CellValue } from "../workbook/data";

/** What would be typed into a cell; rows and columns count from 0. */
export interface Typed {
  readonly row: number;
  readonly column: number;
  readonly input: string;
}
export interface TypedSheet {
  readonly name: string;
  readonly cells: readonly Typed[];
}
/** What the cell then shows; an error by its name, not as a value. */
export type Result = { readonly value: CellValue } | { readonly error: string };

const NUMBER = 1;
const BOOLEAN = 4;
const ERROR = 16;
const LARGE = 1024 * 1024 * 1024;

/** The results of every cell, sheet by sheet in the order given. */
export function calculate(sheets: readonly TypedSheet[]): Result[][] {
  const answer = execFileSync(process.execPath, [path.join(__dirname, "engine.mjs")], {
    input: JSON.stringify(sheets),
    encoding: "utf8",
    maxBuffer: LARGE,
  });
  return resultsOf(JSON.parse(answer) as ShownCell[][]);
}

/** As the engine tells it. */
export interface ShownCell {
  readonly type: number;
  readonly shown: string;
}

export const resultsOf = (sheets: readonly (readonly ShownCell[])[]): Result[][] =>
  sheets.map((cells) => cells.map(resultOf));

function resultOf({ type, shown }: ShownCell): Result {
  if (type === ERROR) return { error: shown };
  if (shown === "") return { value: null };
  if (type === NUMBER) return { value: Number(shown) };
  return { value: type === BOOLEAN ? shown === "TRUE" : shown };
}

/** What to type so that the cell holds this value; nothing for a blank one. */
export function typed(value: CellValue): string | undefined {
  if (value === null || value === "") return undefined;
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "number" ? String(value) : `'${value}`;
}

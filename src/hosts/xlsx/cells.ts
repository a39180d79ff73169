/**
 * Cells as the file stores them: text stays text, a formula keeps its cached value.
 */
import type { Cell } from "hucre/xlsx";
import { cellAddress, quotedSheet, type PlacedCell, type SheetData } from "../../workbook/data";
import { readOtherwise } from "../typed-text";
import { storedFormula } from "./formula";
import { fileStyles } from "./look";
import { refuseTooLong, storedText } from "./text";

type FileCell = Partial<Cell>;

const LONGEST_TEXT = 32767;

/** Text that the library would write as an error value. */
const SEEMING_ERROR = /^#[A-Z0-9_/]+[!?]?$/;

/** The errors that the file format knows from its beginning; a program may call a file with another one damaged. */
const FILE_ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"]);

const keyOf = (row: number, column: number) => `${row},${column}`;

/** Blank is no value, and so is empty text: to a formula an empty text cell would not be blank. */
function fileValue({ value, error }: PlacedCell, where: string): FileCell {
  // the library writes the name of an error as one
  if (error !== undefined) return { value: FILE_ERRORS.has(error) ? error : "#VALUE!" };
  if (typeof value === "number" && !Number.isFinite(value)) {
    throw new RangeError(`${where} has the value ${value}; a cell holds a finite number.`);
  }
  if (typeof value !== "string") return { value };
  if (value === "") return { value: null };
  refuseTooLong(`The text in ${where}`, value, LONGEST_TEXT);
  const text = storedText(value);
  return SEEMING_ERROR.test(text) ? { richText: [{ text }] } : { value: text };
}

const isKeptAsText = ({ value, formula }: PlacedCell) =>
  formula === undefined && typeof value === "string" && readOtherwise(value);

/** No cached value for an error: the program that opens the file works it out. */
function fileResult({ value }: PlacedCell): FileCell["formulaResult"] {
  if (typeof value === "number" && !Number.isFinite(value)) return null;
  return typeof value === "string" ? storedText(value) : value;
}

export function fileCells(sheet: SheetData): Map<string, FileCell> {
  const styleOf = fileStyles();
  const cells = new Map<string, FileCell>();
  for (const cell of sheet.cells) {
    const where = `${quotedSheet(sheet.name)}!${cellAddress(cell.row, cell.column)}`;
    const content =
      cell.formula === undefined
        ? fileValue(cell, where)
        : { formula: storedFormula(cell.formula, where), formulaResult: fileResult(cell) };
    cells.set(keyOf(cell.row, cell.column), {
      ...content,
      style: styleOf(cell.style, cell.format, isKeptAsText(cell)),
      ...(cell.note !== undefined && { comment: { text: storedText(cell.note) } }),
    });
  }
  // a border runs under the whole merged text only if every merged cell has it
  for (const { row, column, lastColumn } of sheet.merges) {
    const style = cells.get(keyOf(row, column))?.style;
    for (let covered = column + 1; style && covered <= lastColumn; covered++) {
      if (!cells.has(keyOf(row, covered))) cells.set(keyOf(row, covered), { value: null, style });
    }
  }
  return cells;
}

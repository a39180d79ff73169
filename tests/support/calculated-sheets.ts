/**
 * Sheets calculated by the spreadsheet engine in WebAssembly, straight from what stands in their cells.
 */
import {
  calculate,
  resultsOf,
  typed,
  type ShownCell,
  type Typed,
  type TypedSheet,
} from "../../src/commandline/engine";
import { cellAddress, type CellValue, type PlacedCell, type SheetData } from "../../src/workbook/data";
import type { Batch } from "../../src/workbook/book";
import { notesSheet } from "../../src/workbook/notes/sheet";
import { planSheet } from "../../src/workbook/plan/sheet";
import { portable } from "../../src/workbook/portable/render";
import { isSame } from "./recalculated";
import { placeNamed } from "./sheet-cells";

/** Mutation testing keeps an engine; otherwise a process is started for it. */
const kept = globalThis as { calculateSheets?: (sheets: readonly TypedSheet[]) => ShownCell[][] };

export type Shown = (sheet: string, row: number, column: number) => CellValue;

/** What every cell shows; nothing but inputs and formulas goes in. An error is its name. */
export const calculatedSheets = (sheets: readonly SheetData[]): Shown =>
  shownBy(sheets.map(({ name, cells }) => ({ name, cells: cells.flatMap(typedCell) })));

export function shownBy(given: readonly TypedSheet[], errorAs = (name: string) => name): Shown {
  const results = kept.calculateSheets ? resultsOf(kept.calculateSheets(given)) : calculate(given);
  const at = new Map<string, CellValue>();
  given.forEach(({ name, cells }, sheet) =>
    cells.forEach(({ row, column }, index) => {
      const result = results[sheet]![index]!;
      at.set(`${name} ${row} ${column}`, "error" in result ? errorAs(result.error) : result.value);
    }),
  );
  return (sheet, row, column) => at.get(`${sheet} ${row} ${column}`) ?? null;
}

function typedCell({ row, column, formula, value }: PlacedCell): Typed[] {
  const input = formula === undefined ? typed(value) : `=${formula}`;
  return input === undefined ? [] : [{ row, column, input }];
}

/** This engine (0.8.4) counts no cell of ISNUMBER over a range; such formulas are left to the grid and LibreOffice. */
const NOT_HERE = /SUMPRODUCT\([^"]*ISNUMBER\([A-Z]+\d+:/;

/** What differs from the figures of the calculation module, which the sheet with our functions holds. */
export function differing({ cells }: SheetData, shown: Shown, sheet: string): string[] {
  return cells.flatMap(({ row, column, formula, value }) => {
    const found = shown(sheet, row, column);
    return formula === undefined || NOT_HERE.test(formula) || isSame(found, value)
      ? []
      : [`${sheet} ${cellAddress(row, column)} =${formula}: module ${String(value)}, there ${String(found)}`];
  });
}

/** By the name of an input cell, what somebody types into it; null clears it. */
export type Typing = Readonly<Record<string, CellValue>>;

/** The same sheet under another name, with something else in its input cells. */
export function typedOver(sheet: SheetData, name: string, typing: Typing): SheetData {
  const places = new Map(sheet.names.map((each) => [`${each.row} ${each.column}`, each.name]));
  const unknown = Object.keys(typing).filter((each) => !sheet.names.some((known) => known.name === each));
  if (unknown.length > 0) throw new Error(`no cells are named ${unknown.join(", ")}`);
  return {
    ...sheet,
    name,
    cells: sheet.cells.map((cell) => {
      const called = places.get(`${cell.row} ${cell.column}`);
      return called !== undefined && called in typing
        ? { ...cell, value: typing[called]!, formula: undefined }
        : cell;
    }),
  };
}

/** What a named cell shows. */
export function shownAs(data: SheetData, shown: Shown, sheet: string, name: string): CellValue {
  const place = placeNamed(data, name);
  if (!place) throw new Error(`no cell is named ${name}`);
  return shown(sheet, place.row, place.column);
}

/** A portable plan without the sheets beside it, and the notes that it reads. */
export function portablePlan({ inputs, plan }: Batch): {
  readonly plan: SheetData;
  readonly notes: SheetData;
} {
  const notes = notesSheet([]);
  const places = new Map(notes.names.map((each) => [each.name, each]));
  const sheet = planSheet(inputs, plan, [], { rendering: portable({ sheet: notes.name, places }) });
  return { plan: sheet, notes };
}

/**
 * Single calls of our functions in portable form, on a sheet of their own.
 */
import { blank, mousse, nth, type Expression } from "../../src/workbook/formula";
import { layOut, type Row } from "../../src/workbook/layout";
import { notesSheet } from "../../src/workbook/notes/sheet";
import { portable } from "../../src/workbook/portable/render";
import type { CellValue } from "../../src/workbook/data";
import { calculatedSheets } from "./calculated-sheets";

export type Argument = string | number | boolean | undefined;
export type Call = readonly [id: string, ...args: Argument[]];

const SHEET = "Calls";
/** The functions that answer with a row, and how long it may be. */
const COLUMNS: Readonly<Record<string, number>> = {
  "DOSAGE.RECIPE": 2,
  "TIRAGE.RANGE": 3,
  "SWEETNESS.TERMS": 7,
};
/** Of a table the columns that a sheet asks for. */
const TABLE_COLUMNS: Readonly<Record<string, readonly number[]>> = { "RIDDLING.SCHEDULE": [1, 2, 3, 5] };

function cellsOf([id, ...args]: Call): readonly Expression[] {
  const call = mousse(id, ...args.map((arg) => arg ?? blank));
  const [columns, table] = [COLUMNS[id], TABLE_COLUMNS[id]];
  if (table) {
    const rows = [1, 2, 3, Number(args[1]) * Number(args[2])];
    return rows.flatMap((row) =>
      table.map((column): Expression => {
        const [, ...place] = [0, row, column].map((value): Expression => ({ kind: "literal", value }));
        return { kind: "builtin", id: "INDEX", args: [call, ...place] };
      }),
    );
  }
  return columns === undefined ? [call] : Array.from({ length: columns }, (_, index) => nth(call, index + 1));
}

/** What the cells of each call show; an error is its name. */
export function calculatedCalls(calls: readonly Call[]): CellValue[][] {
  const notes = notesSheet([]);
  const rows: Row[] = calls.map((call) => ({
    cells: cellsOf(call).map((formula) => ({ value: null, formula, style: "result" })),
  }));
  const sheet = layOut({
    name: SHEET,
    rows,
    columnWidths: [10],
    page: { frozenRows: 0, pagesTall: 1, landscape: false },
    rendering: portable({ sheet: notes.name, places: new Map(notes.names.map((each) => [each.name, each])) }),
  });
  const shown = calculatedSheets([sheet, notes]);
  return rows.map(({ cells }, row) => cells.map((_, column) => shown(SHEET, row, column)));
}

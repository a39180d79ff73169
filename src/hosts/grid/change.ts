/**
 * Values into cells of the grid that are there: all or none, one step to undo.
 */
import type { ICellData } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import type { CellValue } from "../../workbook/data";
import type { CellChange } from "../host";
import type { Book } from "./book";
import { textKind } from "./text-kind";
import { inOneStep } from "./undo-step";

const SET_VALUES = "sheet.mutation.set-range-values";
/** The grid's kinds of value as plain numbers. */
const NUMBER = 2;
const BOOLEAN = 3;

type Worksheet = NonNullable<ReturnType<Book["getSheetByName"]>>;
export type Cells = Record<number, Record<number, ICellData>>;
interface Content {
  readonly cells: Cells;
  readonly back: Cells;
}

export function changeCells(api: FUniver, book: Book, changes: readonly CellChange[]): void {
  const bySheet = new Map<string, Cells>();
  for (const { sheet, row, column, value } of changes) {
    const cells = bySheet.get(sheet) ?? {};
    bySheet.set(sheet, cells);
    (cells[row] ??= {})[column] = cellOf(value);
  }
  putCells(
    api,
    book,
    [...bySheet].map(([sheet, cells]) => ({ sheet, cells })),
  );
}

/** Cells of several sheets in one step; what stood there comes back when it is undone. */
export function putCells(
  api: FUniver,
  book: Book,
  changes: readonly { readonly sheet: string; readonly cells: Cells }[],
): void {
  const unitId = book.getId();
  const bySheet = new Map<string, Content>();
  for (const { sheet, cells } of changes) {
    const worksheet = book.getSheetByName(sheet);
    if (!worksheet) throw new Error(`There is no sheet named "${sheet}" any more; nothing was changed.`);
    const back: Cells = {};
    for (const row of Object.keys(cells).map(Number)) {
      for (const column of Object.keys(cells[row]!).map(Number)) {
        (back[row] ??= {})[column] = contentOf(worksheet, row, column);
      }
    }
    bySheet.set(worksheet.getSheetId(), { cells, back });
  }
  if (bySheet.size === 0) return;
  inOneStep(api, unitId, (doIt) => {
    for (const [subUnitId, { cells, back }] of bySheet) {
      const setting = (cellValue: Cells) => ({ id: SET_VALUES, params: { unitId, subUnitId, cellValue } });
      doIt(setting(cells), setting(back));
    }
  });
}

/** Null takes away what was not there. */
function contentOf(worksheet: Worksheet, row: number, column: number): ICellData {
  const {
    v = null,
    t = null,
    f = null,
    si = null,
    p = null,
    custom = null,
  } = worksheet.getSheet().getCellRaw(row, column) ?? {};
  return { v, t, f, si, p, custom };
}

/** Formula, shared formula and text of several lines give way; looks and number format stay. */
function cellOf(value: CellValue): ICellData {
  const alone = { f: null, si: null, p: null };
  if (value === null) return { ...alone, v: null, t: null };
  if (typeof value === "boolean") return { ...alone, v: value ? 1 : 0, t: BOOLEAN };
  return { ...alone, v: value, t: typeof value === "string" ? textKind(value) : NUMBER };
}

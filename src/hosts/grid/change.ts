/**
 * Values into cells of the grid that are there: all or none, one step to undo.
 */
import type { ICellData, IObjectMatrixPrimitiveType, Nullable } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { SetRangeValuesUndoMutationFactory } from "@univerjs/sheets";
import type { CellValue } from "../../workbook/data";
import type { CellChange } from "../host";
import { injectorOf, type Book } from "./book";
import { inOneStep } from "./undo-step";

const SET_VALUES = "sheet.mutation.set-range-values";
/** The grid's kinds of value as plain numbers. */
const TEXT = 1;
const NUMBER = 2;
const BOOLEAN = 3;

type Cells = IObjectMatrixPrimitiveType<Nullable<ICellData>>;

export function changeCells(api: FUniver, book: Book, changes: readonly CellChange[]): void {
  const unitId = book.getId();
  const bySheet = new Map<string, Cells>();
  for (const { sheet, row, column, value } of changes) {
    const id = book.getSheetByName(sheet)?.getSheetId();
    if (id === undefined) {
      throw new Error(`There is no sheet named "${sheet}" any more; nothing was changed.`);
    }
    const cells = bySheet.get(id) ?? {};
    bySheet.set(id, cells);
    (cells[row] ??= {})[column] = cellOf(value);
  }
  if (bySheet.size === 0) return;
  inOneStep(api, unitId, (doIt) => {
    for (const [subUnitId, cellValue] of bySheet) {
      const params = { unitId, subUnitId, cellValue };
      const back = SetRangeValuesUndoMutationFactory(injectorOf(api), params);
      doIt({ id: SET_VALUES, params }, { id: SET_VALUES, params: back });
    }
  });
}

/** Formula, shared formula and text of several lines give way; looks and number format stay. */
function cellOf(value: CellValue): ICellData {
  const alone = { f: null, si: null, p: null };
  if (value === null) return { ...alone, v: null, t: null };
  if (typeof value === "boolean") return { ...alone, v: value ? 1 : 0, t: BOOLEAN };
  return { ...alone, v: value, t: typeof value === "string" ? TEXT : NUMBER };
}

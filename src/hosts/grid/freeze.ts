/**
 * A sheet's results as values, with the formulas as notes: nothing on it is calculated any more.
 */
import type { ICellData } from "@univerjs/core";
import type { FUniver } from "@univerjs/core/facade";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { filledRange, injectorOf, type Book, type Worksheet } from "./book";
import { putCells, type Cells } from "./change";
import { isErrorName } from "./from-grid";
import { textKind } from "./text-kind";
import type { CellMark } from "./to-grid";

const NUMBER = 2;
const BOOLEAN = 3;

/** Answers how many formulas there were. */
export function freezeSheet(api: FUniver, book: Book, name: string): number {
  const worksheet = book.getSheetByName(name);
  if (!worksheet) throw new Error(`There is no sheet named "${name}" any more; nothing was changed.`);
  const range = filledRange(worksheet);
  const formulas = range.getFormulas();
  const values = range.getRawValues() as (string | number | boolean | null)[][];
  const cells = spilled(api, book.getId(), worksheet.getSheet());
  let count = 0;
  formulas.forEach((line, row) =>
    line.forEach((formula, column) => {
      if (formula === "") return;
      const raw = worksheet.getSheet().getCellRaw(row, column) ?? {};
      (cells[row] ??= {})[column] = frozenCell(raw, formula, values[row]![column] ?? null);
      count++;
    }),
  );
  if (count > 0) putCells(api, book, [{ sheet: name, cells }]);
  return count;
}

/** Cells that a formula elsewhere fills: they would go with it. */
function spilled(api: FUniver, unitId: string, sheet: Worksheet): Cells {
  const data = injectorOf(api).get(FormulaDataModel).getArrayFormulaCellData();
  const filled = data[unitId]?.[sheet.getSheetId()] ?? {};
  const cells: Cells = {};
  for (const [row, columns] of Object.entries(filled)) {
    for (const [column, cell] of Object.entries((columns ?? {}) as Record<string, ICellData | null>)) {
      const { v = null, t = null } = cell ?? {};
      (cells[Number(row)] ??= {})[Number(column)] = {
        v,
        t: typeof v === "string" ? textKind(v) : t,
        ...(isErrorName(v) && {
          custom: markedError(sheet.getCellRaw(Number(row), Number(column))?.custom),
        }),
      };
    }
  }
  return cells;
}

function frozenCell(
  { custom, t }: ICellData,
  formula: string,
  value: string | number | boolean | null,
): ICellData {
  const mark = custom as CellMark | undefined;
  const noted: CellMark = {
    look: "label",
    ...mark,
    note: mark?.note === undefined ? formula : `${mark.note}\n${formula}`,
  };
  const type = typeof value === "string" ? textKind(value) : t === BOOLEAN ? BOOLEAN : NUMBER;
  return {
    f: null,
    si: null,
    p: null,
    v: value,
    t: value === null ? null : type,
    custom: isErrorName(value) ? markedError(noted) : noted,
  };
}

const markedError = (mark: ICellData["custom"]) =>
  ({ look: "label", ...mark, frozenError: true }) satisfies CellMark;

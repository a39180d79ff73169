/**
 * Rows of cells to a sheet: addresses are given out here, and only then are formulas written.
 */
import {
  cellAddress,
  type CellStyle,
  type CellValue,
  type DefinedName,
  type PlacedCell,
  type SheetData,
  type Validation,
} from "./data";
import type { Dialect, Expression } from "./formula";
import type { Field } from "../cellar/batch/field-kinds";
import { validationOf } from "./validation";

export interface CellSpec {
  readonly value: CellValue;
  readonly formula?: Expression;
  readonly style: CellStyle;
  readonly format?: string;
  /** Defined name within the sheet, and the name by which formulas ask for the cell. */
  readonly name?: string;
  /** The same for a cell that is only asked for by formulas, and needs no defined name. */
  readonly key?: string;
  /** The input field this cell holds. */
  readonly field?: Field;
}

export interface Row {
  readonly cells: readonly (CellSpec | undefined)[];
  /** A cell that runs on over the columns to the right: the column it starts in, and the last one. */
  readonly merge?: readonly [column: number, lastColumn: number];
  /** Lines of wrapped text, where more than one. */
  readonly lines?: number;
}

const POINTS_PER_LINE = 13.5;
const LINE_PADDING = 2;

export type Page = Pick<SheetData, "frozenRows" | "pagesTall">;

export function layOut(
  name: string,
  rows: readonly Row[],
  columnWidths: readonly number[],
  { frozenRows, pagesTall }: Page,
  write: Dialect,
): SheetData {
  const addresses = new Map<string, string>();
  const names: DefinedName[] = [];
  rows.forEach(({ cells }, row) =>
    cells.forEach((spec, column) => {
      const asked = spec?.name ?? spec?.key;
      if (asked === undefined) return;
      if (addresses.has(asked)) throw new Error(`two cells are named ${asked}`);
      addresses.set(asked, cellAddress(row, column));
      if (spec?.name !== undefined) names.push({ name: spec.name, row, column });
    }),
  );
  const locate = (wanted: string) => {
    const address = addresses.get(wanted);
    if (address === undefined) throw new Error(`no cell is named ${wanted}`);
    return address;
  };

  const cells: PlacedCell[] = [];
  const validations: Validation[] = [];
  rows.forEach((each, row) =>
    each.cells.forEach((spec, column) => {
      if (spec === undefined) return;
      const { value, formula, style, format, field } = spec;
      cells.push({
        row,
        column,
        value,
        style,
        ...(formula && { formula: write(formula, locate) }),
        ...(format !== undefined && { format }),
      });
      if (field) validations.push({ row, column, ...validationOf(field) });
    }),
  );
  return {
    name,
    cells,
    columnWidths,
    rowHeights: new Map(
      rows.flatMap(({ lines }, row) =>
        lines !== undefined && lines > 1 ? [[row, lines * POINTS_PER_LINE + LINE_PADDING] as const] : [],
      ),
    ),
    merges: rows.flatMap(({ merge }, row) =>
      merge ? [{ row, column: merge[0], lastColumn: merge[1] }] : [],
    ),
    frozenRows,
    names,
    validations,
    gridlines: false,
    pagesTall,
  };
}

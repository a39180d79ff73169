/**
 * The grid's snapshot back to workbook data: whatever the user has changed since is what is read.
 */
import type { ICellData, IWorkbookData, IWorksheetData } from "@univerjs/core";
import type { DefinedName, PlacedCell, SheetData, WorkbookData } from "../../workbook/data";
import { type CellMark, type SheetMark, pointsOfPixels, widthOfPixels } from "./to-grid";
import { highlightFromGrid, type GridHighlight } from "./highlights";
import { ruleFromGrid, type GridRule } from "./validation";

const BOOLEAN_CELL = 3;
const ERROR_RESULT =
  /^#(N\/A|VALUE!|REF!|NAME\?|NUM!|DIV\/0!|NULL!|SPILL!|CALC!|CYCLE!|ERROR!|GETTING_DATA)$/;
const DEFAULT_WIDTH = 12;

interface GridName {
  readonly name: string;
  readonly formulaOrRefString: string;
  readonly localSheetId?: string;
}

/** Formulas of a sheet as text, row by row: the snapshot keeps some only as "like that other cell". */
export type FormulasOf = (sheetId: string) => readonly (readonly string[])[];

export function workbookFromGrid(snapshot: IWorkbookData, formulasOf: FormulasOf): WorkbookData {
  const names = Object.values(
    resource<Record<string, GridName>>(snapshot, "SHEET_DEFINED_NAME_PLUGIN") ?? {},
  );
  const rules = resource<Record<string, GridRule[]>>(snapshot, "SHEET_DATA_VALIDATION_PLUGIN") ?? {};
  const highlights =
    resource<Record<string, GridHighlight[]>>(snapshot, "SHEET_CONDITIONAL_FORMATTING_PLUGIN") ?? {};
  return {
    sheets: snapshot.sheetOrder.flatMap((id) => {
      const sheet = snapshot.sheets[id];
      if (!sheet) return [];
      const own = names.filter((each) => each.localSheetId === id);
      return [
        sheetFromGrid(sheet, snapshot.styles, formulasOf(id), own, rules[id] ?? [], highlights[id] ?? []),
      ];
    }),
  };
}

function resource<T>(snapshot: IWorkbookData, plugin: string): T | undefined {
  const data = snapshot.resources?.find(({ name }) => name === plugin)?.data;
  return data ? (JSON.parse(data) as T) : undefined;
}

function sheetFromGrid(
  sheet: Partial<IWorksheetData>,
  styles: IWorkbookData["styles"],
  formulas: readonly (readonly string[])[],
  names: readonly GridName[],
  rules: readonly GridRule[],
  highlights: readonly GridHighlight[],
): SheetData {
  const cells: PlacedCell[] = [];
  for (const [row, columns] of Object.entries(sheet.cellData ?? {})) {
    for (const [column, cell] of Object.entries((columns ?? {}) as Record<string, ICellData>)) {
      // beyond the sheet's edge only the cell itself says what it holds
      const formula = (formulas[Number(row)]?.[Number(column)] ?? cell.f ?? "").replace(/^=/, "");
      cells.push(cellFromGrid(cell, Number(row), Number(column), formatOf(cell), formula));
    }
  }
  // a sheet of the user's own has none
  const mark = (sheet.custom ?? {}) as Partial<SheetMark>;
  const columnData = sheet.columnData ?? {};
  const columns = Math.max(0, ...Object.keys(columnData).map((column) => Number(column) + 1));
  return {
    name: sheet.name ?? "Sheet",
    cells,
    columnWidths: Array.from({ length: columns }, (_, column) => {
      const width = columnData[column]?.w;
      return width === undefined ? DEFAULT_WIDTH : widthOfPixels(width);
    }),
    rowHeights: new Map(
      Object.entries(
        (sheet.rowData ?? {}) as Record<string, { h?: number; ia?: number } | undefined>,
      ).flatMap(([row, data]) =>
        data?.h !== undefined && data.ia === 0 ? [[Number(row), pointsOfPixels(data.h)] as const] : [],
      ),
    ),
    merges: (sheet.mergeData ?? []).map(({ startRow, endRow, startColumn, endColumn }) => ({
      row: startRow,
      column: startColumn,
      lastColumn: endColumn,
      ...(endRow > startRow && { lastRow: endRow }),
    })),
    frozenRows: Math.max(0, sheet.freeze?.ySplit ?? 0),
    frozenColumns: Math.max(0, sheet.freeze?.xSplit ?? 0),
    names: names.flatMap(definedName),
    validations: rules.flatMap(ruleFromGrid),
    highlights: highlights.flatMap(highlightFromGrid),
    tables: mark.tables ?? [],
    charts: mark.charts ?? [],
    gridlines: sheet.showGridlines !== 0,
    pagesTall: mark.pagesTall ?? 0,
    landscape: mark.landscape ?? false,
    ...(mark.printArea && { printArea: mark.printArea }),
  };

  function formatOf(cell: ICellData): string | undefined {
    const style = typeof cell.s === "string" ? styles[cell.s] : cell.s;
    return style?.n?.pattern;
  }
}

function cellFromGrid(
  cell: ICellData,
  row: number,
  column: number,
  format: string | undefined,
  formula: string | undefined,
): PlacedCell {
  const isFormula = formula !== undefined && formula !== "";
  const mark = cell.custom as CellMark | undefined;
  return {
    row,
    column,
    // a cell of the user's own is plain
    style: mark?.look ?? "label",
    value: valueFromGrid(cell, isFormula),
    ...(isError(cell, isFormula) && { error: cell.v }),
    ...(isFormula && { formula }),
    ...(format !== undefined && { format }),
    ...(mark?.note !== undefined && { note: mark.note }),
  };
}

export function valueFromGrid({ v, t, p, custom }: ICellData, isFormula: boolean): PlacedCell["value"] {
  // text of several lines is kept as a small document, which ends with a line of its own
  if (p?.body) return p.body.dataStream.replace(/\r\n$/, "").replaceAll("\r", "\n");
  if (v === undefined || v === null) return null;
  if (t === BOOLEAN_CELL) return v === true || v === 1 || v === "1" || v === "TRUE";
  return isError({ v, custom }, isFormula) ? null : v;
}

export const isErrorName = (value: unknown): value is string =>
  typeof value === "string" && ERROR_RESULT.test(value);

const isError = (cell: ICellData, isFormula: boolean): cell is { v: string } =>
  (isFormula || (cell.custom as CellMark | undefined)?.frozenError === true) && isErrorName(cell.v);

/** "'Plan · Brut'!$B$12" to its place; a name that is not one cell is left behind. */
function definedName({ name, formulaOrRefString }: GridName): DefinedName[] {
  const match = /!\$?([A-Z]+)\$?(\d+)$/.exec(formulaOrRefString);
  if (!match) return [];
  const column = [...match[1]!].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  return [{ name, row: Number(match[2]) - 1, column }];
}

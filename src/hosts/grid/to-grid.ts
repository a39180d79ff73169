/**
 * A sheet as data to the grid's own worksheet data.
 */
import type { ICellData, IBorderData, IStyleData, IWorksheetData } from "@univerjs/core";
import {
  columnCount,
  rowCount,
  type CellStyle,
  type ChartData,
  type PlacedCell,
  type TableData,
  type SheetData,
  type Area,
} from "../../workbook/data";
import { BORDER_COLOR, FONT, FONT_SIZE, looks } from "../../workbook/styles";
import { textKind } from "./text-kind";

// The grid library's enumerations as plain numbers, so that this file needs only its types.
const TRUE = 1;
const THIN_BORDER = 1;
const ALIGN = { left: 1, center: 2, right: 3 } as const;
const MIDDLE = 2;
const WRAP = 3;

const INDENT_PIXELS = 8;
const PIXELS_PER_CHARACTER = 7.2;
const PIXELS_PER_POINT = 96 / 72;
export const widthOfPixels = (pixels: number) => Math.round((pixels / PIXELS_PER_CHARACTER) * 10) / 10;
export const pointsOfPixels = (pixels: number) => pixels / PIXELS_PER_POINT;

const SPARE_ROWS = 40;
const SPARE_COLUMNS = 6;

/** What the grid keeps for us beside a cell and a sheet, to read it back. */
export interface CellMark {
  readonly look: CellStyle;
  readonly note?: string;
  /** An error that no formula gives any more, as the sheet was frozen. */
  readonly frozenError?: true;
}
export interface SheetMark {
  readonly pagesTall: number;
  readonly landscape: boolean;
  readonly charts: readonly ChartData[];
  readonly tables: readonly TableData[];
  readonly printArea?: Area;
}

function styleOf(style: CellStyle, format: string | undefined): IStyleData {
  const look = looks[style];
  const edge = { s: THIN_BORDER, cl: { rgb: `#${BORDER_COLOR}` } };
  const borders: Record<string, IBorderData> = {
    box: { t: edge, b: edge, l: edge, r: edge },
    below: { b: edge },
    above: { t: edge },
  };
  return {
    ff: FONT,
    fs: look.size ?? FONT_SIZE,
    vt: MIDDLE,
    ...(look.bold && { bl: TRUE }),
    ...(look.italic && { it: TRUE }),
    ...(look.color !== undefined && { cl: { rgb: `#${look.color}` } }),
    ...(look.fill !== undefined && { bg: { rgb: `#${look.fill}` } }),
    ...(look.border && { bd: borders[look.border] }),
    ...(look.align && { ht: ALIGN[look.align] }),
    ...(look.wrap && { tb: WRAP }),
    ...(look.indent && { pd: { l: INDENT_PIXELS } }),
    ...(format !== undefined && { n: { pattern: format } }),
  };
}

function cellOf({ value, formula, style, format, note }: PlacedCell): ICellData {
  return {
    ...(value !== null && { v: value }),
    ...(typeof value === "string" && { t: textKind(value) }),
    ...(formula !== undefined && { f: `=${formula}` }),
    s: styleOf(style, format),
    custom: { look: style, ...(note !== undefined && { note }) } satisfies CellMark,
  };
}

export function worksheetData(sheet: SheetData, id: string): Partial<IWorksheetData> {
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const cell of sheet.cells) (cellData[cell.row] ??= {})[cell.column] = cellOf(cell);
  const { pagesTall, landscape, charts, tables, printArea, frozenRows, frozenColumns } = sheet;
  const covered = (last: "lastRow" | "lastColumn") =>
    charts.reduce((most, { place }) => Math.max(most, place[last] + 1), 0);
  return {
    id,
    name: sheet.name,
    rowCount: Math.max(rowCount(sheet), covered("lastRow")) + SPARE_ROWS,
    columnCount: Math.max(columnCount(sheet), covered("lastColumn")) + SPARE_COLUMNS,
    cellData,
    columnData: Object.fromEntries(
      sheet.columnWidths.map((width, column) => [column, { w: Math.round(width * PIXELS_PER_CHARACTER) }]),
    ),
    rowData: Object.fromEntries(
      [...sheet.rowHeights].map(([row, points]) => [row, { h: points * PIXELS_PER_POINT, ia: 0 }]),
    ),
    mergeData: sheet.merges.map(({ row, column, lastColumn }) => ({
      startRow: row,
      endRow: row,
      startColumn: column,
      endColumn: lastColumn,
    })),
    freeze: {
      xSplit: frozenColumns,
      ySplit: frozenRows,
      startRow: frozenRows,
      startColumn: frozenColumns,
    },
    showGridlines: sheet.gridlines ? 1 : 0,
    custom: { pagesTall, landscape, charts, tables, ...(printArea && { printArea }) } satisfies SheetMark,
  };
}

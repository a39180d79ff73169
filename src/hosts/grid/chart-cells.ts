/**
 * A chart of the grid with what its cells hold just now.
 */
import { cellAddress, type Area, type CellValue, type ChartData } from "../../workbook/data";
import type { Book } from "./book";
import { valueFromGrid } from "./from-grid";
import type { SheetMark } from "./to-grid";

type Sheet = ReturnType<Book["getActiveSheet"]>;

/** Values in the order of the cells; series in the order of the chart's. */
export interface ChartReading {
  readonly chart: ChartData;
  readonly categories: readonly CellValue[];
  readonly series: readonly (readonly CellValue[])[];
}

/** The charts of a sheet as it was written; they do not move with rows and columns that are inserted since. */
export function chartsOf(sheet: Sheet): readonly ChartData[] {
  return (sheet.getSheet().getConfig().custom as Partial<SheetMark> | undefined)?.charts ?? [];
}

export function readChart(book: Book, sheet: Sheet, chart: ChartData): ChartReading {
  const valuesIn = (area: Area) =>
    values(area.sheet === undefined ? sheet : book.getSheetByName(area.sheet), area);
  return {
    chart,
    categories: valuesIn(chart.categories),
    series: chart.series.map((series) => valuesIn(series.values)),
  };
}

/** Of a sheet that is there no more every cell is blank. */
function values(sheet: Sheet | null, { row, column, lastRow, lastColumn }: Area): CellValue[] {
  const cells = sheet?.getSheet();
  const found: CellValue[] = [];
  for (let r = row; r <= lastRow; r++) {
    for (let c = column; c <= lastColumn; c++) {
      const cell = cells?.getCellRaw(r, c);
      found.push(cell ? valueFromGrid(cell, Boolean(cell.f) || Boolean(cell.si)) : null);
    }
  }
  return found;
}

/** Its name on its sheet: a place holds one chart. */
export const chartId = (sheetId: string, { place }: ChartData) =>
  `${sheetId} ${cellAddress(place.row, place.column)}`;

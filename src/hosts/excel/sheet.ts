/**
 * One sheet in pieces: nothing here waits for Excel.
 */
import { columnLetters, quotedSheet, type SheetData } from "../../workbook/data";
import { MARGIN_INCHES } from "../../workbook/styles";
import {
  areaAt,
  columnAddresses,
  listsOf,
  rangeAt,
  rectangleAddress,
  rectangles,
  rowAddresses,
} from "./areas";
import { writeContents } from "./contents";
import { groupedBy } from "./grouping";
import { addHighlights } from "./highlights";
import { applyLooks } from "./looks";
import type { Offered } from "./offered";
import { costOf, rangeCost, SHEET_COST, settingCost, type Pieces } from "./sizes";
import { addValidations } from "./validations";

/** A character of the default font is 7 pixels wide, a cell has 5 pixels more, and a pixel is 3/4 point. */
const widthInPoints = (characters: number) => characters * 5.25 + 3.75;

export function* writeSheet(sheet: Excel.Worksheet, data: SheetData, offered: Offered): Pieces {
  yield SHEET_COST;
  yield* writeContents(sheet, data);
  if (offered.sizesAndMerges) {
    yield* mergeCells(sheet, data, offered);
    yield* setSizes(sheet, data, offered);
  }
  yield* applyLooks(sheet, data, offered);
  if (offered.names) yield* addNames(sheet, data);
  if (offered.validations) yield* addValidations(sheet, data, offered);
  if (offered.highlights) yield* addHighlights(sheet, data, offered);
  yield costOf(1, 2, "$A$1:$A$1");
  if (offered.frozen) freeze(sheet.freezePanes, data);
  if (offered.gridlines) sheet.showGridlines = data.gridlines;
}

function freeze(panes: Excel.WorksheetFreezePanes, { frozenRows, frozenColumns }: SheetData): void {
  if (frozenRows > 0 && frozenColumns > 0) {
    panes.freezeAt(
      rectangleAddress({ row: 0, column: 0, lastRow: frozenRows - 1, lastColumn: frozenColumns - 1 }),
    );
  } else if (frozenRows > 0) panes.freezeRows(frozenRows);
  else if (frozenColumns > 0) panes.freezeColumns(frozenColumns);
}

function* mergeCells(sheet: Excel.Worksheet, { merges }: SheetData, offered: Offered): Pieces {
  for (const group of groupedBy(merges, ({ column, lastColumn }) => `${column}:${lastColumn}`)) {
    const { column, lastColumn } = group[0];
    const blocks = rectangles(group.map(({ row }) => ({ row, column }))).map((block) => ({
      ...block,
      lastColumn,
    }));
    // row by row, so that rows below one another can go in one call
    const addresses = blocks.map(rectangleAddress);
    for (const address of addresses) {
      yield rangeCost(address) + costOf(0, 1, true);
      rangeAt(sheet, address).merge(true);
    }
    for (const list of listsOf(addresses, offered)) {
      yield rangeCost(list) + costOf(1, 1, true);
      areaAt(sheet, list).format.wrapText = true;
    }
  }
}

function* setSizes(
  sheet: Excel.Worksheet,
  { columnWidths, rowHeights }: SheetData,
  offered: Offered,
): Pieces {
  const columns = columnWidths.map((width, column) => ({ width, column }));
  for (const group of groupedBy(columns, ({ width }) => width)) {
    const addresses = columnAddresses(group.map(({ column }) => column));
    const points = widthInPoints(group[0].width);
    for (const list of listsOf(addresses, offered)) {
      yield rangeCost(list) + costOf(1, 1, points);
      areaAt(sheet, list).format.columnWidth = points;
    }
  }
  const rows = [...rowHeights].map(([row, height]) => ({ row, height }));
  for (const group of groupedBy(rows, ({ height }) => height)) {
    const addresses = rowAddresses(group.map(({ row }) => row));
    for (const list of listsOf(addresses, offered)) {
      yield rangeCost(list) + costOf(1, 1, group[0].height);
      areaAt(sheet, list).format.rowHeight = group[0].height;
    }
  }
}

function* addNames(sheet: Excel.Worksheet, { name: sheetName, names }: SheetData): Pieces {
  for (const { name, row, column } of names) {
    const reference = `=${quotedSheet(sheetName)}!$${columnLetters(column)}$${row + 1}`;
    yield costOf(1, 0, name, reference);
    sheet.names.add(name, reference);
  }
}

const POINTS_PER_INCH = 72;

export function* layOutPages(sheet: Excel.Worksheet, { pagesTall, landscape, printArea }: SheetData): Pieces {
  const margin = MARGIN_INCHES * POINTS_PER_INCH;
  const area = printArea && rectangleAddress(printArea);
  const settings: Excel.Interfaces.PageLayoutUpdateData = {
    topMargin: margin,
    bottomMargin: margin,
    leftMargin: margin,
    rightMargin: margin,
    orientation: landscape ? "Landscape" : "Portrait",
    paperSize: "A4",
    // as many pages as it takes is said by saying nothing
    zoom: { horizontalFitToPages: 1, ...(pagesTall > 0 && { verticalFitToPages: pagesTall }) },
  };
  yield SHEET_COST + settingCost({ settings }) + (area === undefined ? 0 : costOf(0, 1, area));
  if (area !== undefined) sheet.pageLayout.setPrintArea(area);
  sheet.pageLayout.set(settings);
}

/**
 * One sheet, queued in full: nothing here waits for Excel.
 */
import { columnLetters, quotedSheet, type SheetData } from "../../workbook/data";
import { MARGIN_INCHES } from "../../workbook/styles";
import { areasAt, columnAddresses, rangeAt, rectangleAddress, rectangles, rowAddresses } from "./areas";
import { writeContents } from "./contents";
import { groupedBy } from "./grouping";
import { addHighlights } from "./highlights";
import { applyLooks } from "./looks";
import type { Offered } from "./offered";
import { addValidations } from "./validations";

/** A character of the default font is 7 pixels wide, a cell has 5 pixels more, and a pixel is 3/4 point. */
const widthInPoints = (characters: number) => characters * 5.25 + 3.75;

export function writeSheet(sheet: Excel.Worksheet, data: SheetData, offered: Offered): void {
  writeContents(sheet, data);
  if (offered.sizesAndMerges) {
    mergeCells(sheet, data, offered);
    setSizes(sheet, data, offered);
  }
  applyLooks(sheet, data, offered);
  if (offered.names) addNames(sheet, data);
  if (offered.validations) addValidations(sheet, data, offered);
  if (offered.highlights) addHighlights(sheet, data, offered);
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

function mergeCells(sheet: Excel.Worksheet, { merges }: SheetData, offered: Offered): void {
  for (const group of groupedBy(merges, ({ column, lastColumn }) => `${column}:${lastColumn}`)) {
    const { column, lastColumn } = group[0];
    const blocks = rectangles(group.map(({ row }) => ({ row, column }))).map((block) => ({
      ...block,
      lastColumn,
    }));
    // row by row, so that rows below one another can go in one call
    for (const block of blocks) rangeAt(sheet, rectangleAddress(block)).merge(true);
    for (const area of areasAt(sheet, blocks.map(rectangleAddress), offered)) area.format.wrapText = true;
  }
}

function setSizes(sheet: Excel.Worksheet, { columnWidths, rowHeights }: SheetData, offered: Offered): void {
  const columns = columnWidths.map((width, column) => ({ width, column }));
  for (const group of groupedBy(columns, ({ width }) => width)) {
    const addresses = columnAddresses(group.map(({ column }) => column));
    const points = widthInPoints(group[0].width);
    for (const area of areasAt(sheet, addresses, offered)) area.format.columnWidth = points;
  }
  const rows = [...rowHeights].map(([row, height]) => ({ row, height }));
  for (const group of groupedBy(rows, ({ height }) => height)) {
    const addresses = rowAddresses(group.map(({ row }) => row));
    for (const area of areasAt(sheet, addresses, offered)) area.format.rowHeight = group[0].height;
  }
}

function addNames(sheet: Excel.Worksheet, { name: sheetName, names }: SheetData): void {
  for (const { name, row, column } of names) {
    sheet.names.add(name, `=${quotedSheet(sheetName)}!$${columnLetters(column)}$${row + 1}`);
  }
}

const POINTS_PER_INCH = 72;

export function layOutPages(sheet: Excel.Worksheet, { pagesTall, landscape, printArea }: SheetData): void {
  const margin = MARGIN_INCHES * POINTS_PER_INCH;
  if (printArea) sheet.pageLayout.setPrintArea(rectangleAddress(printArea));
  sheet.pageLayout.set({
    topMargin: margin,
    bottomMargin: margin,
    leftMargin: margin,
    rightMargin: margin,
    orientation: landscape ? "Landscape" : "Portrait",
    paperSize: "A4",
    // as many pages as it takes is said by saying nothing
    zoom: { horizontalFitToPages: 1, ...(pagesTall > 0 && { verticalFitToPages: pagesTall }) },
  });
}

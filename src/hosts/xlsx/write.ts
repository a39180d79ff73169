/**
 * Workbook data → an .xlsx file. The only place that knows the library; runs in Node and in the browser.
 */
import { writeXlsx, type WriteSheet } from "hucre/xlsx";
import {
  columnLetters,
  quotedSheet,
  type SheetData,
  type WorkbookData,
  areaAddress,
} from "../../workbook/data";
import { FONT, FONT_SIZE, MARGIN_INCHES } from "../../workbook/styles";
import { fileCells } from "./cells";
import { fileChart } from "./chart";
import { chartEdits } from "./chart-part";
import { callsAddin } from "./formula";
import { keepingText } from "./look";
import { editParts } from "./part";
import { storedText } from "./text";
import { fileHighlight } from "./highlight";
import { fileTable } from "./table";
import { fileValidation } from "./validation";

/** Same data, same file: the dates are those that the library gives every part of the zip, not today's. */
const FIXED_DATE = new Date(Date.UTC(1980, 0, 1));

/** Characters → the file's unit, which includes 5 px of padding; a digit of the default font is 7 px wide. */
const fileWidth = (characters: number) => Math.trunc(((characters * 7 + 5) / 7) * 256) / 256;

const MARGINS = {
  top: MARGIN_INCHES,
  bottom: MARGIN_INCHES,
  left: MARGIN_INCHES,
  right: MARGIN_INCHES,
  header: MARGIN_INCHES / 2,
  footer: MARGIN_INCHES / 2,
};

function fileSheet(sheet: SheetData): WriteSheet {
  const rows = Math.max(0, ...[...sheet.rowHeights.keys()].map((row) => row + 1));
  return {
    name: storedText(sheet.name),
    columns: sheet.columnWidths.map((characters) => ({ width: fileWidth(characters) })),
    // the library forgets the height of a row below the last cell unless the row is there
    rows: Array.from({ length: rows }, () => []),
    rowDefs: new Map([...sheet.rowHeights].map(([row, height]) => [row, { height }])),
    cells: fileCells(sheet),
    // Excel calls a file damaged that merges one cell with itself
    merges: sheet.merges
      .filter(({ row, column, lastColumn, lastRow = row }) => lastColumn > column || lastRow > row)
      .map(({ row, column, lastColumn, lastRow = row }) => ({
        startRow: row,
        startCol: column,
        endRow: lastRow,
        endCol: lastColumn,
      })),
    freezePane:
      sheet.frozenRows + sheet.frozenColumns > 0
        ? { rows: sheet.frozenRows, columns: sheet.frozenColumns }
        : undefined,
    conditionalRules: sheet.highlights.map(fileHighlight),
    tables: sheet.tables.map((table) => fileTable(table, sheet)),
    dataValidations: sheet.validations.map((validation) => fileValidation(validation, sheet.name)),
    charts: sheet.charts.map((chart) => fileChart(chart, sheet.name)),
    pageSetup: {
      paperSize: "a4",
      orientation: sheet.landscape ? "landscape" : "portrait",
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: sheet.pagesTall,
      margins: MARGINS,
    },
    view: { showGridLines: sheet.gridlines },
  };
}

const fileNames = (sheet: SheetData) => [
  ...sheet.names.map(({ name, row, column }) => ({
    name,
    range: storedText(`${quotedSheet(sheet.name)}!$${columnLetters(column)}$${row + 1}`),
    scope: storedText(sheet.name),
  })),
  // the library's own option writes the sheet's name without its quotes
  ...(sheet.printArea
    ? [
        {
          name: "_xlnm.Print_Area",
          range: storedText(areaAddress(sheet.printArea, sheet.name)),
          scope: storedText(sheet.name),
        },
      ]
    : []),
];

/**
 * The library asks for a full calculation when the file is opened. Without the add-in, or before it has
 * loaded, that turns every cached value into #NAME?, which Excel may leave so. A current calculation engine's
 * number and no such request make Excel keep the values until an input changes.
 */
const withoutCalculation = (workbookXml: string) =>
  workbookXml.replace(/<calcPr [^>]*\/>/, '<calcPr calcId="191029"/>');

/** LibreOffice believes cached texts only from a program whose name begins so; others' show as #NAME?. */
const asExcelCompatible = (propertiesXml: string) =>
  propertiesXml.replace(/<Application>[^<]*</, "<Application>Microsoft Excel compatible<");

const keepingCachedValues = { "xl/workbook.xml": withoutCalculation, "docProps/app.xml": asExcelCompatible };

export async function writeWorkbookFile(book: WorkbookData): Promise<Uint8Array> {
  const [first] = book.sheets;
  if (!first) throw new RangeError("The workbook has no sheets; a file needs at least one.");
  const file = await writeXlsx({
    sheets: book.sheets.map(fileSheet),
    namedRanges: book.sheets.flatMap(fileNames),
    defaultFont: { name: FONT, size: FONT_SIZE },
    properties: { title: storedText(first.name), created: FIXED_DATE, modified: FIXED_DATE },
  });
  return editParts(file, {
    "xl/styles.xml": keepingText,
    ...(callsAddin(book) && keepingCachedValues),
    ...chartEdits(book.sheets),
  });
}

/**
 * What a sheet can do without: tables, notes on cells, charts, and print settings, which a machine without a printer
 * refuses. By the time they are added the cells are calculated, so that Excel takes a chart's numbers for numbers.
 */
import { cellAddress, type SheetData } from "../../workbook/data";
import { rangeAt, rectangleAddress } from "./areas";
import { addCharts } from "./charts";
import type { Offered } from "./offered";
import { chartBytes, noteBytes, PAGE_BYTES, TABLE_BYTES } from "./requests";
import { layOutPages } from "./sheet";

export interface Extra {
  readonly what: string;
  readonly offered: (offered: Offered) => boolean;
  readonly bytes: (data: SheetData) => number;
  readonly add: (sheet: Excel.Worksheet, data: SheetData) => void;
}

/** Print settings last, as they are refused most often. */
export const extras: readonly Extra[] = [
  {
    what: "tables",
    offered: () => true,
    bytes: ({ tables }) => TABLE_BYTES * tables.length,
    add: addTables,
  },
  { what: "notes on cells", offered: ({ notes }) => notes, bytes: noteBytes, add: addNotes },
  { what: "charts", offered: ({ charts }) => charts, bytes: chartBytes, add: addCharts },
  {
    what: "print settings",
    offered: ({ printing }) => printing,
    bytes: () => PAGE_BYTES,
    add: layOutPages,
  },
];

/** Excel gives the table a name that is free. The cells have looks of their own. */
function addTables(sheet: Excel.Worksheet, { tables }: SheetData): void {
  for (const { area } of tables) {
    sheet.tables
      .add(rangeAt(sheet, rectangleAddress(area)), true)
      .set({ style: "TableStyleLight1", showBandedRows: false });
  }
}

function addNotes(sheet: Excel.Worksheet, { cells }: SheetData): void {
  for (const { row, column, note } of cells) {
    if (note !== undefined) sheet.notes.add(cellAddress(row, column), note);
  }
}

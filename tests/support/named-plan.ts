/**
 * A small sheet with every kind of named cell.
 */
import type { SheetData } from "../../src/workbook/data";
import { cell, sheetOf } from "./excel-writing";

export const names = ["volume", "term", "ready", "double", "failed", "blank", "formulaLike", "date"];
export const namedPlan = (name: string, more: Partial<SheetData> = {}): SheetData =>
  sheetOf(
    [
      cell("Volume"),
      cell(12.5, { column: 1, style: "input", format: "0.0" }),
      cell("Brut", { row: 1, column: 1 }),
      cell(true, { row: 2, column: 1 }),
      cell(25, { row: 3, column: 1, formula: "B1*2" }),
      cell(null, { row: 4, column: 1, formula: "MOUSSE.TIRAGE.SUGAR(-1, 24)" }),
      cell(null, { row: 5, column: 1, style: "input" }),
      cell("=1+1", { row: 6, column: 1 }),
      cell(46_000, { row: 7, column: 1, format: "yyyy-mm-dd" }),
    ],
    {
      name,
      names: names.map((each, row) => ({ name: each, row, column: 1 })),
      validations: [
        { row: 0, column: 1, kind: "decimal", min: 0, max: 99, title: "t", message: "m", allowBlank: true },
      ],
      ...more,
    },
  );

/**
 * What a sheet shows, and whether it can be turned into values now.
 */
import { cellAddress } from "../../workbook/data";
import { rangeAt, rectangleAddress, untracked, type Rectangle } from "./areas";
import { entryOf, holdsFormula } from "./contents";
import type { Offered } from "./offered";

/** A cell and what would have to be typed to get what it shows. */
export interface Shown {
  readonly row: number;
  readonly column: number;
  readonly entry: string | number | boolean;
}
export interface Result extends Shown {
  readonly formula: string;
  /** Excel lends a formula that is typed the format of what it reads. */
  readonly format: string;
}
interface Found {
  readonly area: Rectangle;
  readonly results: readonly Result[];
  /** Cells without a formula of their own. */
  readonly others: readonly Shown[];
}

/** What Excel shows while a function has not answered yet. */
const WAITING = /^#(BUSY|GETTING_DATA|CONNECT)!?$/;

/** An answer holds at most 5 MB too; so many of our cells are some 1 MB. */
const CELLS_AT_ONCE = 9_000;
/** Read before it is known how large a sheet is; larger than most. */
const FIRST: Rectangle = { row: 0, column: 0, lastRow: 299, lastColumn: 29 };

/** An area, which may be empty, in slices of whole rows. */
export function slicesOf(area: Rectangle): Rectangle[] {
  const slices: Rectangle[] = [];
  const columns = area.lastColumn - area.column + 1;
  if (columns < 1) return slices;
  const rows = Math.max(1, Math.floor(CELLS_AT_ONCE / columns));
  for (let row = area.row; row <= area.lastRow; row += rows) {
    slices.push({ ...area, row, lastRow: Math.min(row + rows - 1, area.lastRow) });
  }
  return slices;
}

const CONTENTS = "values,formulas,valueTypes,numberFormat,rowIndex,columnIndex";

/** In one round trip, unless the sheet is large. */
export async function read(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  name: string,
  offered: Offered,
): Promise<Found | undefined> {
  const used = untracked(sheet.getUsedRangeOrNullObject(true));
  used.load("rowIndex,columnIndex,rowCount,columnCount");
  const corner = rangeAt(sheet, rectangleAddress(FIRST));
  const first = untracked(used.getIntersectionOrNullObject(corner)).load(CONTENTS);
  const protection = offered.protection ? sheet.protection.load("protected") : undefined;
  const { application } = context;
  application.load("calculationMode");
  await context.sync();
  if (sheet.isNullObject) throw new Error(`There is no sheet named "${name}" any more; nothing was changed.`);
  if (protection?.protected) {
    throw new Error(`"${name}" is protected; nothing was changed. Take its protection off first.`);
  }
  if (application.calculationMode === "Manual") {
    throw new Error(
      "This workbook is calculated by hand, so results may be old; nothing was changed. Set it to calculate by itself first.",
    );
  }
  if (used.isNullObject) return undefined;
  const { rowIndex: row, columnIndex: column, rowCount, columnCount } = used;
  const area = { row, column, lastRow: row + rowCount - 1, lastColumn: column + columnCount - 1 };
  const parts = first.isNullObject ? [] : [first];
  const beside = {
    ...area,
    column: Math.max(column, FIRST.lastColumn + 1),
    lastRow: Math.min(area.lastRow, FIRST.lastRow),
  };
  const below = { ...area, row: Math.max(row, FIRST.lastRow + 1) };
  for (const slice of [...slicesOf(beside), ...slicesOf(below)]) {
    parts.push(rangeAt(sheet, rectangleAddress(slice)).load(CONTENTS));
    await context.sync();
  }
  return checked({ area, ...foundIn(parts) });
}

function checked(found: Found): Found {
  const waiting = found.results.find(({ entry }) => WAITING.test(String(entry)));
  if (!waiting) return found;
  const at = cellAddress(waiting.row, waiting.column);
  throw new Error(`${at} is still being calculated; nothing was changed. Wait until it shows its result.`);
}

function foundIn(ranges: readonly Excel.Range[]): Omit<Found, "area"> {
  const results: Result[] = [];
  const others: Shown[] = [];
  for (const { values, formulas, valueTypes, numberFormat, rowIndex, columnIndex } of ranges) {
    (values as Shown["entry"][][]).forEach((line, down) =>
      line.forEach((value, across) => {
        const formula: unknown = formulas[down]![across];
        // an error stays the error that it is
        const entry = valueTypes[down]![across] === "Error" ? value : entryOf(value);
        const shown = { row: rowIndex + down, column: columnIndex + across, entry };
        if (holdsFormula(formula, value)) {
          results.push({ ...shown, formula: String(formula), format: String(numberFormat[down]![across]) });
        } else if (value !== "") others.push(shown);
      }),
    );
  }
  return { results, others };
}

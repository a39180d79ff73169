/**
 * Values, formulas and number formats, each as one block for the sheet, or as a few where it is large.
 */
import { cellAddress, type CellValue, type PlacedCell, type SheetData } from "../../workbook/data";
import { readOtherwise } from "../typed-text";
import { rangeAt, rectangleAddress, rectangles, type Rectangle } from "./areas";
import { blockCost, textBytes, type Pieces } from "./sizes";

type Entry = string | number | boolean;

const GENERAL = "General";

/**
 * What is written as a formula is read as if it were typed. An apostrophe keeps text text and is not part of
 * the value; the text format "@" would also turn what a user later types in that cell into text.
 */
export const asTyped = (text: string) => (readOtherwise(text) ? `'${text}` : text);

/** A text may begin with "=" too; then it is its own value, as Excel gives it without its apostrophe. */
export const holdsFormula = (formula: unknown, value: unknown) =>
  typeof formula === "string" && formula.startsWith("=") && formula !== value;

export const entryOf = (value: CellValue) => (typeof value === "string" ? asTyped(value) : (value ?? ""));

export function* writeContents(sheet: Excel.Worksheet, { cells }: SheetData): Pieces {
  const all = boundsOf(cells);
  if (!all) return;
  // "" is blank, and shorter than null
  yield* setBlock(sheet, "formulas", all, block<Entry, PlacedCell>(all, cells, "", written));

  // After the formulas, and General where a formula has no format: Excel lends a formula the format of what
  // it reads. null leaves a cell alone.
  const formatted = cells.filter((cell) => cell.format !== undefined || cell.formula !== undefined);
  const bounds = boundsOf(formatted);
  if (!bounds) return;
  const formats = block<string | null, PlacedCell>(bounds, formatted, null, ({ format = GENERAL }) => format);
  yield* setBlock(sheet, "numberFormat", bounds, formats);
}

/** The rows of a block that go together: no more than fill up a request well. */
const ROWS_BYTES = 250_000;

/** A block of any size, as one where it is small. */
export function* setBlock(
  sheet: Excel.Worksheet,
  what: "formulas" | "numberFormat",
  area: Rectangle,
  entries: readonly (readonly unknown[])[],
): Pieces {
  let [from, bytes] = [0, 0];
  for (const [index, line] of entries.entries()) {
    bytes += textBytes(line);
    if (bytes < ROWS_BYTES && index < entries.length - 1) continue;
    const address = rectangleAddress({ ...area, row: area.row + from, lastRow: area.row + index });
    yield blockCost(address, index + 1 - from, line.length, bytes);
    rangeAt(sheet, address)[what] = entries.slice(from, index + 1) as unknown[][];
    [from, bytes] = [index + 1, 0];
  }
}

function written({ value, formula }: PlacedCell): Entry {
  if (formula !== undefined) return `=${formula}`;
  return entryOf(value);
}

/** Only these cells, on a sheet that has its looks and formats. */
export function* writeCells(sheet: Excel.Worksheet, cells: readonly PlacedCell[]): Pieces {
  for (const { area, within } of gathered(cells)) {
    yield* setBlock(sheet, "formulas", area, block<Entry, PlacedCell>(area, within, "", written));
  }
  // again, as Excel has just lent these a format
  const general = cells.filter(
    ({ formula, format = GENERAL }) => formula !== undefined && format === GENERAL,
  );
  for (const { area, within } of gathered(general)) {
    yield* setBlock(
      sheet,
      "numberFormat",
      area,
      block(area, within, "", () => GENERAL),
    );
  }
}

/** Cells, each given once, as full rectangles. */
export function gathered<Cell extends Placed>(
  cells: readonly Cell[],
): { readonly area: Rectangle; readonly within: readonly Cell[] }[] {
  const placed = new Map(cells.map((cell) => [`${cell.row} ${cell.column}`, cell]));
  return rectangles(cells).map((area) => {
    const within: Cell[] = [];
    for (let row = area.row; row <= area.lastRow; row++) {
      for (let column = area.column; column <= area.lastColumn; column++) {
        within.push(placed.get(`${row} ${column}`)!);
      }
    }
    return { area, within };
  });
}

type Placed = Pick<PlacedCell, "row" | "column">;

function boundsOf(cells: readonly PlacedCell[]): Rectangle | undefined {
  return cells.reduce<Rectangle | undefined>(
    (bounds, { row, column }) => ({
      row: Math.min(bounds?.row ?? row, row),
      column: Math.min(bounds?.column ?? column, column),
      lastRow: Math.max(bounds?.lastRow ?? row, row),
      lastColumn: Math.max(bounds?.lastColumn ?? column, column),
    }),
    undefined,
  );
}

export function block<Filling, Cell extends Placed>(
  { row, column, lastRow, lastColumn }: Rectangle,
  cells: readonly Cell[],
  filling: Filling,
  entry: (cell: Cell) => Filling,
): Filling[][] {
  const rows = Array.from({ length: lastRow - row + 1 }, () =>
    Array.from({ length: lastColumn - column + 1 }, () => filling),
  );
  for (const cell of cells) {
    const entries = rows[cell.row - row];
    if (!entries) throw new Error(`${cellAddress(cell.row, cell.column)} is not in the block`);
    entries[cell.column - column] = entry(cell);
  }
  return rows;
}

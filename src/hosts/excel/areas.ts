/**
 * Many cells as few ranges: what a call costs is mostly the object it is made on.
 */
import { cellAddress, columnLetters } from "../../workbook/data";
import type { Offered } from "./offered";

export interface Rectangle {
  readonly row: number;
  readonly column: number;
  readonly lastRow: number;
  readonly lastColumn: number;
}

/** One range or several; both have a format and a data validation. */
export type Area = Excel.Range | Excel.RangeAreas;

/** The longest address that every Excel takes for several ranges at once. */
const LONGEST_ADDRESS = 255;

/** Cells, each given once, gathered into rectangles: down first or across first, whichever needs fewer. */
export function rectangles(cells: readonly { readonly row: number; readonly column: number }[]): Rectangle[] {
  const single = cells.map(({ row, column }) => ({ row, column, lastRow: row, lastColumn: column }));
  const downFirst = joinedAcross(joinedDown(single));
  const acrossFirst = joinedDown(joinedAcross(single));
  return acrossFirst.length < downFirst.length ? acrossFirst : downFirst;
}

export function rectangleAddress({ row, column, lastRow, lastColumn }: Rectangle): string {
  const first = cellAddress(row, column);
  return row === lastRow && column === lastColumn ? first : `${first}:${cellAddress(lastRow, lastColumn)}`;
}

/** Whole columns or rows, neighbours together: "A:C". */
export const columnAddresses = (columns: readonly number[]) =>
  runs(columns).map(([first, last]) => `${columnLetters(first)}:${columnLetters(last)}`);
export const rowAddresses = (rows: readonly number[]) =>
  runs(rows).map(([first, last]) => `${first + 1}:${last + 1}`);

/** The same addresses in as few lists as this Excel allows; each list is one object. */
export const listsOf = (addresses: readonly string[], offered: Offered) =>
  offered.areas ? addressLists(addresses) : addresses;

export const areaAt = (sheet: Excel.Worksheet, list: string): Area =>
  list.includes(",") ? untracked(sheet.getRanges(list)) : rangeAt(sheet, list);

export const rangeAt = (sheet: Excel.Worksheet, address: string) => untracked(sheet.getRange(address));

/** No range is used after its batch; a kept reference would cost a call, and a round trip to let go of it. */
export const untracked = <Tracked extends { untrack(): Tracked }>(object: Tracked) => object.untrack();

function addressLists(addresses: readonly string[]): string[] {
  const lists: string[] = [];
  let list = "";
  for (const address of addresses) {
    const longer = list === "" ? address : `${list},${address}`;
    if (longer.length > LONGEST_ADDRESS) lists.push(list);
    list = longer.length > LONGEST_ADDRESS ? address : longer;
  }
  return list === "" ? lists : [...lists, list];
}

function joinedDown(rectangles: readonly Rectangle[]): Rectangle[] {
  const ordered = [...rectangles].sort(
    (a, b) => a.column - b.column || a.lastColumn - b.lastColumn || a.row - b.row,
  );
  const joined: Rectangle[] = [];
  for (const next of ordered) {
    const last = joined.at(-1);
    const continues =
      last?.column === next.column && last.lastColumn === next.lastColumn && last.lastRow + 1 === next.row;
    if (last && continues) joined[joined.length - 1] = { ...last, lastRow: next.lastRow };
    else joined.push(next);
  }
  return joined;
}

const joinedAcross = (rectangles: readonly Rectangle[]) => joinedDown(rectangles.map(turned)).map(turned);

const turned = ({ row, column, lastRow, lastColumn }: Rectangle): Rectangle => ({
  row: column,
  column: row,
  lastRow: lastColumn,
  lastColumn: lastRow,
});

function runs(numbers: readonly number[]): (readonly [first: number, last: number])[] {
  const down = joinedDown(numbers.map((row) => ({ row, lastRow: row, column: 0, lastColumn: 0 })));
  return down.map(({ row, lastRow }) => [row, lastRow] as const);
}

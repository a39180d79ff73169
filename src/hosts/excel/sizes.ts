/**
 * How many bytes something takes in a request to Excel. Guessed before it is queued, and rather too much than too
 * little: Office.js does not tell how large a request has become.
 */

/**
 * What writes a sheet comes in pieces: each gives its size first and is queued when it is asked for the next one, so
 * that the request can be sent between them.
 */
export type Pieces = Generator<number, void>;

// With numbers of seven digits, to which the proxies count for a thousand batches.
/** An object: where it is found, that it is to be made, and when it is let go. */
const OBJECT = 205;
/** A range that is let go of at once is said to be made twice. */
const RANGE = 275;
/** Something called or set on it. */
const CALL = 130;

const encoder = new TextEncoder();
/** Letters beyond ASCII take more than one byte. */
export const textBytes = (given: unknown) => encoder.encode(JSON.stringify(given)).length;

export const rangeCost = (address: string) => RANGE + address.length;

/** So many objects and calls, with all that is given to them. */
export const costOf = (objects: number, calls: number, ...given: readonly unknown[]) =>
  OBJECT * objects + CALL * calls + given.reduce<number>((sum, each) => sum + textBytes(each), 0);

/** Properties that are set on an object; those within an inner one need that object too. */
export const settingCost = (properties: object): number =>
  Object.values(properties).reduce<number>(
    (sum, value: unknown) =>
      sum + (typeof value === "object" && value !== null ? OBJECT + settingCost(value) : costOf(0, 1, value)),
    0,
  );

/** A sheet, by its id, in each request that has to do with it. */
export const SHEET_COST = costOf(1, 0, "{00000000-0000-0000-0000-000000000000}");

/** Cells that are set at once; Office.js cuts long blocks, and each cut takes two rows and what lies between. */
const CELLS_AT_ONCE = 1_500;
const BETWEEN = 15;
/** `bytes`: of its rows, each for itself. */
export function blockCost(address: string, rows: number, columns: number, bytes: number): number {
  const cuts = Math.ceil(rows / Math.max(1, Math.round(CELLS_AT_ONCE / columns)));
  // a comma after each row, and brackets round them
  const all = costOf(0, 1) + bytes + rows + 1;
  return rangeCost(address) + all + (cuts > 1 ? cuts * (costOf(4, 1) + BETWEEN) : 0);
}

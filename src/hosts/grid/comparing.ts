/**
 * A defect of the grid's engine, kept away: from the second comparison of a cell with "" on, it looks the cell up in an
 * index in which 0 and blank are one, and a typed 0 counts as nothing given. Without the index each comparison is made
 * anew, as the first one is.
 */
import { CELL_INVERTED_INDEX_CACHE } from "@univerjs/engine-formula";

export function compareAnew(): void {
  CELL_INVERTED_INDEX_CACHE.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
  CELL_INVERTED_INDEX_CACHE.set = () => undefined;
}

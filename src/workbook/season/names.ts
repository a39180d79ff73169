/**
 * How the cells of a season are called.
 */
import { range, type Expression } from "../formula";

/** A figure of one batch, counted from 1. */
export const batchCell = (batch: number, key: string) => `season_${batch}_${key}`;
export const seasonName = (...parts: readonly (string | number)[]) => ["season", ...parts].join("_");

/** One figure of all batches. */
export const columnOf = (key: string, batches: number): Expression =>
  range(batchCell(1, key), batchCell(batches, key));

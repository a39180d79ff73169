/**
 * Money: packs to order, the cost of money tied up, cost of a saleable bottle. The currency is the user's.
 */
import { unanswerable } from "./refusal";
import { wholeUp } from "./whole";

export const MONTHS_PER_YEAR = 12;

/** Significant decimal digits that a number holds; beyond them stand remainders of binary arithmetic. */
const HELD_DIGITS = 15;

/** An amount rounded to so many decimals, half away from zero, as a spreadsheet's ROUND does. */
export function roundedMoney(amount: number, decimals: number): number {
  const shift = 10 ** decimals;
  const shifted = Number((Math.abs(amount) * shift).toPrecision(HELD_DIGITS));
  return (Math.sign(amount) * Math.round(shifted)) / shift;
}

/** Whole packs to order for a need and a reserve. */
export function packsToOrder(needed: number, packSize: number, reservePct: number): number {
  const packs = wholeUp((needed * (1 + reservePct / 100)) / packSize);
  if (packs === Infinity) {
    throw unanswerable("pack_size", packSize, "more packs than can be counted; give a larger pack");
  }
  return packs;
}

/** Interest on money tied up for some months at an annual rate, compounded: amount·((1 + r)^(months/12) − 1). */
export function holdingCost(amount: number, months: number, annualPct: number): number {
  return amount * ((1 + annualPct / 100) ** (months / MONTHS_PER_YEAR) - 1);
}

/** Cost of a saleable bottle: the breakage is paid for by those that remain. */
export function costPerBottle(totalCost: number, bottlesFilled: number, breakagePct: number): number {
  if (bottlesFilled === 0) {
    throw unanswerable(
      "bottles_filled",
      bottlesFilled,
      "there is no bottle to carry the cost; give at least 1",
    );
  }
  return totalCost / (bottlesFilled * (1 - breakagePct / 100));
}

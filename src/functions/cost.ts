/**
 * COST functions. The currency is the user's own.
 */
import { costPerBottle, holdingCost, packsToOrder } from "../cellar/costing";
import { answer, domains, given, optional } from "./arguments";

/**
 * Whole packs to order for a need and a reserve.
 * @customfunction COST.PACKS
 * @param needed Quantity needed (0 to 1000000000000).
 * @param pack_size Quantity in a pack (more than 0, at most 1000000000).
 * @param [reserve_pct] Reserve, % (0 to less than 100); blank = 0.
 * @returns whole packs
 * @equation needed·(1 + reserve/100)/pack, rounded up
 * @source arithmetic
 * @example COST.PACKS(6600, 1000, 2) = 7
 */
export function costPacks(needed: number, pack_size: number, reserve_pct?: number): number {
  return answer(() =>
    packsToOrder(
      given(domains.quantity, needed, "needed"),
      given(domains.packSize, pack_size, "pack_size"),
      optional(domains.percentBelow100, reserve_pct, "reserve_pct", 0),
    ),
  );
}

/**
 * Interest on money tied up, compounded.
 * @customfunction COST.HOLDING
 * @param amount Money tied up (0 to 1000000000000).
 * @param months For how long, months (0 to 600).
 * @param annual_pct At this rate, % a year (0 to 100).
 * @returns money, in the currency of the amount
 * @equation amount·((1 + r/100)^(months/12) − 1)
 * @source compound interest
 * @example COST.HOLDING(1000, 24, 5) = 102.5
 */
export function costHolding(amount: number, months: number, annual_pct: number): number {
  return answer(() =>
    holdingCost(
      given(domains.money, amount, "amount"),
      given(domains.months, months, "months"),
      given(domains.percent, annual_pct, "annual_pct"),
    ),
  );
}

/**
 * Cost of a saleable bottle: those that remain pay for those that break.
 * @customfunction COST.BOTTLE
 * @param total_cost Cost of the batch, money (0 to 1000000000000).
 * @param bottles_filled Bottles filled (a whole number, 0 to 100000000).
 * @param [breakage_pct] Breakage, % (0 to less than 100); blank = 0.
 * @returns money a bottle, in the currency of the cost
 * @equation total/(filled·(1 − breakage/100))
 * @source arithmetic; a breakage of 1 % is published practice
 * @refuses #N/A where no bottle was filled
 * @example COST.BOTTLE(9900, 1000, 1) = 10
 */
export function costBottle(total_cost: number, bottles_filled: number, breakage_pct?: number): number {
  return answer(() =>
    costPerBottle(
      given(domains.money, total_cost, "total_cost"),
      given(domains.bottles, bottles_filled, "bottles_filled"),
      optional(domains.percentBelow100, breakage_pct, "breakage_pct", 0),
    ),
  );
}

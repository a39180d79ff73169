/**
 * COST workings. The currency is the user's own.
 */
import { costPerBottle, holdingCost, MONTHS_PER_YEAR, packsToOrder } from "../cellar/costing";
import { domains } from "../cellar/domains";
import { explainer } from "./notebook";
import { ARITHMETIC } from "./sources";

export const cost = {
  "COST.PACKS": explainer("needed pack_size reserve_pct", (on) => {
    const needed = on.number("needed", domains.quantity, "[Q] Quantity needed");
    const pack = on.number("pack_size", domains.packSize, "[k] Quantity in a pack");
    const reserve = on.optional("reserve_pct", domains.percentBelow100, "[r] Reserve", 0);
    const result = packsToOrder(needed, pack, reserve);
    on.step(
      "The need and its reserve in packs, rounded up: packs are sold whole",
      "n = ⌈Q·(1 + r/100)/k⌉",
      result,
      "packs",
    );
    return { result, unit: "whole packs", sources: [ARITHMETIC] };
  }),

  "COST.HOLDING": explainer("amount months annual_pct", (on) => {
    const amount = on.number("amount", domains.money, "[M] Money tied up", "");
    const months = on.number("months", domains.months, "[n] For how long");
    const annual = on.number("annual_pct", domains.percent, "[r] Rate a year");
    const result = holdingCost(amount, months, annual);
    on.constant({ symbol: "y", value: MONTHS_PER_YEAR, unit: "months", what: "a year", source: ARITHMETIC });
    on.step(
      "Interest earns interest; what has grown, less the amount itself",
      "I = M·((1 + r/100)^(n/y) − 1)",
      result,
      "money",
    );
    return { result, unit: "money, in the currency of the amount", sources: [ARITHMETIC] };
  }),

  "COST.BOTTLE": explainer("total_cost bottles_filled breakage_pct", (on) => {
    const total = on.number("total_cost", domains.money, "[K] Cost of the batch", "");
    const bottles = on.number("bottles_filled", domains.bottles, "[n] Bottles filled");
    const breakage = on.optional("breakage_pct", domains.percentBelow100, "[b] Breakage", 0);
    const result = costPerBottle(total, bottles, breakage);
    on.step("Those that remain pay for those that break", "k = K/(n·(1 − b/100))", result, "");
    return { result, unit: "money a bottle, in the currency of the cost", sources: [ARITHMETIC] };
  }),
};

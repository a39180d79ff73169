/**
 * A season: its batches together.
 */
import { worstOf, type Verdict } from "../batch/checks";
import type { BatchInputs } from "../batch/fields";
import type { BatchPlan } from "../batch/plan";

export interface SeasonBatch {
  readonly inputs: BatchInputs;
  readonly plan: BatchPlan;
}

/** What stands for the currency where the batches do not share one: their money cannot be added. */
export const SEVERAL_CURRENCIES = "several currencies";

export interface SeasonTotals {
  readonly volumeHl: number;
  readonly filled: number;
  readonly saleable: number;
  readonly sugarKg: number;
  readonly currency: string;
  /** null where it cannot be added. */
  readonly cost: number | null;
  readonly perBottle: number | null;
  readonly worst: Verdict;
}

export function seasonTotals(batches: readonly SeasonBatch[]): SeasonTotals {
  const sum = (of: (batch: SeasonBatch) => number) => batches.reduce((total, batch) => total + of(batch), 0);
  const currencies = new Set(batches.map(({ inputs }) => inputs.batch.currency.toLowerCase()));
  // as a spreadsheet compares them, without regard to case
  const currency = batches[0]?.inputs.batch.currency ?? "";
  const saleable = sum(({ plan }) => plan.costs.saleableBottles);
  const cost = currencies.size > 1 ? null : sum(({ plan }) => plan.costs.total);
  return {
    volumeHl: sum(({ inputs }) => inputs.baseWine.volume_hL),
    filled: sum(({ plan }) => plan.tirage.bottles),
    saleable,
    sugarKg: sum(({ plan }) => plan.tirage.sugarKg),
    currency: currencies.size > 1 ? SEVERAL_CURRENCIES : currency,
    cost,
    perBottle: cost === null ? null : cost / saleable,
    worst: worstOf(batches.map(({ plan }) => plan.worst)),
  };
}

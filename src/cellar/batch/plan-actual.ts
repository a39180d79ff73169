/**
 * Planned and actual: what came of the plan, where it is known.
 */
import { shiftPressure } from "../carbonation";
import { DEFAULT_HEADSPACE_PCT } from "../constants";
import { ML_PER_LITRE, excessBar } from "../units";
import { orNull } from "./attempt";
import type { BatchInputs } from "./fields";
import type { CostPlan } from "./plan-costs";
import type { DosagePlan } from "./plan-dosage";
import type { TiragePlan } from "./plan-tirage";

/** "" where nothing was found out; null where what was found out has no answer. */
export interface Comparison {
  readonly planned: number;
  readonly actual: number | "" | null;
  readonly difference: number | "" | null;
}

export const ACTUAL_KEYS = [
  "bottlesFilled",
  "bottlesBroken",
  "bottlesDisgorged",
  "bottlesFinished",
  "tirageSugar",
  "pressureAt20",
  "sugar",
  "alcohol",
  "cost",
  "perBottle",
  "yieldPct",
] as const;
export type ActualKey = (typeof ACTUAL_KEYS)[number];

const compared = (planned: number, actual: number | "" | null): Comparison => ({
  planned,
  actual,
  difference: typeof actual === "number" ? actual - planned : actual,
});

/** Wine in the bottles finished, % of all wine that went in. */
const yieldPct = (bottles: number, bottleMl: number, wineL: number) =>
  ((bottles * bottleMl) / ML_PER_LITRE / wineL) * 100;

export function compareActual(
  { actual, batch, costs: rates }: BatchInputs,
  tirage: TiragePlan,
  dosage: DosagePlan,
  costs: CostPlan,
): Record<ActualKey, Comparison> {
  const { bottle_mL } = batch;
  const wineL = costs.tirageWineL + costs.finishingWineL;
  const saleable = (actual.bottlesFinished ?? 0) - rates.heldBack_bottles;
  return {
    bottlesFilled: compared(tirage.bottles, actual.bottlesFilled ?? ""),
    bottlesBroken: compared(tirage.bottles - dosage.bottlesFinished, actual.bottlesBroken ?? ""),
    bottlesDisgorged: compared(dosage.bottlesFinished, actual.bottlesDisgorged ?? ""),
    bottlesFinished: compared(dosage.bottlesFinished, actual.bottlesFinished ?? ""),
    tirageSugar: compared(tirage.sugarKg, actual.tirageSugar_kg ?? ""),
    pressureAt20: compared(
      dosage.pressureAt20,
      actual.pressure_bar === null || actual.pressureAt_C === null
        ? ""
        : orNull(() =>
            shiftPressure(
              excessBar(actual.pressure_bar!),
              actual.pressureAt_C!,
              20,
              dosage.alcoholVol,
              dosage.sugarGL,
              { headspacePct: DEFAULT_HEADSPACE_PCT, nitrogenBar: 0 },
            ),
          ),
    ),
    sugar: compared(dosage.sugarGL, actual.sugar_gL ?? ""),
    alcohol: compared(dosage.alcoholVol, actual.alcohol_vol ?? ""),
    cost: compared(costs.total, actual.cost ?? ""),
    perBottle: compared(
      costs.perBottle,
      actual.cost === null || actual.bottlesFinished === null
        ? ""
        : saleable > 0
          ? actual.cost / saleable
          : null,
    ),
    yieldPct: compared(
      yieldPct(dosage.bottlesFinished, bottle_mL, wineL),
      actual.bottlesFinished === null ? "" : yieldPct(actual.bottlesFinished, bottle_mL, wineL),
    ),
  };
}

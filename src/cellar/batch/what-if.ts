/**
 * Other sizes of the same batch, and other sweetness.
 */
import type { BatchInputs } from "./fields";
import { planBatch, type BatchPlan } from "./plan";
import { UnplannableBatch } from "./attempt";

/** Sizes to look at, % of the plan, and how far the hours grow with them. */
export const USUAL_SIZES_PCT = [50, 60, 75, 90, 100, 110, 125, 140, 150] as const;
export const USUAL_LABOUR_PCT = 100;

/**
 * The batch at another size. What is typed as an amount of the whole batch grows with it: wine, hours as far as they
 * are said to grow, other materials. Prices, rates, stock and the bottles held back stay.
 */
export function atSize(inputs: BatchInputs, sizePct: number, labourPct: number): BatchInputs {
  const size = sizePct / 100;
  const grown = 1 + (labourPct / 100) * (size - 1);
  const { baseWine, costs, materials } = inputs;
  return {
    ...inputs,
    baseWine: { ...baseWine, volume_hL: baseWine.volume_hL * size },
    costs: {
      ...costs,
      tirage_hours: costs.tirage_hours * grown,
      riddling_hours: costs.riddling_hours === null ? null : costs.riddling_hours * grown,
      disgorging_hours: costs.disgorging_hours * grown,
      finishing_hours: costs.finishing_hours * grown,
    },
    materials: {
      ...materials,
      other1: { ...materials.other1, need: materials.other1.need * size },
      other2: { ...materials.other2, need: materials.other2.need * size },
    },
  };
}

/** The batch dosed to another sweetness, g/L glucose + fructose. */
export const atSweetness = (inputs: BatchInputs, targetGL: number): BatchInputs => ({
  ...inputs,
  dosage: { ...inputs.dosage, target_gL: targetGL },
});

/** What becomes of changed inputs, or nothing where they cannot be planned. */
export function planIf(inputs: BatchInputs): BatchPlan | null {
  try {
    return planBatch(inputs);
  } catch (error) {
    if (!(error instanceof UnplannableBatch)) throw error;
    return null;
  }
}

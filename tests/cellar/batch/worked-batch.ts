/**
 * A batch of round numbers, whose figures plan.test.ts works out by hand.
 */
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { planBatch, type BatchPlan } from "../../../src/cellar/batch/plan";

export type Sections = Readonly<Record<string, Readonly<Record<string, unknown>>>>;

export const WORKED: Sections = {
  batch: { name: "Worked", designation: "Crémant", tirageDate: "2024-05-31" },
  baseWine: { volume_hL: 100, alcohol_vol: 10, sugar_gL: 0, totalSO2_mgL: 60, acidity_gL: 6 },
  tirage: { goal: "dose", dose_gL: 24, hottest_C: 25, glassRating_bar: 12 },
  lees: { lees_months: 9, rest_months: 3 },
  disgorging: { lost_mL: 20 },
  dosage: { residual_gL: 0, target_gL: 8, strength_gL: 600, liqueur_vol: 12, term: "brut" },
  readings: {},
  riddling: {},
  materials: {},
  actual: {},
  costs: {
    baseWine_perL: 2,
    labour_perHour: 20,
    tirage_hours: 10,
    riddling_hours: 20,
    disgorging_hours: 30,
    finishing_hours: 40,
    duty_perBottle: 0.1,
    storage_perBottleMonth: 0.01,
    interest_pct: 21,
  },
};

/** The worked batch with some fields of some sections changed. */
export function changed(changes: Sections = {}): Sections {
  const sections = Object.entries(WORKED).map(([key, section]) => [key, { ...section, ...changes[key] }]);
  return Object.fromEntries(sections) as Sections;
}

export function planOf(changes: Sections = {}): BatchPlan {
  const parsed = parseBatchInputs(changed(changes));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return planBatch(parsed.inputs);
}

/**
 * The whole chain in one pass: BatchInputs to BatchPlan. Each figure is the cellar function of the same name, in
 * the order of the work, so that the sheet's formulas and this plan can be held against each other.
 */
import { addMonths, serialFromIso } from "../ageing";
import { designationNamed } from "../rules/designations";
import { required } from "./attempt";
import { checkBatch, worstVerdict, type Check, type CheckKey, type Verdict } from "./checks";
import type { BatchInputs } from "./fields";
import { planCosts, type CostPlan } from "./plan-costs";
import type { ReadingKey } from "./cellar-book";
import { compareActual, type ActualKey, type Comparison } from "./plan-actual";
import { planDosage, type DosagePlan } from "./plan-dosage";
import { planReadings, planRiddling, type ReadingPlan, type RiddlingPlan } from "./plan-lees";
import { planTirage, type TiragePlan } from "./plan-tirage";

/** Dates as spreadsheet serials. */
export interface DatePlan {
  readonly tirage: number;
  readonly earliestDisgorging: number;
  readonly disgorging: number;
  readonly release: number;
}

export interface BatchPlan {
  readonly dates: DatePlan;
  readonly tirage: TiragePlan;
  readonly readings: Readonly<Record<ReadingKey, ReadingPlan>>;
  readonly riddling: RiddlingPlan;
  readonly dosage: DosagePlan;
  readonly costs: CostPlan;
  readonly actual: Readonly<Record<ActualKey, Comparison>>;
  readonly checks: Readonly<Record<CheckKey, Check>>;
  readonly worst: Verdict;
}

/** Throws UnplannableBatch, naming the fields to mend, where a figure that the plan needs has no answer. */
export function planBatch(inputs: BatchInputs): BatchPlan {
  const designation = designationNamed(inputs.batch.designation, "designation");
  const tirageDate = serialFromIso(inputs.batch.tirageDate)!;
  const later = (from: number, months: number) =>
    required("batch.tirageDate", inputs.batch.tirageDate, () => addMonths(from, months));
  const disgorging = later(tirageDate, inputs.lees.lees_months);
  const release = later(disgorging, inputs.lees.rest_months);
  const tirage = planTirage(inputs);
  const dosage = planDosage(inputs, tirage);
  const riddling = planRiddling(inputs, tirageDate, disgorging, tirage.bottles);
  const costs = planCosts(inputs, tirage, riddling, dosage);
  const readings = planReadings(inputs, tirage);
  const checks = checkBatch(inputs, designation, { tirage, readings, riddling, dosage, costs });
  return {
    dates: {
      tirage: tirageDate,
      earliestDisgorging: later(tirageDate, designation.leesMonths),
      disgorging,
      release,
    },
    tirage,
    readings,
    riddling,
    dosage,
    costs,
    actual: compareActual(inputs, tirage, dosage, costs),
    checks,
    worst: worstVerdict(checks),
  };
}

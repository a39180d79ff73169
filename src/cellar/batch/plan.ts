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
import { planDosage, type DosagePlan } from "./plan-dosage";
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
  readonly dosage: DosagePlan;
  readonly costs: CostPlan;
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
  const costs = planCosts(inputs, tirage, dosage);
  const checks = checkBatch(inputs, designation, tirage, dosage, costs);
  return {
    dates: {
      tirage: tirageDate,
      earliestDisgorging: later(tirageDate, designation.leesMonths),
      disgorging,
      release,
    },
    tirage,
    dosage,
    costs,
    checks,
    worst: worstVerdict(checks),
  };
}

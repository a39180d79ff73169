/**
 * Batches at the edges of what can be planned.
 */
import type { BatchInputs } from "../../../src/cellar/batch/fields";
import { planBatch } from "../../../src/cellar/batch/plan";
import type { Batch } from "../../../src/workbook/book";
import { inputsOf, sampleJson } from "../../support/samples";

type Given = Record<string, Record<string, unknown>>;

/** The sample with some fields changed. */
export function changed(changes: Given, file = "oxlip-hill-brut.json"): Batch {
  const sample = sampleJson(file) as Given;
  const given = { ...sample };
  for (const [section, values] of Object.entries(changes)) given[section] = { ...sample[section], ...values };
  return batchOf(inputsOf(given));
}

export const batchOf = (inputs: BatchInputs): Batch => ({ inputs, plan: planBatch(inputs) });

/** No price at all. */
export function free(): Batch {
  const given = { ...sampleJson("oxlip-hill-brut.json"), materials: {}, costs: {} };
  return batchOf(inputsOf(given));
}

const dose = (dose_gL: number) => ({ goal: "dose", dose_gL });

/** As no form would let it through: the sheet's inputs can still be so. */
function hottestBelowCellar(): Batch {
  const { inputs } = changed({});
  return batchOf({ ...inputs, tirage: { ...inputs.tirage, cellar_C: 14, hottest_C: -5 } });
}

export const EDGES: Readonly<Record<string, () => Batch>> = {
  "no rating": () => changed({ tirage: { glassRating_bar: null } }),
  "a rating that is passed": () => changed({ tirage: { glassRating_bar: 4 } }),
  "a rating passed everywhere": () => changed({ tirage: { glassRating_bar: 0.5 } }),
  "the highest rating": () => changed({ tirage: { glassRating_bar: 30 } }),
  "pressure wanted 0": () =>
    changed({ baseWine: { sugar_gL: 0 }, tirage: { pressure_bar: 0 }, disgorging: { pressureLost_bar: 0 } }),
  "next to no dose": () =>
    changed({
      baseWine: { sugar_gL: 0 },
      tirage: { ...dose(0), cellar_C: -5, hottest_C: -5 },
      disgorging: { pressureLost_bar: 0 },
    }),
  "the largest dose": () => changed({ tirage: { ...dose(60), hottest_C: 45 } }),
  "hottest below cellar": hottestBelowCellar,
  "lees 0 months": () => changed({ lees: { lees_months: 0, rest_months: 0 } }),
  "lees 600 months": () => changed({ lees: { lees_months: 600, rest_months: 600 } }),
  "six readings, one before the tirage": () =>
    changed({
      readings: Object.fromEntries(
        ["2026-04-20", "2026-04-20", "2026-04-21", "2026-05-01", "2026-06-01", "2020-01-01"].map(
          (date, at) => [`r${at + 1}`, { date, pressure_bar: 2, at_C: 12 }],
        ),
      ),
    }),
  "the last day of the calendar": () =>
    changed({ batch: { tirageDate: "9999-03-31" }, lees: { lees_months: 8, rest_months: 1 } }),
  "no dosage": () => changed({ dosage: { kind: "none" } }),
  "no dosage and no room": () => changed({ dosage: { kind: "none" }, disgorging: { lost_mL: 0 } }),
  "a dosage that does not fit": () => changed({ disgorging: { lost_mL: 5 } }),
  "more wine left than wanted": () => changed({ disgorging: { filled_mL: 760, lost_mL: 2 } }),
  "more wine lost than filled": () => changed({ disgorging: { filled_mL: 100, lost_mL: 120 } }),
  "the largest bottle": () => changed({ batch: { bottle_mL: 30_000 }, disgorging: { lost_mL: 29_000 } }),
  "no price": free,
  "some prices missing": () => changed({ costs: { labour_perHour: null }, materials: { corks: {} } }),
};

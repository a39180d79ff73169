/**
 * Batches at the limits of the checks and a little beyond, with every choice somewhere: changes to the worked batch of
 * round numbers.
 */
import { parseBatchInputs } from "../../src/cellar/batch/inputs";
import { planBatch } from "../../src/cellar/batch/plan";
import type { Batch } from "../../src/workbook/book";
import { changed, type Sections } from "../cellar/batch/worked-batch";

const order = (spare_pct: number, pack: number, price: number | null) => ({ spare_pct, pack, price });

const SITUATIONS: readonly Sections[] = [
  {},
  // at the limits: 2 g/L, 9.5 % vol, 185 mg/L, 0 and 30 °C, 95 % filled, −20 °C, 17 g/L
  {
    baseWine: { sugar_gL: 2, alcohol_vol: 9.5, totalSO2_mgL: 185, dissolvedCO2_gL: 0.7 },
    tirage: {
      ...{ goal: "pressure", pressure_bar: 6, pressureAt_C: 10, dose_gL: null },
      ...{ sugarForm: "liqueur", liqueur_gL: 500, loss_pct: 1.5, yield: 0.93, headspace_pct: 2.5 },
      ...{
        starterTarget_Mcells_mL: 1.5,
        starter_Mcells_mL: 60,
        yeast_gHL: 0,
        cellar_C: 0,
        hottest_C: 30,
        nutrient_gHL: 12,
      },
    },
    disgorging: { filled_mL: 712.5, neckBath_C: -20, pressureLost_bar: 1.3 },
    dosage: { target_gL: 17, term: "extra dry", carrier_gL: 2, reserve_pct: 0, residual_gL: 1.2 },
    materials: {
      tirageSugar: order(2, 25, 1.1),
      bottles: order(1.5, 1218, 0.62),
      labels: order(4, 1000, 0.19),
      cartons: order(2, 50, 0.85),
      other1: { name: "Dividers", need: 1300, ...order(3, 100, 0.11) },
      other2: { name: "Tape", need: 7.5, ...order(0, 2, null) },
    },
    riddling: { places: 120, days: 7, turnsPerDay: 2, bottlesPerHour: 5200, wait_days: 12 },
    costs: { riddling_hours: null, duty_perL: 0.4, decimals: 0, heldBack_bottles: 120, breakage_pct: 2 },
  },
  // just beyond each of them
  {
    baseWine: { sugar_gL: 2.1, alcohol_vol: 9.4, totalSO2_mgL: 186 },
    tirage: { cellar_C: -0.1, hottest_C: 29, yeast_gHL: 25, riddlingAid_gHL: 30, glassRating_bar: 8 },
    disgorging: { filled_mL: 712, neckBath_C: -19.9 },
    dosage: { target_gL: 17.1, term: "extra dry", stock_L: 80, label_vol: 11.7 },
    lees: { lees_months: 8, rest_months: 4 },
    batch: { designation: "Crémant", tirageDate: "2024-02-29", language: "fr" },
  },
  // 11.5 % vol, 103 % filled, 40 °C; other rules, another size and a concentrate
  {
    batch: { rules: "OIV", bottle_mL: 700, language: "it", currency: "CHF", bottlesPerCase: 12 },
    baseWine: { alcohol_vol: 11.5, totalSO2_mgL: 300 },
    tirage: { hottest_C: 40, cellar_C: 15, glassRating_bar: 30 },
    disgorging: { filled_mL: 721, neckBath_C: -3 },
    dosage: {
      kind: "concentrate",
      strength_gL: 700,
      liqueur_vol: 0,
      target_gL: 15,
      term: "brut",
      label_vol: 12.3,
    },
    lees: { lees_months: 9, rest_months: 2 },
    materials: { dosageLiqueur: order(5, 1, 4) },
  },
  {
    batch: { bottle_mL: 700, designation: "Cava Gran Reserva" },
    baseWine: { alcohol_vol: 11.6 },
    tirage: { hottest_C: 40.1, dose_gL: 28, glassRating_bar: 30, loss_pct: 3 },
    disgorging: { filled_mL: 722, lost_mL: 40 },
    dosage: {
      kind: "sweet reserve wine",
      strength_gL: 120,
      liqueur_vol: 9,
      target_gL: 9.1,
      term: "extra brut",
    },
    actual: { bottlesFilled: 7900, bottlesBroken: 60, bottlesDisgorged: 7840, bottlesFinished: 7800 },
  },
  // a small bottle without dosage
  {
    batch: { bottle_mL: 200, language: "pt", rules: "EU" },
    tirage: {
      goal: "pressure",
      pressure_bar: 4.6,
      pressureAt_C: 20,
      dose_gL: null,
      starterTarget_Mcells_mL: 1.5,
    },
    disgorging: { pressureLost_bar: 0.6, lost_mL: 2 },
    dosage: {
      kind: "none",
      residual_gL: 2.9,
      target_gL: null,
      strength_gL: null,
      liqueur_vol: null,
      term: "brut nature",
    },
  },
  // nothing that may be left out
  {
    baseWine: { totalSO2_mgL: null, acidity_gL: null },
    tirage: { glassRating_bar: null, dose_gL: 8 },
    dosage: { term: "" },
    costs: { baseWine_perL: null, labour_perHour: null },
    disgorging: { filled_mL: 599 },
  },
  // hardly sparkling, more left than is wanted, and all but one bottle held back
  {
    tirage: { dose_gL: 12 },
    disgorging: { filled_mL: 771, pressureLost_bar: 1 },
    costs: { heldBack_bottles: 12_936 },
    dosage: { target_gL: 50.5, term: "doux", stock_L: 5000 },
  },
  // readings of every state, and what really came of it
  {
    batch: { tirageDate: "2026-04-14", rules: "OIV" },
    tirage: { yield: 0.95, headspace_pct: 3.3333, cellar_C: 12, hottest_C: 24 },
    readings: {
      r1: { date: "2026-05-01", pressure_bar: 1.2, at_C: 12 },
      r2: { date: "2026-05-15", pressure_bar: 1.21, at_C: 12 },
      r3: { date: "2026-06-10", pressure_bar: 3.4, at_C: 12.5 },
      r4: { date: "", pressure_bar: 5.2, at_C: 12 },
      r5: { date: "2026-04-13", pressure_bar: 5.3, at_C: 27 },
      r6: { date: "2026-09-20", pressure_bar: 6.9, at_C: 12 },
    },
    actual: {
      ...{ tirageSugar_kg: 249.5, pressure_bar: 4.1, pressureAt_C: 11, sugar_gL: 8.8 },
      ...{ alcohol_vol: 11.9, cost: 41_000 },
    },
    dosage: { target_gL: 35, term: "dry" },
  },
  // a pause that is just long enough, and one that is not
  {
    batch: { tirageDate: "2026-04-14" },
    readings: {
      r1: { date: "2026-05-01", pressure_bar: 3, at_C: 12 },
      r2: { date: "2026-05-14", pressure_bar: 3.01, at_C: 12 },
      r3: { date: "2026-05-15", pressure_bar: 3.02, at_C: 12 },
      r4: { date: "2026-05-20", pressure_bar: 3.2, at_C: 12 },
      r5: { date: "2026-06-20", pressure_bar: 30 / 6, at_C: 5 },
    },
    disgorging: { filled_mL: 900, lost_mL: 0, pressureLost_bar: 4 },
  },
];

export const situations = (): Batch[] =>
  SITUATIONS.map((changes) => {
    const parsed = parseBatchInputs(changed(changes));
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    return { inputs: parsed.inputs, plan: planBatch(parsed.inputs) };
  });

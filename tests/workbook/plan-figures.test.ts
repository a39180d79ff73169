/**
 * Every figure of a plan is in its sheet, by its name, as a formula with the module's result: a cell that was left out
 * would be missed by no comparison of cells.
 */
import { READING_KEYS } from "../../src/cellar/batch/cellar-book";
import { OTHER_KEYS, materialKeys } from "../../src/cellar/batch/materials";
import { ACTUAL_KEYS } from "../../src/cellar/batch/plan-actual";
import { planBatch, type BatchPlan } from "../../src/cellar/batch/plan";
import type { CellValue } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import { sampleInputs } from "../support/samples";
import { rowSaying } from "../support/season-cells";
import { cellAt } from "../support/sheet-cells";
import { situations } from "../support/situations";

const figures = ({
  tirage,
  dates,
  riddling,
  dosage,
  costs,
  worst,
}: BatchPlan): Record<string, CellValue> => ({
  plan_worst: worst,
  plan_dose_gL: tirage.dose,
  plan_starter_L: tirage.starterL,
  plan_wineWithStarter_hL: tirage.wineHl,
  plan_tirageLiqueur_L: tirage.liqueurL,
  plan_tirageSugar_kg: tirage.sugarKg,
  plan_liqueurWine_L: tirage.liqueurWineL,
  plan_volume_hL: tirage.volumeHl,
  plan_bottles: tirage.bottles,
  plan_totalAlcoholBefore_vol: tirage.totalAlcoholBeforeVol,
  plan_alcoholAfter_vol: tirage.alcoholAfterVol,
  plan_alcoholRise_vol: tirage.alcoholRiseVol,
  plan_at20ByTable_bar: tirage.at20ByTable,
  plan_earliestDisgorging: dates.earliestDisgorging,
  plan_disgorging: dates.disgorging,
  plan_release: dates.release,
  plan_racks: riddling.racks,
  plan_riddlingStart: riddling.start,
  plan_riddlingEnd: riddling.end,
  plan_turns: riddling.turns,
  plan_riddling_hours: riddling.hours,
  plan_finished_bottles: dosage.bottlesFinished,
  plan_freezing_C: dosage.freezingPointC,
  plan_space_mL: dosage.spaceMl ?? "no room",
  plan_finishedPressure20_bar: dosage.pressureAt20,
  plan_finishedPressure20_low_bar: dosage.lowPressureAt20,
  plan_pressureClass: dosage.pressureClass ?? "outside all classes",
  plan_liqueur_gL: dosage.liqueurGL,
  plan_dosage_mL: dosage.eachMl,
  plan_topUp_mL: dosage.topUpMl ?? "no room",
  plan_dosageBatch_L: dosage.batchL,
  plan_dosageSugar_kg: dosage.sugarKg,
  plan_dosageWine_L: dosage.wineL,
  plan_stock_bottles: dosage.stockBottles ?? "as needed",
  plan_liqueur_vol: dosage.liqueurVol,
  plan_sugar_gL: dosage.sugarGL,
  plan_finishedAlcohol_vol: dosage.alcoholVol,
  plan_dosageRise_vol: dosage.alcoholRiseVol,
  plan_term_1: dosage.terms[0] ?? "",
  plan_term_2: dosage.terms[1] ?? "",
  plan_term_3: dosage.terms[2] ?? "",
  plan_termVerdict: dosage.termVerdict ?? "no term chosen",
  plan_termMargin_gL: dosage.termMarginGL ?? "no term chosen",
  plan_label_vol: dosage.labelVol,
  plan_energy_kJ: dosage.energyKj,
  plan_energy_kcal: dosage.energyKcal,
  plan_unpriced: costs.unpriced,
  plan_tirageWine_L: costs.tirageWineL,
  plan_finishingWine_L: costs.finishingWineL,
  plan_costs_riddling_hours: costs.riddlingHours,
  plan_saleable_bottles: costs.saleableBottles,
  plan_cost_baseWine: costs.baseWine,
  plan_cost_tirageMaterials: costs.tirageMaterials,
  plan_cost_tirageLabour: costs.tirageLabour,
  plan_cost_riddlingLabour: costs.riddlingLabour,
  plan_cost_disgorgingLabour: costs.disgorgingLabour,
  plan_cost_finishingMaterials: costs.finishingMaterials,
  plan_cost_finishingWine: costs.finishingWine,
  plan_cost_finishingLabour: costs.finishingLabour,
  plan_cost_storage: costs.storage,
  plan_cost_moneyTiedUp: costs.moneyTiedUp,
  plan_cost_duty: costs.duty,
  plan_cost_total: costs.total,
  plan_perBottle: costs.perBottle,
  plan_perCase: costs.perCase,
});

/** Those that come in rows and columns. */
const tables = ({ tirage, readings, costs, checks, actual }: BatchPlan): Record<string, CellValue> =>
  Object.fromEntries([
    ...(["cellar", "at10", "at20", "hottest"] as const).flatMap((at) => [
      [`plan_pressure_${at}_bar`, tirage.pressures[at].expected],
      [`plan_pressure_${at}_low_bar`, tirage.pressures[at].low],
      [`plan_pressure_${at}_high_bar`, tirage.pressures[at].high],
    ]),
    ...READING_KEYS.flatMap((key) => [
      [`plan_reading_${key}_share`, readings[key].share ?? "cannot be"],
      [`plan_reading_${key}_at20_bar`, readings[key].at20 ?? "cannot be"],
      [`plan_reading_${key}_at20ByTable_bar`, readings[key].at20ByTable ?? "not 0 to 25"],
      [`plan_reading_${key}_state`, readings[key].state],
    ]),
    ...materialKeys.map((key) => [`plan_${key}_need`, costs.lines[key].need]),
    ...[...materialKeys, ...OTHER_KEYS].flatMap((key) => [
      [`plan_${key}_packs`, costs.lines[key].packs],
      [`plan_${key}_cost`, costs.lines[key].cost],
    ]),
    ...ACTUAL_KEYS.flatMap((key) => [
      [`plan_planned_${key}`, actual[key].planned],
      [`plan_difference_${key}`, actual[key].difference],
    ]),
    ...Object.entries(checks).map(([key, { verdict }]) => [`plan_check_${key}`, verdict]),
  ]) as Record<string, CellValue>;

test("every figure stands in a cell of its name, calculated", () => {
  for (const { inputs, plan } of situations()) {
    const { cells, names } = planSheet(inputs, plan, []);
    const at = new Map(cells.map((cell) => [`${cell.row} ${cell.column}`, cell]));
    const places = new Map(names.map(({ name, row, column }) => [name, at.get(`${row} ${column}`)]));
    for (const [name, wanted] of Object.entries({ ...figures(plan), ...tables(plan) })) {
      const found = places.get(name);
      expect([name, found?.value, found?.formula !== undefined]).toEqual([name, wanted, true]);
    }
  }
});

test("the cost at the head says beside it that prices or hours are missing, and only then", () => {
  const noteOf = (price: number | null) => {
    const priced = sampleInputs("oxlip-hill-brut.json");
    const inputs = { ...priced, costs: { ...priced.costs, labour_perHour: price } };
    const plan = planBatch(inputs);
    const sheet = planSheet(inputs, plan, []);
    const row = rowSaying(sheet, "Cost of a saleable bottle");
    return [plan.costs.unpriced, cellAt(sheet, row, 3)?.value];
  };
  expect(noteOf(24)).toEqual([0, ""]);
  expect(noteOf(null)).toEqual([1, "prices or hours are missing: see Checks"]);
});

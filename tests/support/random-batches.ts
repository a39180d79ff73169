/**
 * Batches with every choice and figures all over their usual ranges, always the same ones for a seed.
 */
import fc from "fast-check";
import { parseBatchInputs } from "../../src/cellar/batch/inputs";
import { planIf } from "../../src/cellar/batch/what-if";
import { designations } from "../../src/cellar/rules/designations";
import { LANGUAGES, sweetnessRules, type SweetnessRuleSet } from "../../src/cellar/rules/sweetness-bands";
import type { Batch } from "../../src/workbook/book";

const between = (min: number, max: number, digits = 2) =>
  fc.integer({ min: min * 10 ** digits, max: max * 10 ** digits }).map((value) => value / 10 ** digits);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 2 });

const rules = fc.constantFrom<SweetnessRuleSet>("EU", "OIV");
const term = (ruleSet: SweetnessRuleSet) =>
  fc.constantFrom(
    "",
    ...sweetnessRules[ruleSet].bands.flatMap(({ terms }) => LANGUAGES.map((each) => terms[each][0])),
  );
const order = fc.record({
  spare_pct: between(0, 10),
  pack: fc.constantFrom(1, 0.5, 25, 1000),
  price: maybe(between(0, 5)),
});
/** A pressure and its temperature, or neither. */
const gauge = fc.option(fc.record({ bar: between(-0.5, 9), celsius: between(2, 28, 1) }), {
  nil: null,
  freq: 2,
});
const reading = fc
  .tuple(fc.constantFrom("", "2026-05-01", "2026-05-20", "2026-06-15", "2026-09-01"), gauge)
  .map(([date, read]) => ({ date, pressure_bar: read?.bar ?? null, at_C: read?.celsius ?? null }));

const batch = rules.chain((ruleSet) =>
  fc.record({
    batch: fc.record({
      name: fc.constantFrom("Brut", "Rosé d'été", "=1+1", "Lot “7”", "2025"),
      lot: fc.constantFrom("", "L-1", "+7"),
      designation: fc.constantFrom(...designations.map(({ name }) => name)),
      rules: fc.constant(ruleSet),
      language: fc.constantFrom(...LANGUAGES),
      bottle_mL: fc.constantFrom(200, 375, 750, 1500, 700),
      bottlesPerCase: fc.integer({ min: 1, max: 12 }),
      tirageDate: fc.constantFrom("2026-01-31", "2024-02-29", "2026-04-14", "2025-12-31"),
      currency: fc.constantFrom("EUR", "CHF"),
    }),
    baseWine: fc.record({
      volume_hL: between(3, 400),
      alcohol_vol: between(8, 12.5),
      sugar_gL: between(0, 4),
      dissolvedCO2_gL: between(0, 1.5),
      totalSO2_mgL: maybe(between(20, 220, 0)),
      acidity_gL: maybe(between(4, 12)),
    }),
    tirage: fc.record({
      goal: fc.constantFrom("pressure", "dose"),
      pressure_bar: between(4, 7),
      pressureAt_C: between(8, 20, 1),
      dose_gL: between(15, 28),
      sugarForm: fc.constantFrom("dry sugar", "liqueur"),
      liqueur_gL: between(400, 650, 0),
      yield: between(0.85, 1),
      headspace_pct: between(2, 6),
      yeast_gHL: maybe(between(0, 30, 0)),
      starterTarget_Mcells_mL: fc.constant(1.5),
      starter_Mcells_mL: maybe(between(20, 120, 0)),
      nutrient_gHL: maybe(between(0, 30, 0)),
      riddlingAid_gHL: maybe(between(0, 50, 0)),
      loss_pct: between(0, 4),
      cellar_C: between(8, 14, 1),
      hottest_C: between(15, 35, 1),
      glassRating_bar: maybe(between(7, 13, 1)),
    }),
    lees: fc.record({
      lees_months: fc.integer({ min: 3, max: 48 }),
      rest_months: fc.integer({ min: 0, max: 9 }),
    }),
    readings: fc.record({ r1: reading, r2: reading, r3: reading, r4: reading, r5: reading, r6: reading }),
    riddling: fc.record({
      places: fc.constantFrom(120, 504),
      days: fc.integer({ min: 4, max: 40 }),
      turnsPerDay: fc.integer({ min: 1, max: 3 }),
      bottlesPerHour: maybe(between(500, 9000, 0)),
      wait_days: fc.integer({ min: 0, max: 30 }),
    }),
    disgorging: fc.record({
      filled_mL: fc.constant(null),
      lost_mL: between(0, 30, 1),
      pressureLost_bar: between(0, 2),
      neckBath_C: between(-28, -3, 0),
    }),
    dosage: fc.record({
      kind: fc.constantFrom("sugar in wine", "concentrate", "sweet reserve wine", "none"),
      residual_gL: between(0, 2),
      target_gL: between(2, 55, 1),
      strength_gL: between(100, 800, 0),
      liqueur_vol: between(0, 16, 1),
      carrier_gL: between(0, 3),
      stock_L: maybe(between(1, 900, 0)),
      reserve_pct: between(0, 10, 0),
      term: term(ruleSet),
      label_vol: maybe(between(10, 14, 1)),
    }),
    materials: fc.record({ tirageSugar: order, bottles: order, corks: order, labels: order, cartons: order }),
    costs: fc.record({
      baseWine_perL: maybe(between(1, 4)),
      labour_perHour: maybe(between(12, 40)),
      tirage_hours: between(0, 60, 1),
      riddling_hours: maybe(between(0, 60, 1)),
      disgorging_hours: between(0, 60, 1),
      finishing_hours: between(0, 60, 1),
      duty_perBottle: between(0, 2),
      duty_perL: between(0, 2),
      storage_perBottleMonth: between(0, 0.05, 3),
      interest_pct: between(0, 12, 1),
      breakage_pct: between(0, 4),
      heldBack_bottles: fc.constantFrom(0, 12, 120),
      decimals: fc.integer({ min: 0, max: 2 }),
    }),
    actual: fc
      .tuple(maybe(fc.integer({ min: 0, max: 9000 })), gauge, maybe(between(1000, 50_000)))
      .map(([bottlesFinished, read, cost]) => ({
        bottlesFinished,
        pressure_bar: read?.bar ?? null,
        pressureAt_C: read?.celsius ?? null,
        cost,
      })),
  }),
);

/** So many batches that can be planned. */
export function randomBatches(count: number, seed: number): Batch[] {
  const found: Batch[] = [];
  for (const given of fc.sample(batch, { seed, numRuns: count * 3 })) {
    const parsed = parseBatchInputs(given);
    if (!parsed.ok) continue;
    const plan = planIf(parsed.inputs);
    if (plan && found.length < count) found.push({ inputs: parsed.inputs, plan });
  }
  if (found.length < count) throw new Error(`only ${found.length} of ${count} batches can be planned`);
  return found;
}

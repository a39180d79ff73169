/**
 * Arguments by their name, within what the functions allow: short numbers as people type them, and any in between.
 */
import fc from "fast-check";
import { designations } from "../../src/cellar/rules/designations";
import { sweetnessRules } from "../../src/cellar/rules/sweetness-bands";

const between = (min: number, max: number) =>
  fc.oneof(
    fc.integer({ min: 0, max: 2 ** 30 }).map((step) => min + ((max - min) * step) / 2 ** 30),
    fc.integer({ min: Math.ceil(min * 4), max: Math.floor(max * 4) }).map((quarters) => quarters / 4),
  );
const whole = (min: number, max: number) => fc.integer({ min, max });
const words = (...all: string[]) => fc.constantFrom(...all);
const units = words("bar", "kPa", "atm", "psi", "kgf/cm2", "bar abs", "PSI abs");
const terms = words(
  ...Object.values(sweetnessRules).flatMap(({ bands }) =>
    bands.flatMap(({ terms: each }) => Object.values(each).flat()),
  ),
);
const temperature = between(-5, 45);
const strength = between(0, 1000);
const bottleMl = fc.oneof(fc.constantFrom(200, 375, 750, 1500), between(50, 30_000));
const pressure = between(-1, 20);
const date = whole(61, 100_000);

const BY_NAME: Readonly<Record<string, fc.Arbitrary<unknown>>> = {
  volume_hL: between(0.25, 100_000),
  dose_gL: between(0, 60),
  wineSugar_gL: between(0, 20),
  liqueur_gL: between(300, 1000),
  starter_L: between(0, 1000),
  bottle_mL: bottleMl,
  loss_pct: between(0, 99),
  alcohol_vol: between(5, 16),
  target_Mcells_mL: between(0.25, 20),
  starter_Mcells_mL: between(10, 10_000),
  temperature_C: between(0, 25),
  yield_share: between(0.5, 1),
  headspace_pct: between(0.5, 20),
  dissolvedCO2_gL: between(0, 5),
  pressure_bar: between(0, 12),
  doseSd_gL: between(0, 10),
  yieldSd: between(0, 0.2),
  temperatureSd_C: between(0, 10),
  headspaceSd_pct: between(0, 5),
  reading_bar: between(0, 10),
  from_C: temperature,
  to_C: temperature,
  step_C: between(0.25, 50),
  sugar_gL: between(0, 60),
  air_bar: between(0, 2),
  co2_gL: between(0, 20),
  value: between(-1, 1e6),
  from_unit: units,
  to_unit: units,
  pressure20_bar: pressure,
  rules: words("EU", "OIV", "US", "AU", "CA-QC", "eu"),
  designation: words(...designations.map(({ name }) => name)),
  clock: words("lees", "total"),
  tirage_date: date,
  start_date: date,
  days: whole(4, 60),
  turns_per_day: whole(1, 4),
  bottles: whole(0, 1e6),
  places: whole(1, 1000),
  turns: whole(0, 100),
  bottles_per_hour: between(1, 1e4),
  filled_mL: between(700, 760),
  lost_mL: between(0, 100),
  wine_gL: between(0, 10),
  target_gL: between(5, 300),
  space_mL: between(0, 200),
  liqueur_mL: between(0, 50),
  reserve_pct: between(0, 99),
  liqueur_L: between(0, 1e5),
  strength_gL: strength,
  carrier_gL: between(0, 300),
  stock_L: between(0, 1e5),
  wine_vol: between(0, 20),
  liqueur_vol: between(0, 20),
  weaker_gL: between(0, 100),
  stronger_gL: between(100, 1000),
  targets: fc.array(
    fc.array(fc.oneof(between(0, 60), fc.constantFrom("", null)), { minLength: 1, maxLength: 3 }),
    { minLength: 1, maxLength: 5 },
  ),
  sugarAdded: fc.boolean(),
  language: words("en", "fr", "de", "es", "it", "pt"),
  term: terms,
  grams: between(0, 1e6),
  brix: between(0, 85),
  acid_gL: between(0, 30),
  glycerol_gL: between(0, 30),
  unit: words("kJ", "kcal"),
  label_vol: between(0, 20),
  measured_vol: between(0, 20),
  needed: between(0, 1e6),
  pack_size: between(0.25, 1e4),
  amount: between(0, 1e6),
  months: between(0, 600),
  annual_pct: between(0, 100),
  total_cost: between(0, 1e6),
  bottles_filled: whole(1, 1e6),
  breakage_pct: between(0, 99),
};

/** Any arguments for these parameters; optional ones are left blank now and then. */
export function callsOf(
  parameters: readonly { readonly name: string; readonly optional?: boolean }[],
): fc.Arbitrary<unknown[]> {
  return fc.tuple(
    ...parameters.map(({ name, optional }) => {
      const given = BY_NAME[name];
      if (!given) throw new Error(`no arguments are known for ${name}`);
      return optional
        ? fc.oneof({ weight: 2, arbitrary: given }, fc.constantFrom(undefined, null, ""))
        : given;
    }),
  );
}

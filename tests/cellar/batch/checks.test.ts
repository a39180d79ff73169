/**
 * The verdict of each check on both sides of its limit, on the batch that plan.test.ts works out.
 */
import fc from "fast-check";
import {
  CHECK_KEYS,
  INPUT_CHECKS,
  worstVerdict,
  type Check,
  type CheckKey,
  type Verdict,
} from "../../../src/cellar/batch/checks";
import { materialKeys } from "../../../src/cellar/batch/materials";
import { planOf, type Sections } from "./worked-batch";

const RESERVE = { kind: "sweet reserve wine", target_gL: 30, strength_gL: 300, term: "" };
const OIV = { rules: "OIV" };
const ALL_PRICED = Object.fromEntries(materialKeys.map((key) => [key, { price: 1 }]));

const VERDICTS: readonly (readonly [CheckKey, Verdict, Sections])[] = [
  ["dryness", "fine", { baseWine: { sugar_gL: 2 } }],
  ["dryness", "look again", { baseWine: { sugar_gL: 2.01 } }],
  ["baseAlcohol", "look again", { baseWine: { alcohol_vol: 9.49 } }],
  ["baseAlcohol", "fine", { baseWine: { alcohol_vol: 9.5 } }],
  ["baseAlcohol", "fine", { baseWine: { alcohol_vol: 11.5 } }],
  ["baseAlcohol", "look again", { baseWine: { alcohol_vol: 11.51 } }],
  ["totalSo2", "fine", { baseWine: { totalSO2_mgL: 185 } }],
  ["totalSo2", "stop", { baseWine: { totalSO2_mgL: 185.1 } }],
  ["totalSo2", "fine", { batch: OIV, baseWine: { totalSO2_mgL: 300 } }],
  ["totalSo2", "look again", { baseWine: { totalSO2_mgL: null } }],
  // a rise of 1.5 from 10 % vol: s·(1.05263/16.83 − 0.00625) = s·0.056295, so s = 26.645
  ["tirageRise", "fine", { tirage: { dose_gL: 26.64 } }],
  ["tirageRise", "stop", { tirage: { dose_gL: 26.65 } }],
  ["tirageRise", "fine", { batch: OIV, tirage: { dose_gL: 26.65 } }],
  // 13 % vol from 11.5: s·0.0553575 = 1.5, so s = 27.096
  ["alcoholAfter", "fine", { baseWine: { alcohol_vol: 11.5 }, tirage: { dose_gL: 27.09 } }],
  ["alcoholAfter", "look again", { baseWine: { alcohol_vol: 11.5 }, tirage: { dose_gL: 27.1 } }],
  // 7.508 bar under the cap; spread 1.96·√(0.1311² + 0.1628² + 0.1302² + 0.0460²) = 0.491, so 7.017 at the low end;
  // less what is lost, the low end is held against 3.5 bar and the expected value against 3 (3.5 in the OIV's rules)
  ["pressureClass", "fine", { disgorging: { pressureLost_bar: 3.51 } }],
  ["pressureClass", "look again", { disgorging: { pressureLost_bar: 3.53 } }],
  ["pressureClass", "look again", { disgorging: { pressureLost_bar: 4.5 } }],
  ["pressureClass", "stop", { disgorging: { pressureLost_bar: 4.52 } }],
  ["pressureClass", "stop", { disgorging: { pressureLost_bar: 5.02 } }],
  ["pressureClass", "look again", { batch: OIV, disgorging: { pressureLost_bar: 4 } }],
  ["pressureClass", "stop", { batch: OIV, disgorging: { pressureLost_bar: 4.01 } }],
  ["pressureClass", "fine", { batch: { bottle_mL: 200 }, disgorging: { pressureLost_bar: 4.01 } }],
  ["pressureClass", "look again", { batch: { bottle_mL: 200 }, disgorging: { pressureLost_bar: 4.03 } }],
  ["yeast", "fine", { tirage: { yeast_gHL: 20 } }],
  ["yeast", "fine", { tirage: { starterTarget_Mcells_mL: 2, starter_Mcells_mL: 102 } }],
  ["yeast", "look again", { tirage: { yeast_gHL: 0 } }],
  ["yeast", "look again", {}],
  // of 750 mL: 712.5 and 772.5, then 600 and 900
  ["filled", "fine", {}],
  ["filled", "fine", { disgorging: { filled_mL: 712.5 } }],
  ["filled", "look again", { disgorging: { filled_mL: 712 } }],
  ["filled", "look again", { disgorging: { filled_mL: 773, lost_mL: 30 } }],
  ["filled", "look again", { disgorging: { filled_mL: 600 } }],
  ["filled", "stop", { disgorging: { filled_mL: 599 } }],
  ["modelRange", "fine", { tirage: { hottest_C: 30 } }],
  ["modelRange", "look again", { tirage: { hottest_C: 30.1 } }],
  ["modelRange", "look again", { tirage: { hottest_C: 40 } }],
  ["modelRange", "stop", { tirage: { hottest_C: 40.1 } }],
  ["modelRange", "look again", { tirage: { cellar_C: -1 } }],
  ["leesMonths", "fine", { lees: { lees_months: 9 } }],
  ["leesMonths", "stop", { lees: { lees_months: 8 } }],
  ["totalMonths", "fine", { lees: { rest_months: 3 } }],
  ["totalMonths", "stop", { lees: { rest_months: 2 } }],
  // the first turn is 20 days before disgorging: 31 May 2024 and one month is 30 June, so 10 June
  ["riddlingStart", "fine", { lees: { lees_months: 1 } }],
  ["riddlingStart", "stop", { lees: { lees_months: 0 } }],
  ["riddlingStart", "fine", { lees: { lees_months: 1 }, riddling: { wait_days: 16 } }],
  ["riddlingStart", "stop", { lees: { lees_months: 1 }, riddling: { wait_days: 17 } }],
  ["readingsState", "fine", {}],
  ["readingsState", "fine", { readings: { r1: { pressure_bar: 3.67, at_C: 20 } } }],
  ["readingsState", "look again", { readings: { r1: { pressure_bar: -0.9, at_C: 20 } } }],
  ["readingsState", "stop", { readings: { r1: { pressure_bar: 8.05, at_C: 20 } } }],
  // one that was too high is not passed over for a later one
  [
    "readingsState",
    "stop",
    { readings: { r1: { pressure_bar: 8.05, at_C: 20 }, r2: { pressure_bar: 7.4, at_C: 20 } } },
  ],
  // the wine freezes at −4.09 °C
  ["neckBath", "fine", { disgorging: { neckBath_C: -20 } }],
  ["neckBath", "look again", { disgorging: { neckBath_C: -19.9 } }],
  ["neckBath", "look again", { disgorging: { neckBath_C: -4.1 } }],
  ["neckBath", "stop", { disgorging: { neckBath_C: -4.08 } }],
  // 9.500 mL of liqueur
  ["room", "fine", { disgorging: { lost_mL: 9.51 } }],
  ["room", "stop", { disgorging: { lost_mL: 9.49 } }],
  ["room", "stop", { disgorging: { filled_mL: 771 } }],
  // 13 400 · 9.5 mL · 1.05 = 133.665 L
  ["stock", "fine", { dosage: { stock_L: 133.67 } }],
  ["stock", "stop", { dosage: { stock_L: 133.66 } }],
  ["stock", "fine", { dosage: { stock_L: null } }],
  // 75 mL in 750, so a tenth of the difference to 11.351 % vol: 0.495 and 0.505
  ["dosageRise", "fine", { dosage: { ...RESERVE, liqueur_vol: 16.3 } }],
  ["dosageRise", "stop", { dosage: { ...RESERVE, liqueur_vol: 16.4 } }],
  ["dosageRise", "fine", { batch: OIV, dosage: { ...RESERVE, liqueur_vol: 16.4 } }],
  ["term", "fine", { dosage: { target_gL: 11.9 } }],
  ["term", "look again", { dosage: { target_gL: 12.1 } }],
  ["term", "look again", { dosage: { target_gL: 14.9 } }],
  ["term", "stop", { dosage: { target_gL: 15.1 } }],
  ["term", "stop", { dosage: { target_gL: 2, term: "brut nature" } }],
  ["term", "look again", { dosage: { term: "" } }],
  ["termMargin", "fine", { dosage: { target_gL: 10.99 } }],
  ["termMargin", "look again", { dosage: { target_gL: 11.01 } }],
  ["termMargin", "look again", { dosage: { term: "" } }],
  // 11.302 % vol
  ["labelAlcohol", "fine", { dosage: { label_vol: 12 } }],
  ["labelAlcohol", "stop", { dosage: { label_vol: 11.7 } }],
  ["labelAlcohol", "stop", { dosage: { label_vol: 12.5 } }],
  ["labelAlcohol", "stop", { dosage: { label_vol: 10.5 } }],
  ["labelAlcohol", "fine", { batch: OIV, dosage: { label_vol: 13 } }],
  ["bottleSize", "fine", { batch: { bottle_mL: 1500 } }],
  ["bottleSize", "stop", { batch: { bottle_mL: 700 } }],
  ["bottleSize", "fine", { batch: { bottle_mL: 700, rules: "OIV" } }],
  ["bottleSize", "fine", { batch: { bottle_mL: 124 } }],
  ["bottleSize", "stop", { batch: { bottle_mL: 126 } }],
  ["bottleSize", "fine", { batch: { bottle_mL: 3000 } }],
  // 13 400 are finished; none left is refused, in the sheet a stop
  ["forSale", "fine", { costs: { heldBack_bottles: 13_399 } }],
  ["prices", "fine", { materials: ALL_PRICED }],
  ["prices", "look again", { materials: ALL_PRICED, costs: { riddling_hours: null } }],
  [
    "prices",
    "fine",
    { materials: ALL_PRICED, costs: { riddling_hours: null }, riddling: { bottlesPerHour: 6000 } },
  ],
  ["prices", "look again", { materials: { ...ALL_PRICED, corks: {} } }],
  ["prices", "look again", { materials: ALL_PRICED, costs: { baseWine_perL: null } }],
  ["prices", "look again", { materials: ALL_PRICED, costs: { labour_perHour: null } }],
];

test.each(VERDICTS)("%s is %s: %j", (key, verdict, changes) => {
  expect(planOf(changes).checks[key].verdict).toBe(verdict);
});

// the glass has its own test, and inputs that were parsed are never missing: that row is for the sheet
const ELSEWHERE: readonly CheckKey[] = ["hottest", "forSale", ...INPUT_CHECKS];

test("every check is seen fine and not fine", () => {
  for (const key of CHECK_KEYS.filter((each) => !ELSEWHERE.includes(each))) {
    const seen = VERDICTS.filter(([of]) => of === key).map(([, verdict]) => verdict);
    expect([key, seen.includes("fine"), seen.some((verdict) => verdict !== "fine")]).toEqual([
      key,
      true,
      true,
    ]);
  }
});

test("the glass is held against the high end of the pressure on the hottest day", () => {
  const hottest = (glassRating_bar: number | null, hottest_C = 25) =>
    planOf({ tirage: { glassRating_bar, hottest_C } });
  const { high, expected } = hottest(12).tirage.pressures.hottest;
  // by hand at 25 °C: 11.7257/(1.45640·0.84376 + 0.05918) + 0.80347 − 1.01325
  expect(expected).toBeCloseTo(8.894, 2);
  expect(hottest(high).checks.hottest).toEqual({ value: high, limit: high, verdict: "fine" });
  expect(hottest(high - 1e-6).checks.hottest.verdict).toBe("stop");
  expect(hottest((high + expected) / 2).checks.hottest.verdict).toBe("stop");
  // the same bottle on a hotter day
  expect(hottest(high, 26).checks.hottest.verdict).toBe("stop");
});

test("a blank glass rating is never fine, whatever the dose and the day", () =>
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 600 }), fc.integer({ min: 120, max: 450 }), (dose, hottest) => {
      const { checks, worst } = planOf({
        tirage: { glassRating_bar: "", dose_gL: dose / 10, hottest_C: hottest / 10 },
        disgorging: { pressureLost_bar: 0 },
      });
      expect(checks.hottest).toMatchObject({ limit: "", verdict: "look again" });
      expect(worst).not.toBe("fine");
    }),
    { seed: 7, numRuns: 200 },
  ));

test("a batch with nothing to object to, and the worst of a batch", () => {
  const { checks, worst } = planOf({ materials: ALL_PRICED, tirage: { yeast_gHL: 20 } });
  expect(Object.keys(checks).sort()).toEqual([...CHECK_KEYS].sort());
  expect(Object.entries(checks).filter(([, { verdict }]) => verdict !== "fine")).toEqual([]);
  expect(worst).toBe("fine");
  expect(planOf({ materials: ALL_PRICED, baseWine: { sugar_gL: 2.1 } }).worst).toBe("look again");
  expect(planOf({ baseWine: { sugar_gL: 2.1 }, lees: { lees_months: 8 } }).worst).toBe("stop");
  const fine: Check = { value: 1, limit: 1, verdict: "fine" };
  expect(worstVerdict({ ...checks, prices: { ...fine, verdict: "stop" } })).toBe("stop");
});

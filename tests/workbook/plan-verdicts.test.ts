/**
 * What the checks of a portable plan say once cells are cleared, mistyped or changed, calculated by a spreadsheet
 * engine. The verdicts follow from what each check is for.
 */
import type { Typing } from "../support/calculated-sheets";
import { typedPlans } from "../support/typed-plans";

type Said = Readonly<Record<string, string>>;
/** What is typed, and what the checks and the sheet as a whole then say. */
const VERDICTS: readonly (readonly [Typing, Said])[] = [
  [{}, { hottest: "fine", yeast: "fine", worst: "fine" }],
  [
    { tirage_glassRating_bar: null, tirage_yeast_gHL: null, tirage_starter_Mcells_mL: null },
    { hottest: "look again", yeast: "look again", worst: "look again" },
  ],
  // numbers as words, words mistyped
  [
    {
      tirage_glassRating_bar: "8 bar",
      tirage_yeast_gHL: null,
      baseWine_totalSO2_mgL: "62 mg",
      dosage_stock_L: "90 L",
      dosage_term: "bruut",
      costs_baseWine_perL: "2,4",
      lees_lees_months: "long",
      disgorging_filled_mL: "full",
    },
    {
      ...{
        hottest: "stop",
        yeast: "fine",
        totalSo2: "stop",
        stock: "stop",
        term: "stop",
        termMargin: "stop",
      },
      ...{ prices: "stop", leesMonths: "stop", totalMonths: "stop", riddlingStart: "stop", filled: "stop" },
    },
  ],
  [{ tirage_goal: "presure" }, { tirageInputs: "stop", tirageRise: "stop", pressureClass: "stop" }],
  [{ dosage_kind: "sugar with wine" }, { dosageInputs: "stop", room: "stop", stock: "stop" }],
  // cleared
  [
    { tirage_hottest_C: null, batch_rules: null, baseWine_totalSO2_mgL: 400, baseWine_alcohol_vol: null },
    { hottest: "stop", modelRange: "stop", totalSo2: "stop", bottleSize: "stop", baseAlcohol: "stop" },
  ],
  [
    { batch_bottle_mL: null, disgorging_neckBath_C: null },
    { bottleSize: "stop", filled: "stop", neckBath: "stop", worst: "stop" },
  ],
  // a store colder than the cellar, and one just as cold
  [{ tirage_hottest_C: 11 }, { hottest: "stop", modelRange: "fine", worst: "stop" }],
  [{ tirage_hottest_C: 12 }, { hottest: "fine", worst: "fine" }],
  // sizes that the EU allows between 125 and 1500 mL, free beyond them and by other rules; half units on the label
  [
    { batch_rules: "OIV", baseWine_totalSO2_mgL: 400, batch_bottle_mL: 700, dosage_label_vol: 11.7 },
    { totalSo2: "fine", bottleSize: "fine", labelAlcohol: "fine" },
  ],
  [
    { batch_bottle_mL: 700, dosage_label_vol: 11.7 },
    { bottleSize: "stop", labelAlcohol: "stop" },
  ],
  [{ batch_bottle_mL: 124 }, { bottleSize: "fine" }],
  [{ batch_bottle_mL: 125 }, { bottleSize: "fine" }],
  [{ batch_bottle_mL: 126 }, { bottleSize: "stop" }],
  [{ batch_bottle_mL: 1499 }, { bottleSize: "stop" }],
  [{ batch_bottle_mL: 1500 }, { bottleSize: "fine" }],
  [{ batch_bottle_mL: 1501 }, { bottleSize: "fine" }],
  // nothing left to sell, no months at all, and no verdict where one was typed over
  [
    { costs_heldBack_bottles: 99_999, lees_lees_months: 0 },
    { forSale: "stop", riddlingStart: "stop", leesMonths: "stop" },
  ],
  // beyond the model at both ends, a rise of alcohol by the dosage, a label far from the analysis
  [{ tirage_cellar_C: -1, tirage_hottest_C: 41 }, { modelRange: "stop" }],
  [
    { dosage_kind: "concentrate", dosage_target_gL: 50, dosage_strength_gL: 100, dosage_liqueur_vol: 20 },
    { dosageRise: "stop" },
  ],
  [
    { dosage_label_vol: 14.5, tirage_yeast_gHL: "20 g", tirage_starter_Mcells_mL: null },
    { labelAlcohol: "stop", yeast: "look again" },
  ],
  // readings: at work, done, of a day before the tirage; one that was too high is not passed over
  [{ readings_r1_pressure_bar: 1.2, readings_r1_at_C: 12 }, { readingsState: "fine" }],
  [{ readings_r1_pressure_bar: 5.2, readings_r1_at_C: 12 }, { readingsState: "fine" }],
  [
    { readings_r1_date: 46_000, readings_r1_pressure_bar: 1.2, readings_r1_at_C: 12 },
    { readingsState: "look again" },
  ],
  [
    {
      ...{ readings_r3_pressure_bar: 9, readings_r3_at_C: 12 },
      ...{ readings_r5_pressure_bar: 5.2, readings_r5_at_C: 12 },
    },
    { readingsState: "stop", worst: "stop" },
  ],
  [{ plan_check_yeast: "as always" }, { worst: "stop" }],
];

const calculated = (() => {
  let known: ReturnType<typeof typedPlans> | undefined;
  return () => (known ??= typedPlans(VERDICTS.map(([typing]) => typing)));
})();

test.each(VERDICTS)("with %j the checks say %j", (typing, said) => {
  const { cell } = calculated()[VERDICTS.findIndex(([each]) => each === typing)]!;
  const found = Object.keys(said).map((key) => [
    key,
    cell(key === "worst" ? "plan_worst" : `plan_check_${key}`),
  ]);
  expect(Object.fromEntries(found)).toEqual(said);
});

const LIMIT = 3;
const SOURCE = 5;
/** By the rules that the sheet's own cell names: the limit of a check, and where it is written. */
const SOURCES: readonly (readonly [check: string, eu: [unknown, RegExp], oiv: [unknown, RegExp]])[] = [
  ["totalSo2", [185, /2019\/934.*\(secondary/], ["none", /^these rules set no limit$/]],
  ["tirageRise", [1.5, /2019\/934.*\(read/], ["none", /^these rules set no limit$/]],
  ["dosageRise", [0.5, /2019\/934.*\(secondary/], ["none", /^these rules set no limit$/]],
  ["labelAlcohol", [0.8, /2019\/33.*\(read/], ["none", /^these rules set no limit$/]],
  ["pressureClass", [3.5, /1308\/2013.*\(memory/], [3.5, /^OIV Code.*\(read/]],
  ["term", [null, /2019\/33.*\(read/], [null, /^OIV Code.*\(read/]],
];

test("limits and their sources go by the rules that the sheet names", () => {
  const [eu, oiv] = typedPlans([{}, { batch_rules: "OIV" }]);
  for (const [key, ...wanted] of SOURCES)
    wanted.forEach(([limit, source], index) => {
      const { beside } = [eu!, oiv!][index]!;
      expect([key, beside(`plan_check_${key}`, LIMIT)]).toEqual([key, limit]);
      expect([key, beside(`plan_check_${key}`, SOURCE)]).toEqual([key, expect.stringMatching(source)]);
    });
});

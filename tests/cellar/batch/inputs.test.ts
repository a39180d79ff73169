import { placedFields } from "../../../src/cellar/batch/field-kinds";
import { fields } from "../../../src/cellar/batch/fields";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { problemSentence, type Problem } from "../../../src/cellar/batch/problem";
import { changed, type Sections } from "./worked-batch";

function problemsOf(given: unknown): readonly Problem[] {
  const parsed = parseBatchInputs(given);
  if (parsed.ok) throw new Error("nothing was refused");
  return parsed.problems;
}
function inputsOf(given: unknown) {
  const parsed = parseBatchInputs(given);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.inputs;
}
const inFields = (problems: readonly Problem[]) => problems.map(({ field }) => field).sort();

test("several problems at once, each with field, what was given and what is allowed", () => {
  const problems = problemsOf(
    changed({
      batch: { rules: "US", bottle_mL: 49, bottlesPerCase: 6.5, tirageDate: "2024-02-30" },
      baseWine: { volume_hL: 0, alcohol_vol: "10", sugar_gL: null },
      tirage: { yield: NaN, glassRating_bar: 31 },
      dosage: { term: "x".repeat(41) },
    }),
  );
  expect([...problems].sort((a, b) => a.field.localeCompare(b.field, "en"))).toEqual(
    [
      { field: "baseWine.alcohol_vol", given: "10", remedy: "give 5 to 16 % vol" },
      { field: "baseWine.sugar_gL", given: null, remedy: "give 0 to 300 g/L" },
      { field: "baseWine.volume_hL", given: 0, remedy: "give more than 0, at most 100000 hL" },
      { field: "batch.bottle_mL", given: 49, remedy: "give 50 to 30000 mL" },
      { field: "batch.bottlesPerCase", given: 6.5, remedy: "give a whole number, 1 to 60 bottles" },
      { field: "batch.rules", given: "US", remedy: "give one of: EU, OIV" },
      { field: "batch.tirageDate", given: "2024-02-30", remedy: "give a date like 2026-04-14" },
      { field: "dosage.term", given: "x".repeat(41), remedy: "give text of at most 40 characters" },
      {
        field: "tirage.glassRating_bar",
        given: 31,
        remedy: "give more than 0, at most 30 bar, or blank",
      },
      { field: "tirage.yield", given: NaN, remedy: "give 0.5 to 1 share" },
    ].sort((a, b) => a.field.localeCompare(b.field, "en")),
  );
  expect(problems.map(problemSentence)).toContain("baseWine.sugar_gL is blank; give 0 to 300 g/L");
});

test("keys that do not exist, also those that every object inherits", () => {
  const given: unknown = JSON.parse(
    `{"__proto__": {"polluted": 1}, "constructor": 1, "extra": null,
      "batch": {"name": "a", "tirageDate": "2024-05-31", "__proto__": 5, "hasOwnProperty": 3, "Name": "b"}}`,
  );
  const unknown = problemsOf(given).filter(({ remedy }) => remedy.startsWith("there is no such field"));
  expect(unknown).toContainEqual({
    field: "batch.__proto__",
    given: 5,
    remedy: "there is no such field; remove it or mend its name",
  });
  expect(unknown.find(({ field }) => field === "constructor")?.given).toBe(1);
  expect(inFields(unknown)).toEqual(
    ["__proto__", "constructor", "extra", "batch.__proto__", "batch.hasOwnProperty", "batch.Name"].sort(),
  );
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
});

test("a field left out is refused alone", () => {
  const problems = problemsOf({ ...changed(), batch: { name: "a" } });
  expect(problems).toEqual([
    { field: "batch.tirageDate", given: undefined, remedy: "give a date like 2026-04-14" },
  ]);
});

test.each([[[]], ["text"], [5], [true]])("a section that is %j", (section) => {
  expect(problemsOf({ ...changed(), tirage: section })).toEqual([
    { field: "tirage", given: section, remedy: 'give its fields in braces, as {"goal": …}' },
  ]);
  expect(problemsOf({ ...changed(), materials: { corks: section } })).toEqual([
    { field: "materials.corks", given: section, remedy: 'give its fields in braces, as {"spare_pct": …}' },
  ]);
});

test.each([[[]], ["text"], [5]])("a whole file that is %j", (given) => {
  expect(inFields(problemsOf(given))).toEqual(["the batch file"]);
});

test.each([undefined, null, {}])(
  "of a file that is %p the fields that must be filled in are listed",
  (given) => {
    const mustBeGiven = placedFields(fields)
      .filter(({ field }) => field.kind !== "optional" && field.blank === undefined)
      .map(({ dotted }) => dotted);
    expect(mustBeGiven).toContain("baseWine.volume_hL");
    // and what the usual choices, by pressure and sugar in wine, ask for besides
    const asked = [
      "tirage.pressure_bar",
      "tirage.pressureAt_C",
      "dosage.target_gL",
      "dosage.strength_gL",
      "dosage.liqueur_vol",
    ];
    expect(inFields(problemsOf(given))).toEqual([...mustBeGiven, ...asked].sort());
  },
);

test.each([undefined, null, "", "  "])("a field that is %j takes its default", (blank) => {
  const inputs = inputsOf(
    changed({
      batch: { bottle_mL: blank, rules: blank, language: blank, currency: blank, lot: blank },
      tirage: {
        yield: blank,
        headspace_pct: blank,
        cellar_C: blank,
        glassRating_bar: blank,
        loss_pct: blank,
      },
      dosage: { kind: blank, reserve_pct: blank, stock_L: blank },
      costs: { breakage_pct: blank },
    }),
  );
  const { batch, tirage, dosage, costs } = inputs;
  expect([batch.bottle_mL, batch.rules, batch.language, batch.currency]).toEqual([750, "EU", "en", "EUR"]);
  expect([tirage.yield, tirage.cellar_C, tirage.glassRating_bar, tirage.loss_pct]).toEqual([
    0.95,
    12,
    null,
    0,
  ]);
  expect(tirage.headspace_pct).toBeCloseTo(10 / 3, 12);
  expect([dosage.kind, dosage.reserve_pct, dosage.stock_L]).toEqual(["sugar in wine", 5, null]);
  expect(costs.breakage_pct).toBe(1);
});

test("a zero is not a blank", () => {
  const { dosage, costs } = inputsOf(changed({ dosage: { reserve_pct: 0 }, costs: { breakage_pct: 0 } }));
  expect([dosage.reserve_pct, costs.breakage_pct]).toEqual([0, 0]);
});

test.each([
  ["1900-02-28", false],
  ["1900-03-01", true],
  ["9999-12-31", true],
  ["1850-01-01", false],
])("a tirage on %s can stand in a sheet: %p", (tirageDate, allowed) => {
  expect(parseBatchInputs(changed({ batch: { tirageDate } })).ok).toBe(allowed);
});

const DEMANDS: readonly (readonly [string, Sections, string, string])[] = [
  [
    "a pressure",
    { tirage: { goal: "pressure", pressureAt_C: 12 } },
    "tirage.pressure_bar",
    "give -1 to 20 bar",
  ],
  [
    "its temperature",
    { tirage: { goal: "pressure", pressure_bar: 6 } },
    "tirage.pressureAt_C",
    "give -5 to 45 °C",
  ],
  ["a dose", { tirage: { dose_gL: null } }, "tirage.dose_gL", "give 0 to 60 g/L sucrose"],
  ["a liqueur", { tirage: { sugarForm: "liqueur" } }, "tirage.liqueur_gL", "give 0 to 900 g/L"],
  [
    "cells wanted",
    { tirage: { starter_Mcells_mL: 60 } },
    "tirage.starterTarget_Mcells_mL",
    "give more than 0, at most 10000 million/mL",
  ],
  ["a target", { dosage: { target_gL: "" } }, "dosage.target_gL", "give 0 to 300 g/L"],
  ["a strength", { dosage: { strength_gL: null } }, "dosage.strength_gL", "give 0 to 900 g/L"],
  ["the liqueur's alcohol", { dosage: { liqueur_vol: null } }, "dosage.liqueur_vol", "give 0 to 20 % vol"],
];

test.each(DEMANDS)("%s is demanded by another field", (_what, changes, field, remedy) => {
  expect(problemsOf(changed(changes))).toEqual([{ field, given: null, remedy }]);
});

test("without a dosage nothing is demanded for it", () => {
  const dosage = { kind: "none", target_gL: null, strength_gL: null, liqueur_vol: null };
  expect(parseBatchInputs(changed({ dosage })).ok).toBe(true);
});

test("temperatures, fill and terms are held against each other, all at once", () => {
  const problems = problemsOf(
    changed({
      batch: { rules: "OIV" },
      tirage: { hottest_C: 11.9, cellar_C: 12 },
      disgorging: { filled_mL: 0 },
      dosage: { term: "extra brut" },
    }),
  );
  expect(inFields(problems)).toEqual(["disgorging.filled_mL", "dosage.term", "tirage.hottest_C"]);
  const remedies = problems.map(({ remedy }) => remedy).join("\n");
  expect(remedies).toContain("give at least the cellar temperature, 12 °C");
  expect(remedies).toContain("give one of: brut");
  expect(parseBatchInputs(changed({ tirage: { hottest_C: 12, cellar_C: 12 } })).ok).toBe(true);
});

/**
 * A portable plan with cells cleared, mistyped or out of range, calculated by a spreadsheet engine. The counts of cells
 * to mend follow from the ranges in the table of fields.
 */
import { placedFields, type PlacedField } from "../../src/cellar/batch/field-kinds";
import { fields } from "../../src/cellar/batch/fields";
import type { Domain } from "../../src/cellar/domains";
import type { Typing } from "../support/calculated-sheets";
import { typedPlans } from "../support/typed-plans";

const all = placedFields(fields);
const domainOf = ({ field }: PlacedField): Domain | undefined =>
  "domain" in field ? field.domain : undefined;
/** One entry for each number field, where there is one to give. */
const numbers = (of: (domain: Domain, field: PlacedField["field"]) => Typing[string] | undefined): Typing =>
  Object.fromEntries(
    all.flatMap((placed) => {
      const domain = domainOf(placed);
      const value = domain && of(domain, placed.field);
      return value === undefined ? [] : [[placed.name, value] as const];
    }),
  );
const SECTIONS = Object.keys(fields) as (keyof typeof fields)[];
/** How many cells of each section are typed over. */
const counted = (typing: Typing, more: Partial<Record<keyof typeof fields, number>> = {}) =>
  Object.fromEntries(
    SECTIONS.map((section) => [
      section,
      all.filter(({ path, name }) => path[0] === section && name in typing).length + (more[section] ?? 0),
    ]),
  );
const NONE = Object.fromEntries(SECTIONS.map((section) => [section, 0]));

const below = numbers(({ min, aboveMin }) => (aboveMin ? min : min - 1));
const above = numbers(({ max, belowMax }) => (belowMax ? max : max + 1));
const lowest = numbers(({ min, aboveMin }) => (aboveMin ? min + 1 : min));
const highest = numbers(({ max, belowMax, whole }) => (belowMax ? max - (whole ? 1 : 0.5) : max));
const words = numbers(() => "7,5");
const halves = numbers(({ whole, min }) => (whole ? min + 1.5 : undefined));
const cleared = numbers(() => null);
const needed = numbers((_, field) => (field.kind === "number" ? null : undefined));
const named: Typing = { materials_other1_name: "Dividers", materials_other2_name: "Tape" };
// what the goal and the kind of dosage ask for besides
const DEMANDED = { tirage: 2, dosage: 3 };

/** What is typed, and how many cells of each section are then to be mended. */
const COUNTS: readonly (readonly [what: string, Typing, Record<string, number>])[] = [
  ["nothing", {}, NONE],
  ["numbers below their range", below, counted(below)],
  ["numbers above their range", { ...above, ...named }, counted(above)],
  ["the lowest allowed", lowest, NONE],
  ["the highest allowed", { ...highest, ...named }, NONE],
  ["words for numbers", words, counted(words)],
  ["halves where only whole ones will do", halves, counted(halves)],
  ["no numbers", cleared, counted(needed, DEMANDED)],
  [
    "words that are none of the choices",
    {
      batch_designation: "Champaign",
      batch_language: "klingon",
      tirage_goal: "dose",
      tirage_sugarForm: "liqueur",
    },
    { ...NONE, batch: 2, tirage: 2 },
  ],
  [
    "blank texts that are needed, other material without a name",
    { batch_name: null, batch_currency: null, materials_other2_need: 3, actual_pressure_bar: 5 },
    { ...NONE, batch: 2, materials: 1, actual: 1 },
  ],
  [
    "days that are none, live cells wanted of nothing",
    {
      batch_tirageDate: "14 April",
      readings_r2_date: 60,
      readings_r3_date: "May",
      tirage_starterTarget_Mcells_mL: null,
    },
    // the target is a number to be given only with a starter
    { ...NONE, batch: 1, readings: 2, tirage: 1 },
  ],
  [
    "no dosage, and nothing of it",
    { dosage_kind: "none", dosage_target_gL: null, dosage_strength_gL: null },
    NONE,
  ],
];

const VALUE = 1;
const calculated = (() => {
  let known: ReturnType<typeof typedPlans> | undefined;
  return () => (known ??= typedPlans(COUNTS.map(([, typing]) => typing)));
})();

test.each(COUNTS)("%s: so many cells to mend in each section", (_what, typing, expected) => {
  const { cell, beside } = calculated()[COUNTS.findIndex(([, each]) => each === typing)]!;
  const check = (section: string) => `plan_check_${section}Inputs`;
  expect(Object.fromEntries(SECTIONS.map((section) => [section, beside(check(section), VALUE)]))).toEqual(
    expected,
  );
  expect(Object.fromEntries(SECTIONS.map((section) => [section, cell(check(section))]))).toEqual(
    Object.fromEntries(SECTIONS.map((section) => [section, expected[section] === 0 ? "fine" : "stop"])),
  );
});

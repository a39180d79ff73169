/**
 * How many inputs of a section no longer hold what their field allows: cleared, a text, out of range, an unknown word.
 * Rules on cells stop typing, but not pasting, and a blank would count as 0.
 */
import { placedFields, type PlacedField } from "../../cellar/batch/field-kinds";
import { fields } from "../../cellar/batch/fields";
import { READING_KEYS } from "../../cellar/batch/cellar-book";
import { OTHER_KEYS, materialKeys } from "../../cellar/batch/materials";
import { domains, type Domain } from "../../cellar/domains";
import {
  builtin,
  cell,
  choose,
  equals,
  iff,
  isBlank,
  isNumber,
  minus,
  mousse,
  operation,
  plus,
  range,
  times,
  type Expression,
} from "../formula";
import { input, placed } from "./rows";

type Section = keyof typeof fields;

/** Not every program counts in a single cell that is not written as a range. */
const asRange = (cells: Expression) => (cells.kind === "cell" ? range(cells.name, cells.name) : cells);

/** How many cells hold a number of the domain; COUNTIFS passes over blanks and texts. */
function inDomain(given: Expression, { min, max, aboveMin, belowMax }: Domain): Expression {
  const cells = asRange(given);
  return builtin(
    "COUNTIFS",
    cells,
    `${aboveMin ? ">" : ">="}${min}`,
    cells,
    `${belowMax ? "<" : "<="}${max}`,
  );
}

/** 1 for a number with a fraction where only whole ones will do. */
const fraction = (value: Expression) =>
  iff(isNumber(value), iff(minus(value, builtin("INT", value)), 1, 0), 0);

function faults({ dotted, name, field }: PlacedField): readonly Expression[] {
  const value = cell(name);
  switch (field.kind) {
    case "text":
      // a text that files take for granted, or that must be there
      return field.blank === "" ? [] : [iff(isBlank(value), 1, 0)];
    case "choice":
      // too many words to list in a formula, and the function knows them
      if (dotted === "batch.designation") {
        return [iff(isNumber(mousse("AGEING.MINIMUM", value)), 0, 1)];
      }
      return [
        minus(1, plus(0, ...field.options.map((option) => builtin("COUNTIF", asRange(value), option)))),
      ];
    case "date":
      return field.blank === undefined
        ? [minus(1, inDomain(value, domains.dateSerial))]
        : [minus(builtin("COUNTA", value), inDomain(value, domains.dateSerial))];
    case "number":
      return [minus(1, inDomain(value, field.domain)), ...(field.domain.whole ? [fraction(value)] : [])];
    case "optional":
      return [
        minus(builtin("COUNTA", value), inDomain(value, field.domain)),
        ...(field.domain.whole ? [fraction(value)] : []),
      ];
  }
}

const firstItem = materialKeys[0]!;
const lastItem = OTHER_KEYS[OTHER_KEYS.length - 1]!;
const ITEMS = materialKeys.length + OTHER_KEYS.length;

/** The materials by their columns, which share a domain each. */
function materialFaults(): Expression {
  const column = (which: string) =>
    range(`materials_${firstItem}_${which}`, `materials_${lastItem}_${which}`);
  const domainOf = (which: string) =>
    (placed(`materials.${firstItem}.${which}`).field as { domain: Domain }).domain;
  const price = column("price");
  return plus(
    minus(
      2 * ITEMS,
      plus(inDomain(column("spare_pct"), domainOf("spare_pct")), inDomain(column("pack"), domainOf("pack"))),
    ),
    minus(builtin("COUNTA", price), inDomain(price, domainOf("price"))),
    ...OTHER_KEYS.map((key) => minus(1, inDomain(input(`materials.${key}.need`), domains.quantity))),
    ...OTHER_KEYS.map((key) =>
      iff(
        builtin(
          "AND",
          operation(builtin("N", input(`materials.${key}.need`)), ">", 0),
          isBlank(input(`materials.${key}.name`)),
        ),
        1,
        0,
      ),
    ),
  );
}

export function sectionFaults(section: Section): Expression {
  if (section === "materials") return materialFaults();
  if (section === "readings") return readingFaults();
  const found = placedFields({ [section]: fields[section] }).flatMap(faults);
  return plus(found[0]!, ...found.slice(1), ...(demands[section] ?? []));
}

/** Readings and what was found out, by the columns in which they stand: each column shares a domain. */
function readingFaults(): Expression {
  const column = (which: string) =>
    range(
      `readings_${READING_KEYS[0]}_${which}`,
      `readings_${READING_KEYS[READING_KEYS.length - 1]!}_${which}`,
    );
  const odd = (which: string, domain: Domain) =>
    minus(builtin("COUNTA", column(which)), inDomain(column(which), domain));
  return plus(
    odd("date", domains.dateSerial),
    odd("pressure_bar", domains.pressureBar),
    odd("at_C", domains.temperatureC),
    // a pressure means nothing without its temperature
    builtin(
      "SUMPRODUCT",
      times(1, operation(isNumber(column("pressure_bar")), "<>", isNumber(column("at_C")))),
    ),
  );
}

const isMissing = (dotted: string) => iff(isBlank(input(dotted)), 1, 0);

/** What a choice of the section asks for besides. */
const demands: Partial<Record<Section, readonly Expression[]>> = {
  tirage: [
    choose(input("tirage.goal"), [
      ["pressure", plus(isMissing("tirage.pressure_bar"), isMissing("tirage.pressureAt_C"))],
      ["dose", isMissing("tirage.dose_gL")],
    ]),
    choose(input("tirage.sugarForm"), [
      ["dry sugar", 0],
      ["liqueur", isMissing("tirage.liqueur_gL")],
    ]),
    iff(isBlank(input("tirage.starter_Mcells_mL")), 0, isMissing("tirage.starterTarget_Mcells_mL")),
  ],
  actual: [iff(equals(isNumber(input("actual.pressure_bar")), isNumber(input("actual.pressureAt_C"))), 0, 1)],
  dosage: [
    iff(
      builtin("EXACT", input("dosage.kind"), "none"),
      0,
      plus(isMissing("dosage.target_gL"), isMissing("dosage.strength_gL"), isMissing("dosage.liqueur_vol")),
    ),
  ],
};

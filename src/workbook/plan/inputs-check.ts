/**
 * The first check: that no input of the sheet has been cleared or made a text since it was written. A blank would
 * count as 0, and a pressure without its temperature would bring a wrong dose.
 */
import { placedFields } from "../../cellar/batch/field-kinds";
import { fields } from "../../cellar/batch/fields";
import { OTHER_KEYS, materialKeys } from "../../cellar/batch/materials";
import { builtin, cell, choose, iff, isBlank, minus, plus, range, type Expression } from "../formula";
import type { CheckRow } from "./check-rules";
import { atMost } from "./check-rules";
import { FORMATS, input } from "./rows";

const firstItem = materialKeys[0]!;
const lastItem = OTHER_KEYS[OTHER_KEYS.length - 1]!;
const ITEMS = materialKeys.length + OTHER_KEYS.length;

/** Fields of one kind outside the table of materials, which is counted by its columns. */
const namesOf = (...kinds: string[]) =>
  placedFields(fields)
    .filter(({ path, field }) => path[0] !== "materials" && kinds.includes(field.kind))
    .map(({ name }) => cell(name));

const needed = namesOf("number", "date");
const spareAndPack = range(`materials_${firstItem}_spare_pct`, `materials_${lastItem}_pack`);
const otherNeeds = OTHER_KEYS.map((key) => input(`materials.${key}.need`));
const mayBeBlank = [
  ...namesOf("optional"),
  range(`materials_${firstItem}_price`, `materials_${lastItem}_price`),
];

const missing = minus(
  needed.length + 2 * ITEMS + otherNeeds.length,
  builtin("COUNT", ...needed, spareAndPack, ...otherNeeds),
);
const texts = minus(builtin("COUNTA", ...mayBeBlank), builtin("COUNT", ...mayBeBlank));
const lacking = (...dotted: string[]): Expression =>
  minus(dotted.length, builtin("COUNT", ...dotted.map(input)));

/** What a choice asks for besides. */
const asked = plus(
  choose(input("tirage.goal"), [
    ["pressure", lacking("tirage.pressure_bar", "tirage.pressureAt_C")],
    ["dose", lacking("tirage.dose_gL")],
  ]),
  choose(input("tirage.sugarForm"), [
    ["dry sugar", 0],
    ["liqueur", lacking("tirage.liqueur_gL")],
  ]),
  iff(isBlank(input("tirage.starter_Mcells_mL")), 0, lacking("tirage.starterTarget_Mcells_mL")),
  choose(
    input("dosage.kind"),
    fields.dosage.kind.options.map((kind) => [
      kind,
      kind === "none" ? 0 : lacking("dosage.target_gL", "dosage.strength_gL", "dosage.liqueur_vol"),
    ]),
  ),
);

export const inputsCheck: CheckRow = {
  what: "Inputs missing or not a number, at most",
  unit: "cells",
  format: FORMATS.whole,
  value: plus(missing, texts, asked),
  limit: 0,
  verdict: atMost("stop"),
  source: "this plan; a blank would count as 0",
};

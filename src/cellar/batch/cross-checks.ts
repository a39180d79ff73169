/**
 * What one field demands of another.
 */
import { rangeText } from "../domains";
import { Refusal } from "../refusal";
import { bandOfTerm } from "../sweetness";
import { allowedText } from "./field-kinds";
import { fields } from "./fields";
import type { BatchInputs } from "./fields";
import type { Problem } from "./problem";

export function crossChecks(inputs: BatchInputs): Problem[] {
  const { tirage, dosage, batch, disgorging } = inputs;
  const needed: [boolean, string, { readonly domain: Parameters<typeof rangeText>[0] }, number | null][] = [
    [tirage.goal === "pressure", "tirage.pressure_bar", fields.tirage.pressure_bar, tirage.pressure_bar],
    [tirage.goal === "pressure", "tirage.pressureAt_C", fields.tirage.pressureAt_C, tirage.pressureAt_C],
    [tirage.goal === "dose", "tirage.dose_gL", fields.tirage.dose_gL, tirage.dose_gL],
    [tirage.sugarForm === "liqueur", "tirage.liqueur_gL", fields.tirage.liqueur_gL, tirage.liqueur_gL],
    [
      tirage.starter_Mcells_mL !== null,
      "tirage.starterTarget_Mcells_mL",
      fields.tirage.starterTarget_Mcells_mL,
      tirage.starterTarget_Mcells_mL,
    ],
    [dosage.kind !== "none", "dosage.target_gL", fields.dosage.target_gL, dosage.target_gL],
    [dosage.kind !== "none", "dosage.strength_gL", fields.dosage.strength_gL, dosage.strength_gL],
    [dosage.kind !== "none", "dosage.liqueur_vol", fields.dosage.liqueur_vol, dosage.liqueur_vol],
  ];
  const problems: Problem[] = needed
    .filter(([isNeeded, , , value]) => isNeeded && value === null)
    .map(([, field, { domain }]) => ({ field, given: null, remedy: `give ${rangeText(domain)}` }));

  if (tirage.hottest_C < tirage.cellar_C) {
    problems.push({
      field: "tirage.hottest_C",
      given: tirage.hottest_C,
      remedy: `give at least the cellar temperature, ${tirage.cellar_C} °C`,
    });
  }
  if (disgorging.filled_mL === 0) {
    problems.push({
      field: "disgorging.filled_mL",
      given: 0,
      remedy: `give ${allowedText(fields.disgorging.filled_mL)}`,
    });
  }
  if (dosage.term !== "") {
    try {
      bandOfTerm(dosage.term, batch.rules, "dosage.term");
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
      problems.push({ field: "dosage.term", given: dosage.term, remedy: refusal.remedy });
    }
  }
  return problems;
}

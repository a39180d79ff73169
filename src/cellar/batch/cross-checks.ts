/**
 * What one field demands of another. A demand is looked at only where the fields it stands on are sound themselves,
 * so that it can be told together with everything else that is wrong.
 */
import { Refusal } from "../refusal";
import { LANGUAGES, sweetnessRules } from "../rules/sweetness-bands";
import { rangeText } from "../domains";
import { bandOfTerm } from "../sweetness";
import { READING_KEYS } from "./cellar-book";
import { OTHER_KEYS } from "./materials";
import { fields, type BatchInputs } from "./fields";
import type { Problem } from "./problem";

type Sound = (...dotted: string[]) => boolean;

export function crossChecks(inputs: BatchInputs, sound: Sound): Problem[] {
  return [
    ...blanksThatAChoiceNeeds(inputs, sound),
    ...pressuresAlone(inputs, sound),
    ...disagreements(inputs, sound),
  ];
}

function blanksThatAChoiceNeeds({ tirage, dosage }: BatchInputs, sound: Sound): Problem[] {
  const { tirage: T, dosage: D } = fields;
  const dosed = dosage.kind !== "none";
  const needed = [
    ["tirage.goal", tirage.goal === "pressure", "tirage.pressure_bar", T.pressure_bar, tirage.pressure_bar],
    ["tirage.goal", tirage.goal === "pressure", "tirage.pressureAt_C", T.pressureAt_C, tirage.pressureAt_C],
    ["tirage.goal", tirage.goal === "dose", "tirage.dose_gL", T.dose_gL, tirage.dose_gL],
    [
      "tirage.sugarForm",
      tirage.sugarForm === "liqueur",
      "tirage.liqueur_gL",
      T.liqueur_gL,
      tirage.liqueur_gL,
    ],
    [
      "tirage.starter_Mcells_mL",
      tirage.starter_Mcells_mL !== null,
      "tirage.starterTarget_Mcells_mL",
      T.starterTarget_Mcells_mL,
      tirage.starterTarget_Mcells_mL,
    ],
    ["dosage.kind", dosed, "dosage.target_gL", D.target_gL, dosage.target_gL],
    ["dosage.kind", dosed, "dosage.strength_gL", D.strength_gL, dosage.strength_gL],
    ["dosage.kind", dosed, "dosage.liqueur_vol", D.liqueur_vol, dosage.liqueur_vol],
  ] as const;
  return needed
    .filter(([choice, isNeeded, field, , value]) => isNeeded && value === null && sound(choice, field))
    .map(([, , field, { domain }]) => ({ field, given: null, remedy: `give ${rangeText(domain)}` }));
}

/** A pressure means nothing without its temperature. */
function pressuresAlone({ readings, actual }: BatchInputs, sound: Sound): Problem[] {
  const pairs = [
    ...READING_KEYS.map(
      (key) =>
        [
          [`readings.${key}.pressure_bar`, readings[key].pressure_bar, fields.readings[key].pressure_bar],
          [`readings.${key}.at_C`, readings[key].at_C, fields.readings[key].at_C],
        ] as const,
    ),
    [
      ["actual.pressure_bar", actual.pressure_bar, fields.actual.pressure_bar],
      ["actual.pressureAt_C", actual.pressureAt_C, fields.actual.pressureAt_C],
    ] as const,
  ];
  return pairs.flatMap(([bar, celsius]) => {
    const missing = bar[1] === null ? bar : celsius;
    return (bar[1] === null) !== (celsius[1] === null) && sound(bar[0], celsius[0])
      ? [
          {
            field: missing[0],
            given: null,
            remedy: `give ${rangeText(missing[2].domain)}: a pressure means nothing without its temperature`,
          },
        ]
      : [];
  });
}

function disagreements(
  { batch, tirage, disgorging, dosage, materials }: BatchInputs,
  sound: Sound,
): Problem[] {
  const problems: Problem[] = [];
  const object = (field: string, given: unknown, remedy: string) => problems.push({ field, given, remedy });

  if (sound("tirage.hottest_C", "tirage.cellar_C") && tirage.hottest_C < tirage.cellar_C) {
    object(
      "tirage.hottest_C",
      tirage.hottest_C,
      `give at least the cellar temperature, ${tirage.cellar_C} °C`,
    );
  }
  if (sound("disgorging.filled_mL") && disgorging.filled_mL === 0) {
    object("disgorging.filled_mL", 0, `give ${rangeText(fields.batch.bottle_mL.domain)}, or leave it blank`);
  }
  for (const key of OTHER_KEYS) {
    const { name, need } = sound(`materials.${key}`) ? materials[key] : { name: "", need: 0 };
    if (sound(`materials.${key}.name`, `materials.${key}.need`) && need > 0 && name === "") {
      object(`materials.${key}.name`, null, "give a name for what is to be ordered");
    }
  }
  if (sound("batch.rules", "batch.language", "dosage.term") && dosage.term !== "") {
    const { bands } = sweetnessRules[batch.rules];
    try {
      bandOfTerm(dosage.term, batch.rules, "dosage.term");
    } catch (refusal) {
      if (!(refusal instanceof Refusal)) throw refusal;
      const usual = bands.map((band) => band.terms[batch.language][0]).join(", ");
      object(
        "dosage.term",
        dosage.term,
        `give one of: ${usual}; or its word in another of: ${LANGUAGES.join(", ")}`,
      );
    }
  }
  return problems;
}

/**
 * The closed bottle in steps: what the portable forms of pressure share.
 */
import { GAS_CONSTANT, KELVIN_AT_0C } from "../../cellar/constants";
import { domains } from "../../cellar/domains";
import {
  ALCOHOL_FREE,
  DISSOLUTION_J_PER_MOL,
  LOSS_PER_GL,
  LOSS_PER_VOL,
  REFERENCE_K,
  SOLUBILITY_AT_20C,
} from "../../cellar/solubility";
import {
  builtin,
  divided,
  iff,
  minus,
  noAnswer,
  operation,
  plus,
  times,
  type Expression,
  type Operand,
} from "../formula";
import type { Args, Steps } from "./form";

const kelvin = (celsius: Expression) => plus(celsius, KELVIN_AT_0C);

/** What the gas does at a temperature, whatever the wine. */
export function atTemperature(celsius: Expression, headspacePct: Expression, { step, constant }: Steps) {
  const T = step("Temperature", "K", kelvin(celsius));
  return {
    T,
    factor: step(
      "Solubility at this temperature, before alcohol and sugar",
      "g/L/bar",
      times(
        SOLUBILITY_AT_20C,
        builtin(
          "EXP",
          times(divided(DISSOLUTION_J_PER_MOL, GAS_CONSTANT), minus(divided(1, T), divided(1, REFERENCE_K))),
        ),
      ),
    ),
    head: step(
      "CO2 in the headspace",
      "g/L/bar",
      divided(times(divided(headspacePct, 100), constant("gas")), T),
    ),
  };
}

export const solubility = (factor: Expression, alcohol: Operand, sugar?: Expression) =>
  times(
    factor,
    minus(ALCOHOL_FREE, times(LOSS_PER_VOL, alcohol)),
    ...(sugar ? [minus(1, times(LOSS_PER_GL, sugar))] : []),
  );

/** Alcohol once the dose has fermented, and what 1 g/L of dose adds to it. */
function alcoholOf(dose: Expression, base: Expression, { step, constant }: Steps) {
  return step(
    "Alcohol once it has fermented",
    "% vol",
    plus(
      times(base, minus(1, divided(times(dose, constant("displaced")), 1000))),
      divided(times(dose, constant("inv")), constant("vol")),
    ),
  );
}

/** `shown`: whether solubility and CO2 stand in rows of their own, for a form that needs them again. */
export function filled(args: readonly Expression[], steps: Steps, shown: boolean) {
  const [dose, celsius, base, yieldShare, headspacePct, dissolved] = args as Args;
  const { step, constant } = steps;
  const at = atTemperature(celsius, headspacePct, steps);
  const alcohol = alcoholOf(dose, base, steps);
  const row = (label: string, unit: string, formula: Expression) =>
    shown ? step(label, unit, formula) : formula;
  const solved = row("Solubility of CO2 in the wine", "g/L/bar", solubility(at.factor, alcohol));
  const capacity = row("Wine and headspace together hold", "g/L/bar", plus(solved, at.head));
  const co2Bar = row(
    "Pressure of CO2 alone",
    "bar",
    divided(plus(times(dose, constant("co2"), yieldShare), dissolved), capacity),
  );
  const others = minus(divided(times(constant("nitrogen"), at.T), REFERENCE_K), constant("atmosphere"));
  return { dose, base, yieldShare, ...at, solved, capacity, co2Bar, pressure: plus(co2Bar, others) };
}

export const inRange = (dose: Expression, result: Expression) =>
  iff(
    builtin("AND", operation(dose, ">=", domains.doseGL.min), operation(dose, "<=", domains.doseGL.max)),
    result,
    noAnswer,
  );

/** CO2's own pressure behind a gauge under the crown cap. */
export const co2Behind = (bar: Expression, T: Expression, { step, constant }: Steps) =>
  step(
    "Pressure of CO2 alone",
    "bar",
    minus(plus(bar, constant("atmosphere")), divided(times(constant("nitrogen"), T), REFERENCE_K)),
  );

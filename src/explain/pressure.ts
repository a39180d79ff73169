/**
 * PRESSURE workings.
 */
import { dissolvedCo2, pressureOfDissolved, shiftPressure, type Bottle } from "../cellar/carbonation";

import { domains } from "../cellar/domains";
import { pressureAt20, ratioTo20C } from "../cellar/gauge-table";
import { barAboveVacuum, convertPressure, scaleOf, type Scale } from "../cellar/pressure-units";
import {
  absoluteToExcess,
  excessBar,
  excessToAbsolute,
  invertGL,
  type ExcessBar,
  type InvertGL,
} from "../cellar/units";
import {
  co2PressureStep,
  gaugeSteps,
  headspaceStep,
  nitrogenStep,
  solubilityStep,
  temperature,
  temperatureSteps,
  totalCo2Step,
} from "./bottle";
import { explainer, type Notebook } from "./notebook";
import {
  BOTTLE_CARE,
  BOTTLE_PHYSICS,
  EXACT_UNITS,
  GAUGE_TABLE,
  SOLUBILITY,
  temperatureCaution,
  VAN_T_HOFF,
} from "./sources";

const ABOVE = "bar above atmospheric";

const sugarOf = (on: Notebook) =>
  invertGL(on.optional("sugar_gL", domains.wineSugarGL, "[S] Glucose + fructose in the wine", 0, "g/L"));

/** A closed bottle taken from one temperature to another; t1 and t2 are known on the notebook. */
export function shiftSteps(
  on: Notebook,
  pressure: ExcessBar,
  fromC: number,
  toC: number,
  alcoholVol: number,
  sugar: InvertGL,
  bottle: Bottle,
): ExcessBar {
  const result = shiftPressure(pressure, fromC, toC, alcoholVol, sugar, bottle);
  temperatureSteps(on, fromC, "1");
  solubilityStep(on, fromC, alcoholVol, sugar, "1");
  headspaceStep(on, fromC, bottle, "1");
  nitrogenStep(on, fromC, bottle, "1");
  co2PressureStep(on, pressure, fromC, bottle, "1");
  totalCo2Step(on, pressure, fromC, alcoholVol, sugar, bottle, "1");
  temperatureSteps(on, toC, "2");
  solubilityStep(on, toC, alcoholVol, sugar, "2");
  headspaceStep(on, toC, bottle, "2");
  gaugeSteps(on, result, toC, bottle, "2", "The same CO2 at the other temperature, as a gauge reads it");
  return result;
}

/** A unit's place on the absolute scale in bar: u bar for 1 of it, z bar at its zero. */
function scaleSteps(on: Notebook, unit: unknown, scale: Scale, x: "1" | "2"): void {
  const name = typeof unit === "string" ? unit.trim() : "";
  on.constant({
    symbol: `u${x}`,
    value: scale.barPerUnit,
    unit: "bar",
    what: `1 ${name.replace(/ abs$/iu, "")} in bar`,
    source: EXACT_UNITS,
  });
  on.found(
    `[z${x}] ${scale.zeroBar === 0 ? `"${name}" counts from vacuum: its zero is at` : `"${name}" counts from the atmosphere: its zero is at`}`,
    scale.zeroBar,
    "bar absolute",
  );
}

export const pressure = {
  "PRESSURE.AT20": explainer("reading_bar temperature_C", (on) => {
    const reading = excessBar(on.number("reading_bar", domains.pressureBar, "[P] Excess pressure read"));
    const celsius = on.number(
      "temperature_C",
      domains.gaugeTableC,
      "[t] Temperature of the bottle at the reading",
    );
    const result = pressureAt20(reading, celsius);
    const { below, low, high, ratio } = ratioTo20C(celsius);
    const row = (symbol: string, value: number, at: number) =>
      on.constant({ symbol, value, unit: "", what: `the table's ratio at ${at} °C`, source: GAUGE_TABLE });
    row("r0", low, below);
    row("r1", high, below + 1);
    on.found("[b] The table has whole degrees; the one not above the reading's", below, "°C");
    on.step(
      "Between two degrees the ratio is taken on a straight line",
      "r = r0 + (r1 − r0)·(t − b)",
      ratio,
      "",
    );
    on.step("Excess pressure at 20 °C", "P20 = P·r", result, "bar");
    return {
      result,
      unit: `${ABOVE} at 20 °C`,
      sources: [GAUGE_TABLE],
      cautions: [
        "The official table differs from the physics of PRESSURE.SHIFT, most in the cold; do not mix the two.",
      ],
    };
  }),

  "PRESSURE.SHIFT": explainer("pressure_bar from_C to_C alcohol_vol sugar_gL headspace_pct air_bar", (on) => {
    const before = excessBar(on.number("pressure_bar", domains.pressureBar, "[P1] Excess pressure"));
    const fromC = on.number("from_C", domains.temperatureC, "[t1] Temperature of that pressure");
    const toC = on.number("to_C", domains.temperatureC, "[t2] Temperature wanted");
    const alcohol = on.optional(
      "alcohol_vol",
      domains.alcoholVol,
      "[A] Alcohol of the wine in the bottle",
      "Av",
    );
    const sugar = sugarOf(on);
    const headspacePct = on.optional("headspace_pct", domains.headspacePct, "[h] Headspace", "h");
    const nitrogenBar = on.optional(
      "air_bar",
      domains.nitrogenBar,
      "[N20] Nitrogen in the headspace at 20 °C; none after disgorging",
      0,
    );
    const result = shiftSteps(on, before, fromC, toC, alcohol, sugar, { headspacePct, nitrogenBar });
    return {
      result,
      unit: ABOVE,
      sources: BOTTLE_PHYSICS,
      cautions: [BOTTLE_CARE, ...temperatureCaution(fromC, toC)],
    };
  }),

  "PRESSURE.CO2": explainer("pressure_bar temperature_C alcohol_vol sugar_gL", (on) => {
    const excess = excessBar(on.number("pressure_bar", domains.pressureBar, "[P] Excess pressure"));
    const celsius = temperature(on);
    const alcohol = on.number("alcohol_vol", domains.alcoholVol, "[A] Alcohol of the wine");
    const sugar = sugarOf(on);
    const absolute = excessToAbsolute(excess);
    const result = dissolvedCo2(absolute, celsius, alcohol, sugar);
    temperatureSteps(on, celsius);
    solubilityStep(on, celsius, alcohol, sugar);
    on.step(
      "The gauge reads from the atmosphere up; with CO2 alone its pressure is",
      "p = P + Patm",
      absolute,
      "bar absolute",
    );
    on.step("Dissolved CO2", "c = p·kH", result, "g/L");
    return {
      result,
      unit: "g/L of CO2",
      sources: [SOLUBILITY, VAN_T_HOFF],
      cautions: temperatureCaution(celsius),
    };
  }),

  "PRESSURE.FROMCO2": explainer("co2_gL temperature_C alcohol_vol sugar_gL", (on) => {
    const co2 = on.number("co2_gL", domains.co2GL, "[c] Dissolved CO2");
    const celsius = temperature(on);
    const alcohol = on.number("alcohol_vol", domains.alcoholVol, "[A] Alcohol of the wine");
    const sugar = sugarOf(on);
    const absolute = pressureOfDissolved(co2, celsius, alcohol, sugar);
    const result = absoluteToExcess(absolute);
    temperatureSteps(on, celsius);
    solubilityStep(on, celsius, alcohol, sugar);
    on.step("CO2 alone that holds so much in the wine", "p = c/kH", absolute, "bar absolute");
    on.step("As a gauge reads it", "P = p − Patm", result, "bar");
    return {
      result,
      unit: ABOVE,
      sources: [SOLUBILITY, VAN_T_HOFF],
      cautions: [BOTTLE_CARE, ...temperatureCaution(celsius)],
    };
  }),

  "PRESSURE.CONVERT": explainer("value from_unit to_unit", (on) => {
    const value = on.number("value", domains.pressureValue, "[a] Pressure in the first unit");
    const [fromUnit, toUnit] = [on.raw("from_unit"), on.raw("to_unit")];
    const result = convertPressure(value, fromUnit, toUnit);
    on.said("from_unit", "Its unit", String(fromUnit));
    on.said("to_unit", "Unit wanted", String(toUnit));
    const [from, to] = [scaleOf(fromUnit, "from_unit"), scaleOf(toUnit, "to_unit")];
    scaleSteps(on, fromUnit, from, "1");
    scaleSteps(on, toUnit, to, "2");
    on.step("Above vacuum, in bar", "p = a·u1 + z1", barAboveVacuum(value, from), "bar absolute");
    on.step("In the unit wanted", "b = (p − z2)/u2", result, String(toUnit).trim());
    return { result, unit: String(toUnit).trim(), sources: [EXACT_UNITS] };
  }),
};

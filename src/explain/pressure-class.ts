/**
 * PRESSURE.CLASS: which row of the regulation was used.
 */
import { ruleSets } from "../cellar/cells";
import { dissolvedCo2, type Bottle } from "../cellar/carbonation";
import { ATMOSPHERE_BAR, DEFAULT_HEADSPACE_PCT } from "../cellar/constants";
import { domains } from "../cellar/domains";
import {
  classLow,
  classRow,
  measured,
  pressureClass,
  pressureRules,
  type PressureClass,
  type PressureMeasure,
} from "../cellar/rules/pressure-classes";
import { excessBar, excessToAbsolute, type ExcessBar } from "../cellar/units";
import { DRY, solubilityStep, temperatureSteps } from "./bottle";
import { constants } from "./constants";
import { explainer, type Notebook } from "./notebook";
import { inProse } from "./numbers";
import { shiftSteps } from "./pressure";
import { BOTTLE_PHYSICS, ofRow, SOLUBILITY } from "./sources";

const DISGORGED: Bottle = { headspacePct: DEFAULT_HEADSPACE_PCT, nitrogenBar: 0 };
const UNITS: Readonly<Record<PressureMeasure, string>> = {
  "excess bar at 20 °C": "bar at 20 °C",
  "g/L CO2": "g/L of CO2",
  "absolute atm at 10 °C": "atm absolute at 10 °C",
};

/** "at least 3.5 bar at 20 °C", "1 to 2.5 bar at 20 °C". */
function boundsText(row: PressureClass, bottleMl: number, unit: string): string {
  const low = classLow(row, bottleMl);
  const small = low === row.low ? "" : ` in bottles under ${row.smallBottle!.belowMl} mL`;
  return row.high === null ? `at least ${low} ${unit}${small}` : `${low} to ${row.high} ${unit}${small}`;
}

/** What these rules count, from the excess pressure at 20 °C. */
function measureSteps(on: Notebook, measure: PressureMeasure, at20: ExcessBar): number {
  const value = measured(measure, at20);
  if (measure === "excess bar at 20 °C") return value;
  const alcohol = on.found(
    "[A] These rules count otherwise; worked out for a dry wine of",
    constants.Av.value,
    "% vol",
  );
  on.constant(constants.Av);
  if (measure === "g/L CO2") {
    on.found("[t] At", 20, "°C");
    temperatureSteps(on, 20);
    solubilityStep(on, 20, alcohol, null);
    return on.step(
      "Dissolved CO2",
      "c = (P1 + Patm)·kH",
      dissolvedCo2(excessToAbsolute(at20), 20, alcohol, DRY),
      "g/L",
    );
  }
  on.found("[t1] Taken from", 20, "°C");
  on.found("[t2] to", 10, "°C");
  on.found("[S] with sugar of", 0, "g/L");
  on.found("[h] with a headspace of", DISGORGED.headspacePct, "% of the wine");
  on.constant(constants.h);
  on.found("[N20] and nitrogen, none after disgorging, of", DISGORGED.nitrogenBar, "bar");
  const at10 = shiftSteps(on, at20, 20, 10, alcohol, DRY, DISGORGED);
  return on.step(
    "In atmospheres above vacuum",
    "a = (P2 + Patm)/Patm",
    excessToAbsolute(at10) / ATMOSPHERE_BAR,
    "atm absolute",
  );
}

export const classes = {
  "PRESSURE.CLASS": explainer("pressure20_bar bottle_mL rules", (on) => {
    const at20 = excessBar(on.number("pressure20_bar", domains.pressureBar, "[P1] Excess pressure at 20 °C"));
    const bottle = on.optional("bottle_mL", domains.bottleMl, "Bottle size", "Vb");
    const rules = on.word("rules", ruleSets.pressure, "Whose classes", "EU");
    const result = pressureClass(at20, bottle, rules);
    const { measure, classes: rows, source } = pressureRules[rules];
    const value = measureSteps(on, measure, at20);
    const found = classRow(at20, bottle, rules);
    const unit = UNITS[measure];
    for (const row of rows) {
      const holds = row === found;
      on.say(
        `Row "${row.name}": ${boundsText(row, bottle, unit)}; the wine has ${inProse(value)}`,
        holds ? "holds" : "does not hold",
      );
      if (holds) break;
    }
    on.say(found ? "The first row that holds is the class" : "No row holds", result);
    const physics = {
      "excess bar at 20 °C": [],
      "g/L CO2": [SOLUBILITY],
      "absolute atm at 10 °C": BOTTLE_PHYSICS,
    }[measure];
    return { result, unit: "", sources: [ofRow(source), ...physics], cautions: ["Local law decides."] };
  }),
};

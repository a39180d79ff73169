/**
 * Pressure classes by rule set. The first class whose bounds hold is the class; what none holds is between classes.
 * Some rules count excess pressure, some dissolved CO2, one absolute pressure in the cold. A pressure at 20 °C is
 * carried over to those by physics, for a dry wine of 12 % vol.
 */
import { shiftPressure, solubility } from "../carbonation";
import { ATMOSPHERE_BAR, DEFAULT_HEADSPACE_PCT, USUAL } from "../constants";
import { excessBar, excessToAbsolute, invertGL, type ExcessBar } from "../units";
import { source, type ByRules, type Source } from "./source";

export type PressureMeasure = "excess bar at 20 °C" | "g/L CO2" | "absolute atm at 10 °C";

export interface PressureClass {
  readonly name: string;
  /** Whether a wine of this class is sparkling at all. */
  readonly sparkling: boolean;
  readonly low: number;
  /** null where open. */
  readonly high: number | null;
  /** In bottles below this size the low bound is smaller. */
  readonly smallBottle?: { readonly belowMl: number; readonly low: number };
}

export interface PressureRules {
  readonly measure: PressureMeasure;
  readonly classes: readonly [PressureClass, ...PressureClass[]];
  readonly source: Source;
}

const SMALL = { belowMl: 250, low: 3 };

export type PressureRuleSet = "EU" | "OIV" | "US" | "AU" | "CA-QC";

export const pressureRules: ByRules<PressureRules, PressureRuleSet> = {
  EU: {
    measure: "excess bar at 20 °C",
    classes: [
      { name: "quality sparkling wine", sparkling: true, low: 3.5, high: null, smallBottle: SMALL },
      { name: "sparkling wine", sparkling: true, low: 3, high: null },
      { name: "semi-sparkling wine", sparkling: false, low: 1, high: 2.5 },
    ],
    source: source("Reg. (EU) 1308/2013 annex VII part II", "memory"),
  },
  OIV: {
    measure: "excess bar at 20 °C",
    classes: [{ name: "sparkling wine", sparkling: true, low: 3.5, high: null, smallBottle: SMALL }],
    source: source("OIV Code of Oenological Practices I.4.4", "read"),
  },
  US: {
    measure: "g/L CO2",
    classes: [
      { name: "still wine", sparkling: false, low: 0, high: 3.92 },
      { name: "effervescent wine", sparkling: true, low: 3.92, high: null },
    ],
    source: source("27 CFR: still up to 0.392 g CO2/100 mL", "read"),
  },
  AU: {
    measure: "g/L CO2",
    classes: [{ name: "sparkling wine", sparkling: true, low: 5, high: null }],
    source: source("Australian wine standard: at least 5 g/L CO2 at 20 °C", "read"),
  },
  "CA-QC": {
    measure: "absolute atm at 10 °C",
    classes: [{ name: "sparkling wine", sparkling: true, low: 3, high: 5 }],
    source: source("Québec: 3 to 5 absolute atmospheres at 10 °C", "read"),
  },
};

export const BETWEEN_CLASSES = "between classes";

const DRY = invertGL(0);
/** g/L of CO2 for each bar above such a wine at 20 °C. */
const SOLVED_PER_BAR = solubility(20, USUAL.alcoholVol, DRY);
const DISGORGED = { headspacePct: DEFAULT_HEADSPACE_PCT, nitrogenBar: 0 };
/** What a bottle of it shows at 10 °C of its absolute pressure at 20 °C: always the same share, as only CO2 is in it. */
const COLD_SHARE =
  excessToAbsolute(shiftPressure(excessBar(0), 20, 10, USUAL.alcoholVol, DRY, DISGORGED)) / ATMOSPHERE_BAR;

/** An excess pressure at 20 °C in what a set of rules counts. */
export function measured(measure: PressureMeasure, at20: ExcessBar): number {
  switch (measure) {
    case "excess bar at 20 °C":
      return at20;
    case "g/L CO2":
      return excessToAbsolute(at20) * SOLVED_PER_BAR;
    case "absolute atm at 10 °C":
      return (excessToAbsolute(at20) * COLD_SHARE) / ATMOSPHERE_BAR;
  }
}

/** Lowest value of a class in a bottle of this size. */
export function classLow({ low, smallBottle }: PressureClass, bottleMl: number): number {
  return smallBottle && bottleMl < smallBottle.belowMl ? smallBottle.low : low;
}

/** Lowest value at which a wine is sparkling at all, in a bottle of this size. */
export function lowestSparkling(rules: PressureRuleSet, bottleMl: number): number {
  return Math.min(
    ...pressureRules[rules].classes.filter((each) => each.sparkling).map((each) => classLow(each, bottleMl)),
  );
}

export function pressureClass(at20: ExcessBar, bottleMl: number, rules: PressureRuleSet): string {
  return classRow(at20, bottleMl, rules)?.name ?? BETWEEN_CLASSES;
}

/** The first class whose bounds hold, if any. */
export function classRow(
  at20: ExcessBar,
  bottleMl: number,
  rules: PressureRuleSet,
): PressureClass | undefined {
  const { measure, classes } = pressureRules[rules];
  const value = measured(measure, at20);
  for (const each of classes)
    if (value >= classLow(each, bottleMl) && (each.high === null || value <= each.high)) return each;
  return undefined;
}

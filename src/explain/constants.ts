/**
 * The constants that workings use, by the symbol they have in equations. The values are the cellar's own; what each
 * is and where it comes from is said here for the reader.
 */
import { USUAL } from "../cellar/constants";
import * as carbonation from "../cellar/carbonation";
import * as basic from "../cellar/constants";
import { CRYOSCOPIC_CONSTANT } from "../cellar/disgorging";
import { RACK_PLACES } from "../cellar/riddling";
import type { Constant, Mark } from "./types";

type Entry = readonly [value: number, unit: string, what: string, source: string, mark: Mark];

const MASSES = "IUPAC standard atomic weights";
const SOLUBILITY = "EU/OIV relation, Commission Regulation (EEC) 2676/90 and OIV-MA-AS314";
const USUAL_SPREAD = "a careful tirage, no published source";
const spread = carbonation.DEFAULT_SPREAD;

const entries = {
  d: [
    basic.LITRES_PER_KG_SUGAR,
    "L/kg",
    "liquid displaced by dissolved sugar",
    "trade handbooks (0.625 and 0.63); 0.617 to 0.631 derived from ICUMSA",
    "read",
  ],
  inv: [basic.INVERT_PER_SUCROSE, "g/g", "glucose + fructose from sucrose", MASSES, "derived"],
  F: [
    basic.INVERT_G_PER_L_PER_VOL,
    "g/L",
    "glucose + fructose for 1 % vol",
    "OIV and EU convention",
    "memory",
  ],
  y0: [
    basic.CO2_PER_SUCROSE,
    "g/g",
    "CO2 from sucrose, all of it fermented to alcohol and CO2",
    MASSES,
    "derived",
  ],
  Y: [basic.DEFAULT_YIELD, "", "share of that CO2 really obtained", "Pasteur's balance, handbooks", "memory"],
  h: [
    basic.DEFAULT_HEADSPACE_PCT,
    "% of the wine",
    "headspace under the crown cap, 25 mL over 750 mL",
    "International Physics Olympiad 2025, theory Q3",
    "read",
  ],
  N20: [
    basic.NITROGEN_AT_20C_BAR,
    "bar",
    "nitrogen left from the air under the cap, at 20 °C",
    "air less its oxygen, which the yeast eats",
    "derived",
  ],
  Patm: [basic.ATMOSPHERE_BAR, "bar", "standard atmosphere", "by definition", "exact"],
  T0: [basic.KELVIN_AT_0C, "K", "zero of the Celsius scale", "by definition", "exact"],
  T20: [carbonation.REFERENCE_K, "K", "20 °C on the absolute scale", "by definition", "exact"],
  R: [basic.GAS_CONSTANT, "J/(mol·K)", "gas constant", "CODATA 2018, rounded to seven digits", "exact"],
  ΔH: [
    carbonation.DISSOLUTION_J_PER_MOL,
    "J/mol",
    "enthalpy of dissolution of CO2",
    "fitted to the published 0 to 25 °C table; literature 24.8 kJ/mol from memory",
    "derived",
  ],
  k20: [
    carbonation.SOLUBILITY_AT_20C,
    "g/L/bar",
    "solubility at 20 °C before alcohol and sugar are allowed for",
    SOLUBILITY,
    "read",
  ],
  e0: [carbonation.ALCOHOL_FREE, "", "share of it at no alcohol", SOLUBILITY, "read"],
  e: [carbonation.LOSS_PER_VOL, "per % vol", "share lost to alcohol", SOLUBILITY, "read"],
  z: [carbonation.LOSS_PER_GL, "per g/L", "share lost to sugar", SOLUBILITY, "read"],
  G: [carbonation.GAS_GL_K_PER_BAR, "g·K/(L·bar)", "CO2 gas, 100·M/R", `${MASSES}; gas constant`, "derived"],
  z95: [
    carbonation.NORMAL_95,
    "",
    "standard deviations on each side that hold 95 %",
    "normal distribution",
    "derived",
  ],
  σs: [spread.doseGL, "g/L", "usual standard deviation of the dose", USUAL_SPREAD, "memory"],
  σY: [spread.yieldShare, "", "usual standard deviation of the yield", USUAL_SPREAD, "memory"],
  σT: [spread.temperatureC, "°C", "usual standard deviation of the temperature", USUAL_SPREAD, "memory"],
  σh: [
    spread.headspacePct,
    "% of the wine",
    "usual standard deviation of the headspace",
    USUAL_SPREAD,
    "memory",
  ],
  ρe: [basic.ETHANOL_KG_PER_L, "kg/L", "density of alcohol at 20 °C", "OIV alcoholometric tables", "memory"],
  ρw: [basic.WATER_KG_PER_L, "kg/L", "density of water at 20 °C", "ICUMSA", "read"],
  Me: [basic.ETHANOL_G_PER_MOL, "g/mol", "molar mass of alcohol", MASSES, "derived"],
  Mh: [basic.HEXOSE_G_PER_MOL, "g/mol", "molar mass of glucose or fructose", MASSES, "derived"],
  Kf: [
    CRYOSCOPIC_CONSTANT,
    "K·kg/mol",
    "cryoscopic constant of water",
    "handbooks of physical chemistry",
    "memory",
  ],
  Vb: [basic.DEFAULT_BOTTLE_ML, "mL", "standard bottle", "common practice, no source", "practice"],
  Av: [
    USUAL.alcoholVol,
    "% vol",
    "alcohol assumed of a dry finished wine",
    "common practice, no source",
    "practice",
  ],
  R1: [RACK_PLACES, "bottles", "places in a rack, 60 a side", "published practice", "read"],
} as const satisfies Record<string, Entry>;

export type ConstantSymbol = keyof typeof entries;

export const constants: Readonly<Record<ConstantSymbol, Constant>> = Object.fromEntries(
  Object.entries<Entry>(entries).map(([symbol, [value, unit, what, text, mark]]) => [
    symbol,
    { symbol, value, unit, what, source: { text, mark } },
  ]),
) as Record<ConstantSymbol, Constant>;

/** The constant of this symbol, if it is one. */
export const constantOf = (symbol: string): Constant | undefined =>
  Object.hasOwn(constants, symbol) ? constants[symbol as ConstantSymbol] : undefined;

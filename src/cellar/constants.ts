/**
 * Physical and conversion constants, each declared once with its unit and where it comes from.
 *
 * Marks: "read" seen in the published text, "derived" worked out from read figures,
 * "memory" recalled from the literature and not seen again, "practice" common practice, no source.
 */

/** Molar mass of sucrose, g/mol (IUPAC standard atomic weights; derived). */
export const SUCROSE_G_PER_MOL = 342.297;

/** Molar mass of glucose or fructose, g/mol (IUPAC standard atomic weights; derived). */
export const HEXOSE_G_PER_MOL = 180.156;

/** Molar mass of carbon dioxide, g/mol (IUPAC standard atomic weights; derived). */
export const CO2_G_PER_MOL = 44.0095;

/** Molar mass of ethanol, g/mol (IUPAC standard atomic weights; derived). */
export const ETHANOL_G_PER_MOL = 46.069;

/** Gas constant, J/(mol·K) (CODATA 2018, exact, rounded to seven digits). */
export const GAS_CONSTANT = 8.314462;

/** Zero of the Celsius scale in kelvin (exact by definition). */
export const KELVIN_AT_0C = 273.15;

/** Standard atmosphere in bar (exact by definition). */
export const ATMOSPHERE_BAR = 1.01325;

/** g of glucose + fructose from 1 g of sucrose, 1.05263 (derived from the molar masses). */
export const INVERT_PER_SUCROSE = (2 * HEXOSE_G_PER_MOL) / SUCROSE_G_PER_MOL;

/** g/L of glucose + fructose for 1 % vol of potential alcohol (memory: the OIV and EU convention). */
export const INVERT_G_PER_L_PER_VOL = 16.83;

/** g of CO2 from 1 g of sucrose if all of it fermented to ethanol and CO2, 0.5143 (derived). */
export const CO2_PER_SUCROSE = (4 * CO2_G_PER_MOL) / SUCROSE_G_PER_MOL;

/** Share of that CO2 really obtained; the rest becomes glycerol, acids and yeast (memory: Pasteur's balance, handbooks). */
export const DEFAULT_YIELD = 0.95;

/** L of liquid displaced by 1 kg of dissolved sugar (read: 0.625 and 0.63 in the trade; 0.617 to 0.631 derived from ICUMSA). */
export const LITRES_PER_KG_SUGAR = 0.625;

/** Headspace under the crown cap as a percentage of the wine's volume: 25 mL over 750 mL (read: IPhO 2025, theory Q3). */
export const DEFAULT_HEADSPACE_PCT = 10 / 3;

/** Nitrogen left over from the air under the cap, bar at 20 °C; the yeast eats the oxygen (derived). */
export const NITROGEN_AT_20C_BAR = 0.79;

/** Density of ethanol at 20 °C, kg/L (memory: OIV alcoholometric tables). */
export const ETHANOL_KG_PER_L = 0.78924;

/** Density of water at 20 °C, kg/L (read: ICUMSA, the constant term of its density polynomial). */
export const WATER_KG_PER_L = 0.9982;

/** Standard bottle, mL (practice). */
export const DEFAULT_BOTTLE_ML = 750;

/** What is assumed where an argument is left blank (all common practice, no source). */
export const USUAL = {
  /** Alcohol of a finished wine, % vol. */
  alcoholVol: 12,
  /** Liqueur prepared beyond the need, %. */
  reservePct: 5,
  riddlingDays: 14,
  turnsPerDay: 1,
  /** From the last turn to disgorging, days. */
  riddledWaitDays: 7,
  moneyDecimals: 2,
  /** The curve of pressure against temperature, °C. */
  curve: { fromC: 0, toC: 30, stepC: 5 },
} as const;

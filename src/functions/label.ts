/**
 * LABEL functions.
 */
import { ENERGY_PER_G, energyPer100Ml, labelAlcoholVol } from "../cellar/label";
import { answer, domains, given, optional, optionalWord } from "./arguments";

const ENERGY_UNITS = Object.keys(ENERGY_PER_G) as (keyof typeof ENERGY_PER_G)[];

/**
 * Alcohol for the label, nearest whole or half unit.
 * @customfunction LABEL.ALCOHOL
 * @param alcohol_vol Alcohol of the wine, % vol (0 to 20).
 * @returns % vol
 * @equation rounded to the nearest 0.5
 * @source Delegated Regulation (EU) 2019/33 art. 44, read in its predecessor
 * @example LABEL.ALCOHOL(11.84) = 12
 */
export function labelAlcohol(alcohol_vol: number): number {
  return answer(() => labelAlcoholVol(given(domains.alcoholVol, alcohol_vol, "alcohol_vol")));
}

/**
 * Energy of 100 mL, unrounded. kJ and kcal come from separate factors.
 * @customfunction LABEL.ENERGY
 * @param alcohol_vol Alcohol of the wine, % vol (0 to 20).
 * @param sugar_gL Sugar, g/L (0 to 1000).
 * @param [acid_gL] Organic acids, g/L (0 to 30); blank = 0.
 * @param [glycerol_gL] Glycerol, g/L (0 to 1000); blank = 0.
 * @param [unit] "kJ" or "kcal"; blank = "kJ".
 * @returns kJ or kcal in 100 mL
 * @equation A·0.78924·29 + (sugar·17 + acid·13 + glycerol·10)/10 for kJ; 7, 4, 3, 2.4 for kcal
 * @source Regulation (EU) 1169/2011 annex XIV; ethanol 0.78924 kg/L (memory: OIV tables)
 * @example LABEL.ENERGY(12, 8) = 288
 */
export function labelEnergy(
  alcohol_vol: number,
  sugar_gL: number,
  acid_gL?: number,
  glycerol_gL?: number,
  unit?: string,
): number {
  return answer(() =>
    energyPer100Ml(
      given(domains.alcoholVol, alcohol_vol, "alcohol_vol"),
      given(domains.strengthGL, sugar_gL, "sugar_gL"),
      optional(domains.acidityGL, acid_gL, "acid_gL", 0),
      optional(domains.strengthGL, glycerol_gL, "glycerol_gL", 0),
      optionalWord(ENERGY_UNITS, unit, "unit", "kJ"),
    ),
  );
}

/**
 * LABEL functions.
 */
import {
  ENERGY_PER_G,
  energyPer100Ml,
  fillErrorMl,
  labelAlcoholVerdict,
  labelAlcoholVol,
} from "../cellar/label";
import { answer, domains, given, optional, optionalLabelRules, optionalWord } from "./arguments";

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

/**
 * Whether the alcohol on the label agrees with the analysis: "within tolerance" or "outside tolerance".
 * @customfunction LABEL.ALCOHOLCHECK
 * @param label_vol Alcohol on the label, % vol (0 to 20).
 * @param measured_vol Alcohol measured, % vol (0 to 20).
 * @param [rules] Whose tolerance, "EU" or "US"; blank = "EU". The US figure holds up to 14 % vol.
 * @returns the verdict in words
 * @equation |label − measured| at most the tolerance: EU 0.8 % vol for sparkling wine, US 1.5 % vol
 * @source Delegated Regulation (EU) 2019/33 art. 44, read in its predecessor; 27 CFR (secondary)
 * @refuses #N/A for US rules above 14 % vol
 * @example LABEL.ALCOHOLCHECK(12, 11.84) = "within tolerance"
 */
export function labelAlcoholCheck(label_vol: number, measured_vol: number, rules?: string): string {
  return answer(() =>
    labelAlcoholVerdict(
      given(domains.alcoholVol, label_vol, "label_vol"),
      given(domains.alcoholVol, measured_vol, "measured_vol"),
      optionalLabelRules(rules),
    ),
  );
}

/**
 * Millilitres by which one bottle of a batch may be filled below its nominal volume.
 * @customfunction LABEL.FILL
 * @param bottle_mL Nominal volume, mL (50 to 30000).
 * @returns mL
 * @equation to 50 mL 9 %, to 100 4.5 mL, to 200 4.5 %, to 300 9 mL, to 500 3 %, to 1000 15 mL, to 10000 1.5 %, to 15000 150 mL, above 1 %; percentages rounded up to 0.1 mL
 * @source Directive 76/211/EEC annex I, 2.4 (memory; the same table read: FPackV § 9); above 10000 mL OIML R 87 (memory)
 * @example LABEL.FILL(750) = 15
 */
export function labelFill(bottle_mL: number): number {
  return answer(() => fillErrorMl(given(domains.bottleMl, bottle_mL, "bottle_mL")));
}

/**
 * DISGORGING functions.
 */
import { freezingPointC, spaceMl } from "../cellar/disgorging";
import { invertGL } from "../cellar/units";
import { answer, domains, given, optional } from "./arguments";

/**
 * Estimated freezing point of the wine, °C; the neck bath must be well below it.
 * @customfunction DISGORGING.FREEZING
 * @param alcohol_vol Alcohol of the wine, % vol (0 to 20).
 * @param [sugar_gL] Glucose + fructose in the wine, g/L (0 to 1000); blank = 0.
 * @returns °C, an estimate for 8 to 15 % vol
 * @equation −1.86 × mol of ethanol and sugar per kg of water
 * @source derived, colligative; close to the trade's half of the alcohol degree below zero (common practice, no source)
 * @caution Neck baths are below -20 °C: gloves, eye protection, ventilation.
 * @example DISGORGING.FREEZING(12) = -4.4
 */
export function disgorgingFreezing(alcohol_vol: number, sugar_gL?: number): number {
  return answer(() =>
    freezingPointC(
      given(domains.alcoholVol, alcohol_vol, "alcohol_vol"),
      invertGL(optional(domains.strengthGL, sugar_gL, "sugar_gL", 0)),
    ),
  );
}

/**
 * Room in the neck after disgorging, mL, for liqueur and wine.
 * @customfunction DISGORGING.SPACE
 * @param filled_mL Wine filled at tirage, mL (0 to 30000).
 * @param lost_mL Wine lost at disgorging, mL (0 to 30000).
 * @param bottle_mL Fill wanted in the finished bottle, mL (50 to 30000).
 * @returns mL of room
 * @equation bottle − (filled − lost)
 * @source arithmetic
 * @refuses #N/A where more wine remains than the fill wanted
 * @example DISGORGING.SPACE(750, 20, 750) = 20
 */
export function disgorgingSpace(filled_mL: number, lost_mL: number, bottle_mL: number): number {
  return answer(() =>
    spaceMl(
      given(domains.partOfBottleMl, filled_mL, "filled_mL"),
      given(domains.partOfBottleMl, lost_mL, "lost_mL"),
      given(domains.bottleMl, bottle_mL, "bottle_mL"),
    ),
  );
}

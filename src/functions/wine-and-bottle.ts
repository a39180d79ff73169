/**
 * Arguments that the functions of pressure under the crown cap share.
 */
import { DEFAULT_HEADSPACE_PCT, DEFAULT_YIELD } from "../cellar/constants";
import { sucroseGL } from "../cellar/units";
import { domains, given, optional } from "./arguments";

/** The wine and the bottle, all but the dose. */
export function wineAndBottle(
  alcohol_vol: unknown,
  yieldShare: unknown,
  headspace_pct: unknown,
  dissolvedCO2_gL: unknown,
) {
  return {
    baseAlcoholVol: given(domains.baseAlcoholVol, alcohol_vol, "alcohol_vol"),
    yieldShare: optional(domains.yieldShare, yieldShare, "yield_share", DEFAULT_YIELD),
    headspacePct: optional(domains.headspacePct, headspace_pct, "headspace_pct", DEFAULT_HEADSPACE_PCT),
    dissolvedCo2GL: optional(domains.dissolvedCo2GL, dissolvedCO2_gL, "dissolvedCO2_gL", 0),
  };
}

/** A bottle as filled at tirage: the dose, the wine and the bottle. */
export function filledBottle(
  dose_gL: unknown,
  alcohol_vol: unknown,
  yieldShare: unknown,
  headspace_pct: unknown,
  dissolvedCO2_gL: unknown,
) {
  const dose = sucroseGL(given(domains.doseGL, dose_gL, "dose_gL"));
  return { dose, ...wineAndBottle(alcohol_vol, yieldShare, headspace_pct, dissolvedCO2_gL) };
}

/**
 * TIRAGE functions for readings on the lees, and the curve.
 */
import { USUAL } from "../cellar/constants";
import { pressureCurve, shareFermented, yieldFromReading } from "../cellar/calibration";
import { excessBar } from "../cellar/units";
import { answer, domains, given, optional } from "./arguments";
import { filledBottle } from "./wine-and-bottle";

/**
 * Share of the dose that has fermented so far, 0 to 1, from a pressure reading.
 * @customfunction TIRAGE.PROGRESS
 * @param reading_bar Excess pressure read, bar (-1 to 20).
 * @param temperature_C Temperature of the bottle at the reading, °C (-5 to 45).
 * @param dose_gL Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60).
 * @param alcohol_vol Alcohol of the base wine, % vol (5 to 16).
 * @param [yield_share] Share of the full CO2 really obtained (0.5 to 1); blank = 0.95.
 * @param [headspace_pct] Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.
 * @param [dissolvedCO2_gL] CO2 already in the base wine, g/L (0 to 5); blank = 0.
 * @returns share, 0 to 1
 * @equation the root x of P(x) = reading, a square equation; unfermented sugar and missing alcohol change the solubility
 * @source derived from TIRAGE.PRESSURE; solubility: Commission Regulation (EEC) 2676/90 and OIV-MA-AS314
 * @refuses #N/A where the bottle cannot show that reading
 * @caution Bottles are under pressure while they are read: face and hand protection.
 * @example TIRAGE.PROGRESS(5.25, 10, 24, 10.5) = 1.00
 */
export function tirageProgress(
  reading_bar: number,
  temperature_C: number,
  dose_gL: number,
  alcohol_vol: number,
  yield_share?: number,
  headspace_pct?: number,
  dissolvedCO2_gL?: number,
): number {
  return answer(() =>
    shareFermented(
      excessBar(given(domains.pressureBar, reading_bar, "reading_bar")),
      given(domains.temperatureC, temperature_C, "temperature_C"),
      filledBottle(dose_gL, alcohol_vol, yield_share, headspace_pct, dissolvedCO2_gL),
    ),
  );
}

/**
 * The CO2 yield that explains a reading on a finished fermentation: your own figure for the next plan.
 * @customfunction TIRAGE.YIELD
 * @param reading_bar Excess pressure read, bar (-1 to 20).
 * @param temperature_C Temperature of the bottle at the reading, °C (-5 to 45).
 * @param dose_gL Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60), more than 0.
 * @param alcohol_vol Alcohol of the base wine, % vol (5 to 16).
 * @param [headspace_pct] Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.
 * @param [dissolvedCO2_gL] CO2 already in the base wine, g/L (0 to 5); blank = 0.
 * @returns share, 0.5 to 1
 * @equation Y = (p·(kH + h·529.31/T) − c0)/(s·y0)
 * @source derived from TIRAGE.PRESSURE
 * @refuses #N/A where no yield of 0.5 to 1 explains the reading
 * @caution Bottles are under pressure while they are read: face and hand protection.
 * @example TIRAGE.YIELD(5.25, 10, 24, 10.5) = 0.950
 */
export function tirageYield(
  reading_bar: number,
  temperature_C: number,
  dose_gL: number,
  alcohol_vol: number,
  headspace_pct?: number,
  dissolvedCO2_gL?: number,
): number {
  return answer(() =>
    yieldFromReading(
      excessBar(given(domains.pressureBar, reading_bar, "reading_bar")),
      given(domains.temperatureC, temperature_C, "temperature_C"),
      filledBottle(dose_gL, alcohol_vol, null, headspace_pct, dissolvedCO2_gL),
    ),
  );
}

/**
 * Expected excess pressure against temperature, a row for each step, to chart.
 * @customfunction TIRAGE.CURVE
 * @param dose_gL Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60).
 * @param alcohol_vol Alcohol of the base wine, % vol (5 to 16).
 * @param [from_C] First temperature, °C (-5 to 45); blank = 0.
 * @param [to_C] Last temperature, °C (-5 to 45); blank = 30. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @param [step_C] Step, °C (more than 0, at most 50); blank = 5.
 * @param [yield_share] Share of the full CO2 really obtained (0.5 to 1); blank = 0.95.
 * @param [headspace_pct] Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.
 * @param [dissolvedCO2_gL] CO2 already in the base wine, g/L (0 to 5); blank = 0.
 * @returns rows of two cells: temperature °C, bar above atmospheric
 * @equation TIRAGE.PRESSURE at each temperature
 * @source solubility: Commission Regulation (EEC) 2676/90 and OIV-MA-AS314; closed bottle: IPhO 2025, theory Q3
 * @refuses #N/A where the last temperature is below the first, or more than 200 rows would be needed
 * @caution The glass maker's own rating decides, at the hottest day in storage.
 * @example TIRAGE.CURVE(24, 10.5, 10, 20, 10) = 10, 5.25; 20, 7.56
 */
export function tirageCurve(
  dose_gL: number,
  alcohol_vol: number,
  from_C?: number,
  to_C?: number,
  step_C?: number,
  yield_share?: number,
  headspace_pct?: number,
  dissolvedCO2_gL?: number,
): number[][] {
  return answer(() =>
    pressureCurve(
      filledBottle(dose_gL, alcohol_vol, yield_share, headspace_pct, dissolvedCO2_gL),
      optional(domains.temperatureC, from_C, "from_C", USUAL.curve.fromC),
      optional(domains.temperatureC, to_C, "to_C", USUAL.curve.toC),
      optional(domains.stepC, step_C, "step_C", USUAL.curve.stepC),
    ),
  );
}

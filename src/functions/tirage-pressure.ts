/**
 * TIRAGE functions of pressure.
 */
import * as carbonation from "../cellar/carbonation";
import { excessBar } from "../cellar/units";
import { answer, domains, given, optional } from "./arguments";
import { filledBottle, wineAndBottle } from "./wine-and-bottle";

/**
 * Expected excess pressure under the crown cap, bar, when the dose has fermented out. Always at a temperature.
 * @customfunction TIRAGE.PRESSURE
 * @param dose_gL Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60).
 * @param temperature_C Temperature of the bottle, °C (-5 to 45).
 * @param alcohol_vol Alcohol of the base wine, % vol (5 to 16).
 * @param [yield_share] Share of the full CO2 really obtained (0.5 to 1); blank = 0.95.
 * @param [headspace_pct] Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.
 * @param [dissolvedCO2_gL] CO2 already in the base wine, g/L (0 to 5); blank = 0.
 * @returns bar above atmospheric
 * @equation P = c/(kH + h·529.31/T) + air·T/293.15 − 1.01325
 * @source solubility: Commission Regulation (EEC) 2676/90 and OIV-MA-AS314; closed bottle: IPhO 2025, theory Q3
 * @caution A filled bottle can burst. The glass maker's own rating decides, at the hottest day in storage.
 * @example TIRAGE.PRESSURE(24, 10, 10.5) = 5.25
 */
export function tiragePressure(
  dose_gL: number,
  temperature_C: number,
  alcohol_vol: number,
  yield_share?: number,
  headspace_pct?: number,
  dissolvedCO2_gL?: number,
): number {
  return answer(() =>
    carbonation.expectedPressure(
      filledBottle(dose_gL, alcohol_vol, yield_share, headspace_pct, dissolvedCO2_gL),
      given(domains.temperatureC, temperature_C, "temperature_C"),
    ),
  );
}

/**
 * Dose, g/L as sucrose, that gives an excess pressure at a temperature: the exact inverse of TIRAGE.PRESSURE.
 * @customfunction TIRAGE.DOSE
 * @param pressure_bar Excess pressure wanted, bar (-1 to 20).
 * @param temperature_C At this temperature, °C (-5 to 45).
 * @param alcohol_vol Alcohol of the base wine, % vol (5 to 16).
 * @param [yield_share] Share of the full CO2 really obtained (0.5 to 1); blank = 0.95.
 * @param [headspace_pct] Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.
 * @param [dissolvedCO2_gL] CO2 already in the base wine, g/L (0 to 5); blank = 0.
 * @returns g/L as sucrose
 * @equation s = (p·(K·(0.86 − 0.01·A0) + h·529.31/T) − c0)/(y0·Y + 0.01·p·K·a1)
 * @source derived: TIRAGE.PRESSURE solved for the dose
 * @refuses #N/A where no dose of 0 to 60 g/L gives that pressure
 * @example TIRAGE.DOSE(6, 12, 11) = 25.2
 */
export function tirageDose(
  pressure_bar: number,
  temperature_C: number,
  alcohol_vol: number,
  yield_share?: number,
  headspace_pct?: number,
  dissolvedCO2_gL?: number,
): number {
  return answer(() =>
    carbonation.doseForPressure(
      excessBar(given(domains.pressureBar, pressure_bar, "pressure_bar")),
      given(domains.temperatureC, temperature_C, "temperature_C"),
      wineAndBottle(alcohol_vol, yield_share, headspace_pct, dissolvedCO2_gL),
    ),
  );
}

/**
 * Where 95 % of the bottles lie: lowest, expected and highest excess pressure, bar, in one row.
 * @customfunction TIRAGE.RANGE
 * @param dose_gL Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60).
 * @param temperature_C Temperature of the bottle, °C (-5 to 45).
 * @param alcohol_vol Alcohol of the base wine, % vol (5 to 16).
 * @param [doseSd_gL] Standard deviation of the dose, g/L (0 to 10); blank = 0.4. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @param [yieldSd] Standard deviation of the yield, share (0 to 0.2); blank = 0.02. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @param [temperatureSd_C] Standard deviation of the temperature, °C (0 to 10); blank = 0.5. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @param [headspaceSd_pct] Standard deviation of the headspace, % of the wine (0 to 5); blank = 0.5. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @param [yield_share] Share of the full CO2 really obtained (0.5 to 1); blank = 0.95.
 * @param [headspace_pct] Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.
 * @param [dissolvedCO2_gL] CO2 already in the base wine, g/L (0 to 5); blank = 0.
 * @returns three cells: low, expected, high, bar above atmospheric
 * @equation P ± 1.96·√(Σ(∂P/∂x·σx)²) over dose, yield, temperature and headspace
 * @source derived from TIRAGE.PRESSURE; the default deviations are from memory
 * @refuses #N/A where the spread reaches below vacuum
 * @caution One bottle in forty lies above the high value.
 * @example TIRAGE.RANGE(24, 10, 10.5) = 4.90, 5.25, 5.61
 */
export function tirageRange(
  dose_gL: number,
  temperature_C: number,
  alcohol_vol: number,
  doseSd_gL?: number,
  yieldSd?: number,
  temperatureSd_C?: number,
  headspaceSd_pct?: number,
  yield_share?: number,
  headspace_pct?: number,
  dissolvedCO2_gL?: number,
): number[][] {
  return answer(() => {
    const usual = carbonation.DEFAULT_SPREAD;
    const { low, expected, high } = carbonation.pressureRange(
      filledBottle(dose_gL, alcohol_vol, yield_share, headspace_pct, dissolvedCO2_gL),
      given(domains.temperatureC, temperature_C, "temperature_C"),
      {
        doseGL: optional(domains.doseSdGL, doseSd_gL, "doseSd_gL", usual.doseGL),
        yieldShare: optional(domains.yieldSd, yieldSd, "yieldSd", usual.yieldShare),
        temperatureC: optional(
          domains.temperatureSdC,
          temperatureSd_C,
          "temperatureSd_C",
          usual.temperatureC,
        ),
        headspacePct: optional(
          domains.headspaceSdPct,
          headspaceSd_pct,
          "headspaceSd_pct",
          usual.headspacePct,
        ),
      },
    );
    return [[low, expected, high]];
  });
}

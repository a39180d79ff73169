/**
 * PRESSURE functions.
 */
import * as carbonation from "../cellar/carbonation";
import { DEFAULT_BOTTLE_ML, DEFAULT_HEADSPACE_PCT, USUAL } from "../cellar/constants";
import { pressureAt20 } from "../cellar/gauge-table";
import { convertPressure } from "../cellar/pressure-units";
import * as classes from "../cellar/rules/pressure-classes";
import { absoluteToExcess, excessBar, excessToAbsolute, invertGL } from "../cellar/units";
import { answer, domains, given, optional, optionalPressureRules } from "./arguments";

/**
 * Excess pressure at 20 °C, bar, from a reading at another temperature, by the official method's table.
 * @customfunction PRESSURE.AT20
 * @param reading_bar Excess pressure read, bar (-1 to 20).
 * @param temperature_C Temperature of the bottle at the reading, °C (0 to 25).
 * @returns bar above atmospheric at 20 °C
 * @equation reading × table ratio, linear between whole degrees
 * @source OIV-MA-AS314-02; Regulation (EC) 1293/2005 (memory). It differs from PRESSURE.SHIFT, the physics: for 6 bar at 20 °C it is 11 % lower from 10 °C and 26 % lower from 0 °C, more at lower pressures.
 * @example PRESSURE.AT20(4.5, 10) = 6.12
 */
export function pressureAt20C(reading_bar: number, temperature_C: number): number {
  return answer(() =>
    pressureAt20(
      excessBar(given(domains.pressureBar, reading_bar, "reading_bar")),
      given(domains.gaugeTableC, temperature_C, "temperature_C"),
    ),
  );
}

/**
 * Excess pressure of the same closed bottle at another temperature, bar, by physics: the CO2 in it stays.
 * @customfunction PRESSURE.SHIFT
 * @param pressure_bar Excess pressure, bar (-1 to 20).
 * @param from_C Temperature of that pressure, °C (-5 to 45).
 * @param to_C Temperature wanted, °C (-5 to 45).
 * @param [alcohol_vol] Alcohol of the wine in the bottle, % vol (0 to 20); blank = 12. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @param [sugar_gL] Glucose + fructose in the bottle, g/L (0 to 300); blank = 0.
 * @param [headspace_pct] Headspace, % of the wine's volume (0.5 to 20); blank = 3.333.
 * @param [air_bar] Nitrogen in the headspace at 20 °C, bar (0 to 2); blank = 0, as after disgorging. Under a crown cap about 0.79.
 * @returns bar above atmospheric
 * @equation c = p·(kH + h·529.31/T) kept from one temperature to the other
 * @source solubility: Commission Regulation (EEC) 2676/90 and OIV-MA-AS314; closed bottle: IPhO 2025, theory Q3
 * @refuses #N/A where the pressure given is below the nitrogen's own
 * @caution The hottest day in storage decides whether a bottle holds; the glass maker's own rating is the limit.
 * @example PRESSURE.SHIFT(6, 12, 12) = 6
 */
export function pressureShift(
  pressure_bar: number,
  from_C: number,
  to_C: number,
  alcohol_vol?: number,
  sugar_gL?: number,
  headspace_pct?: number,
  air_bar?: number,
): number {
  return answer(() =>
    carbonation.shiftPressure(
      excessBar(given(domains.pressureBar, pressure_bar, "pressure_bar")),
      given(domains.temperatureC, from_C, "from_C"),
      given(domains.temperatureC, to_C, "to_C"),
      optional(domains.alcoholVol, alcohol_vol, "alcohol_vol", USUAL.alcoholVol),
      invertGL(optional(domains.wineSugarGL, sugar_gL, "sugar_gL", 0)),
      {
        headspacePct: optional(domains.headspacePct, headspace_pct, "headspace_pct", DEFAULT_HEADSPACE_PCT),
        nitrogenBar: optional(domains.nitrogenBar, air_bar, "air_bar", 0),
      },
    ),
  );
}

/**
 * Dissolved CO2, g/L, at equilibrium with an excess pressure of CO2 alone.
 * @customfunction PRESSURE.CO2
 * @param pressure_bar Excess pressure, bar (-1 to 20).
 * @param temperature_C Temperature of the wine, °C (-5 to 45).
 * @param alcohol_vol Alcohol of the wine, % vol (0 to 20).
 * @param [sugar_gL] Glucose + fructose in the wine, g/L (0 to 300); blank = 0.
 * @returns g/L of CO2
 * @equation c = (P + 1.01325)·kH(T, A, S)
 * @source Commission Regulation (EEC) 2676/90, annex ch. 37, and OIV-MA-AS314 at 20 °C; van 't Hoff elsewhere
 * @example PRESSURE.CO2(5, 20, 12) = 8.68
 */
export function pressureCo2(
  pressure_bar: number,
  temperature_C: number,
  alcohol_vol: number,
  sugar_gL?: number,
): number {
  return answer(() =>
    carbonation.dissolvedCo2(
      excessToAbsolute(excessBar(given(domains.pressureBar, pressure_bar, "pressure_bar"))),
      given(domains.temperatureC, temperature_C, "temperature_C"),
      given(domains.alcoholVol, alcohol_vol, "alcohol_vol"),
      invertGL(optional(domains.wineSugarGL, sugar_gL, "sugar_gL", 0)),
    ),
  );
}

/**
 * Excess pressure, bar, of CO2 alone at equilibrium with this much dissolved: the inverse of PRESSURE.CO2.
 * @customfunction PRESSURE.FROMCO2
 * @param co2_gL Dissolved CO2, g/L (0 to 20).
 * @param temperature_C Temperature of the wine, °C (-5 to 45).
 * @param alcohol_vol Alcohol of the wine, % vol (0 to 20).
 * @param [sugar_gL] Glucose + fructose in the wine, g/L (0 to 300); blank = 0.
 * @returns bar above atmospheric; negative where the CO2 alone makes less than the atmosphere
 * @equation P = c/kH(T, A, S) − 1.01325
 * @source Commission Regulation (EEC) 2676/90, annex ch. 37, and OIV-MA-AS314 at 20 °C; van 't Hoff elsewhere
 * @caution The hottest day in storage decides whether a bottle holds; the glass maker's own rating is the limit.
 * @example PRESSURE.FROMCO2(11.5, 20, 12) = 6.95
 */
export function pressureFromCo2(
  co2_gL: number,
  temperature_C: number,
  alcohol_vol: number,
  sugar_gL?: number,
): number {
  return answer(() =>
    absoluteToExcess(
      carbonation.pressureOfDissolved(
        given(domains.co2GL, co2_gL, "co2_gL"),
        given(domains.temperatureC, temperature_C, "temperature_C"),
        given(domains.alcoholVol, alcohol_vol, "alcohol_vol"),
        invertGL(optional(domains.wineSugarGL, sugar_gL, "sugar_gL", 0)),
      ),
    ),
  );
}

/**
 * A pressure in another unit or on the other scale. Units bar, kPa, atm, psi, kgf/cm2; with " abs" after it, absolute.
 * @customfunction PRESSURE.CONVERT
 * @param value Pressure in the first unit (-1000000 to 1000000), not below vacuum.
 * @param from_unit Its unit: bar, kPa, atm, psi or kgf/cm2; "bar abs" for absolute.
 * @param to_unit Unit wanted, in the same words.
 * @returns the pressure in the unit wanted
 * @equation gauge = absolute − 1.01325 bar
 * @source SI brochure; standard atmosphere, pound and gravity exact by definition
 * @refuses #N/A below vacuum; #VALUE! with the known units where a unit is not known
 * @example PRESSURE.CONVERT(6, "bar", "psi") = 87.02
 */
export function pressureConvert(value: number, from_unit: string, to_unit: string): number {
  return answer(() => convertPressure(given(domains.pressureValue, value, "value"), from_unit, to_unit));
}

/**
 * The regulated class of an excess pressure at 20 °C, or "between classes".
 * @customfunction PRESSURE.CLASS
 * @param pressure20_bar Excess pressure at 20 °C, bar (-1 to 20).
 * @param [bottle_mL] Bottle size, mL (50 to 30000); blank = 750.
 * @param [rules] Whose classes: EU, OIV, US, AU or CA-QC; blank = "EU". US, AU and CA-QC count CO2 or absolute pressure, worked out for a dry wine of 12 % vol.
 * @returns the class in words
 * @equation the first class whose bounds hold
 * @source Regulation (EU) 1308/2013 annex VII part II; OIV Code I.4.4; 27 CFR; Australian and Québec rules
 * @example PRESSURE.CLASS(5) = "quality sparkling wine"
 */
export function pressureClass(pressure20_bar: number, bottle_mL?: number, rules?: string): string {
  return answer(() =>
    classes.pressureClass(
      excessBar(given(domains.pressureBar, pressure20_bar, "pressure20_bar")),
      optional(domains.bottleMl, bottle_mL, "bottle_mL", DEFAULT_BOTTLE_ML),
      optionalPressureRules(rules),
    ),
  );
}

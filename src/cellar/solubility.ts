/**
 * Solubility of CO2 in wine.
 *
 * At 20 °C: Commission Regulation (EEC) 2676/90, annex ch. 37, and OIV-MA-AS314 (read in parallel EU language
 * copies, exponent derived from the unit). Other temperatures: van 't Hoff with an enthalpy fitted to the published
 * 0 to 25 °C table for 12.5 % vol and 10 g/L (derived). It is an interpolation, usable from −2 to 40 °C, to be taken
 * with care beyond 0 to 30 °C.
 */
import { GAS_CONSTANT } from "./constants";
import { absoluteBar, kelvin, type AbsoluteBar, type InvertGL } from "./units";

/** g/L of CO2 per bar at 20 °C by the EU/OIV relation, before its factors for alcohol and sugar; water takes 0.86 of it. */
export const SOLUBILITY_AT_20C = 1.951;
/** Enthalpy of dissolution, J/mol (derived; literature 24.8 kJ/mol, memory: Liger-Belair 2005). */
export const DISSOLUTION_J_PER_MOL = 24_700;
/** Loss of solubility for each % vol of alcohol, and for each g/L of sugar (EU/OIV relation). */
export const ALCOHOL_FREE = 0.86;
export const LOSS_PER_VOL = 0.01;
export const LOSS_PER_GL = 0.00144;

export const REFERENCE_K = kelvin(20);
/** Where the enthalpy was fitted, and some degrees beyond, °C. */
export const SOLUBILITY_SURE_C = { min: 0, max: 30 } as const;

/** Solubility at this temperature, g/L per bar, before alcohol and sugar are allowed for. */
export function temperatureFactor(temperatureC: number): number {
  return (
    SOLUBILITY_AT_20C *
    Math.exp((DISSOLUTION_J_PER_MOL / GAS_CONSTANT) * (1 / kelvin(temperatureC) - 1 / REFERENCE_K))
  );
}

/** Solubility of CO2 in wine, g/L per bar of CO2 above it. */
export function solubility(temperatureC: number, alcoholVol: number, sugar: InvertGL): number {
  return temperatureFactor(temperatureC) * leftByAlcohol(alcoholVol) * leftBySugar(sugar);
}

/** The share of the solubility that water and alcohol leave, and that which sugar leaves of it. */
export const leftByAlcohol = (alcoholVol: number) => ALCOHOL_FREE - LOSS_PER_VOL * alcoholVol;
export const leftBySugar = (sugar: InvertGL) => 1 - LOSS_PER_GL * sugar;

/** Dissolved CO2, g/L, at equilibrium with CO2 alone above the wine. */
export function dissolvedCo2(
  pressure: AbsoluteBar,
  temperatureC: number,
  alcoholVol: number,
  sugar: InvertGL,
): number {
  return pressure * solubility(temperatureC, alcoholVol, sugar);
}

/** The pressure of CO2 at equilibrium with this much dissolved in the wine. */
export function pressureOfDissolved(
  co2GL: number,
  temperatureC: number,
  alcoholVol: number,
  sugar: InvertGL,
): AbsoluteBar {
  return absoluteBar(co2GL / solubility(temperatureC, alcoholVol, sugar));
}

/**
 * SUGAR functions.
 */
import { brixFromStrength, strengthFromBrix, sucroseDensity } from "../cellar/sugar";
import { invertGL, invertToSucrose, sucroseGL, sucroseToInvert } from "../cellar/units";
import { answer, domains, given } from "./arguments";

/**
 * The glucose + fructose that weighed sucrose becomes: grams, or g/L.
 * @customfunction SUGAR.INVERT
 * @param grams Sucrose, g or g/L (0 to 1000000000000).
 * @returns g, or g/L, of glucose + fructose
 * @equation sucrose × 360.312/342.297
 * @source derived from the molar masses; 1.0526 read in an 1898 liqueur handbook
 * @example SUGAR.INVERT(12) = 12.63
 */
export function sugarInvert(grams: number): number {
  return answer(() => sucroseToInvert(sucroseGL(given(domains.massGram, grams, "grams"))));
}

/**
 * The sucrose that makes this much glucose + fructose: grams, or g/L.
 * @customfunction SUGAR.SUCROSE
 * @param grams Glucose + fructose, g or g/L (0 to 1000000000000).
 * @returns g, or g/L, of sucrose
 * @equation glucose + fructose × 342.297/360.312
 * @source derived from the molar masses; 1.0526 read in an 1898 liqueur handbook
 * @example SUGAR.SUCROSE(12) = 11.40
 */
export function sugarSucrose(grams: number): number {
  return answer(() => invertToSucrose(invertGL(given(domains.massGram, grams, "grams"))));
}

/**
 * Strength of a sucrose solution, g/L at 20 °C, from its °Brix. Not for must, whose extract is not all sugar.
 * @customfunction SUGAR.STRENGTH
 * @param brix g of sucrose in 100 g of solution, °Brix (0 to 85).
 * @returns g/L as sucrose
 * @equation w·ρ(w), w = °Brix/100
 * @source ICUMSA density of sucrose solutions at 20 °C
 * @example SUGAR.STRENGTH(65) = 855.8
 */
export function sugarStrength(brix: number): number {
  return answer(() => strengthFromBrix(given(domains.brix, brix, "brix")));
}

/**
 * °Brix of a sucrose solution from its strength at 20 °C: the inverse of SUGAR.STRENGTH.
 * @customfunction SUGAR.BRIX
 * @param strength_gL Strength, g/L as sucrose (0 to 1000); a solution of 85 °Brix has about 1232.
 * @returns °Brix
 * @equation the root w of w·ρ(w) = strength
 * @source ICUMSA density of sucrose solutions at 20 °C
 * @example SUGAR.BRIX(470.6) = 40.0
 */
export function sugarBrix(strength_gL: number): number {
  return answer(() => brixFromStrength(sucroseGL(given(domains.strengthGL, strength_gL, "strength_gL"))));
}

/**
 * Density of a sucrose solution at 20 °C, kg/m³. Not for must, whose extract is not all sugar.
 * @customfunction SUGAR.DENSITY
 * @param brix g of sucrose in 100 g of solution, °Brix (0 to 85).
 * @returns kg/m³
 * @equation ρ = 998.20 + 385.1761w + 135.3705w² + 40.9299w³ − 3.9643w⁴ + 13.4853w⁵ − 17.2890w⁶
 * @source ICUMSA density of sucrose solutions at 20 °C
 * @example SUGAR.DENSITY(40) = 1176.5
 */
export function sugarDensity(brix: number): number {
  return answer(() => sucroseDensity(given(domains.brix, brix, "brix")));
}

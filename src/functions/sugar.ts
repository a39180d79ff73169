/**
 * SUGAR functions.
 */
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

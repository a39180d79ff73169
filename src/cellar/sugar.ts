/**
 * Sugar solutions at 20 °C: density and strength of sucrose in water (ICUMSA polynomial), and the liqueurs
 * made from dry sugar and a carrier.
 */
import { LITRES_PER_KG_SUGAR } from "./constants";
import { domains } from "./domains";
import { besideSugarMl } from "./fermentation";
import { unanswerable, wordNumber } from "./refusal";
import { bisect } from "./root";
import { sucroseGL, type SucroseGL } from "./units";

/** ICUMSA density of pure sucrose solutions at 20 °C, kg/m³: coefficients of the powers of the mass fraction (read). */
export const DENSITY_COEFFICIENTS = [998.2, 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289] as const;
const [c0, c1, c2, c3, c4, c5, c6] = DENSITY_COEFFICIENTS;

/** Density of a sucrose solution at 20 °C, kg/m³, from its °Brix (g of sucrose in 100 g). */
export function sucroseDensity(brix: number): number {
  const w = brix / 100;
  return c0 + w * (c1 + w * (c2 + w * (c3 + w * (c4 + w * (c5 + w * c6)))));
}

/** Strength, g of sucrose in a litre at 20 °C, from °Brix. */
export function strengthFromBrix(brix: number): SucroseGL {
  return sucroseGL((brix / 100) * sucroseDensity(brix));
}

/** °Brix of a sucrose solution of this strength; the strength rises with °Brix, so the root is single. */
export function brixFromStrength(strength: SucroseGL): number {
  const { min, max } = domains.brix;
  const strongest = strengthFromBrix(max);
  if (strength > strongest) {
    throw unanswerable(
      "strength_gL",
      strength,
      `a sucrose solution of ${max} °Brix has ${strongest.toFixed(0)} g/L; give no more`,
    );
  }
  return bisect((brix) => strengthFromBrix(brix) - strength, min, max);
}

export interface LiqueurRecipe {
  readonly sugarKg: number;
  readonly carrierL: number;
}

/**
 * Dry sugar and carrier for a volume of liqueur: m = V(L − c)/(1000 − c·d), carrier V − m·d.
 * Both strengths on the sucrose basis.
 */
export function liqueurRecipe(liqueurL: number, strength: SucroseGL, carrier: SucroseGL): LiqueurRecipe {
  if (strength < carrier) {
    throw unanswerable(
      "strength_gL",
      strength,
      `the carrier alone has ${wordNumber(carrier)} g/L; give a strength of at least that`,
    );
  }
  const sugarKg = (liqueurL * (strength - carrier)) / besideSugarMl(carrier);
  return { sugarKg, carrierL: liqueurL - sugarKg * LITRES_PER_KG_SUGAR };
}

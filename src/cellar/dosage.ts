/**
 * Dosage: what is added after disgorging. All strengths of one call on one basis, sucrose or
 * glucose + fructose; the mixing is the same.
 */
import type { Domain } from "./domains";
import { Refusal, unanswerable, wordNumber } from "./refusal";
import { ML_PER_LITRE } from "./units";
import { wholeDown } from "./whole";

/** mL of liqueur in a bottle for the sweetness wanted: Vb·(St − Sw)/(L − Sw). */
export function dosageMl(bottleMl: number, wineGL: number, targetGL: number, liqueurGL: number): number {
  if (targetGL < wineGL) {
    throw unanswerable(
      "target_gL",
      targetGL,
      `the wine already holds ${wordNumber(wineGL)} g/L; give a target of at least that`,
    );
  }
  if (targetGL === wineGL) return 0;
  if (liqueurGL < targetGL) {
    throw unanswerable(
      "liqueur_gL",
      liqueurGL,
      `the liqueur must hold at least the ${wordNumber(targetGL)} g/L wanted`,
    );
  }
  return (bottleMl * (targetGL - wineGL)) / (liqueurGL - wineGL);
}

/** The same, refused where the liqueur does not fit in the room left after disgorging. */
export function dosageMlWithin(
  bottleMl: number,
  wineGL: number,
  targetGL: number,
  liqueurGL: number,
  spaceMl: number,
): number {
  const volume = dosageMl(bottleMl, wineGL, targetGL, liqueurGL);
  if (volume > spaceMl) {
    throw unanswerable(
      "space_mL",
      spaceMl,
      `the dosage takes ${volume.toFixed(1)} mL; use a stronger liqueur, a lower target or lose more at disgorging`,
    );
  }
  return volume;
}

/** The tail of a float must not decide between two sweetness terms, so what is reached is kept to a millionth of a mg/L. */
const KEPT_PER_GL = 1e9;

/** g/L reached by a volume of liqueur: ((Vb − v)·Sw + v·L)/Vb. */
export function dosedSugarGL(bottleMl: number, wineGL: number, liqueurMl: number, liqueurGL: number): number {
  return Math.round(mixed(bottleMl, wineGL, liqueurMl, liqueurGL) * KEPT_PER_GL) / KEPT_PER_GL;
}

/** % vol after dosage, by volume. */
export function dosedAlcoholVol(
  bottleMl: number,
  wineVol: number,
  liqueurMl: number,
  liqueurVol: number,
): number {
  return mixed(bottleMl, wineVol, liqueurMl, liqueurVol);
}

function mixed(bottleMl: number, wine: number, liqueurMl: number, liqueur: number): number {
  if (liqueurMl > bottleMl) {
    throw unanswerable(
      "liqueur_mL",
      liqueurMl,
      `the bottle holds ${wordNumber(bottleMl)} mL; give no more than that`,
    );
  }
  return ((bottleMl - liqueurMl) * wine + liqueurMl * liqueur) / bottleMl;
}

/** mL of wine to fill what room the liqueur leaves. */
export function topUpMl(spaceMl: number, liqueurMl: number): number {
  if (liqueurMl > spaceMl) {
    throw unanswerable(
      "liqueur_mL",
      liqueurMl,
      `there is room for ${wordNumber(spaceMl)} mL; give no more than that`,
    );
  }
  return spaceMl - liqueurMl;
}

/** L of liqueur to prepare for the batch, with a reserve. */
export function batchLiqueurL(bottles: number, liqueurMl: number, reservePct: number): number {
  return ((bottles * liqueurMl) / ML_PER_LITRE) * (1 + reservePct / 100);
}

/** The glass in which a dosage is tried, mL, wine and liqueur together. */
export const GLASS_ML = 100;
export const glassVolume: Domain = { what: "volume of the glass", unit: "mL", min: 10, max: 1000 };

/** One line of a bench trial: liqueur for the bottle and for the glass, or why there is none. */
export type TrialRow =
  | { readonly reason: undefined; readonly bottleMl: number; readonly glassMl: number }
  | { readonly reason: string; readonly bottleMl: undefined; readonly glassMl: undefined };

export function trialRow(bottleMl: number, wineGL: number, targetGL: number, liqueurGL: number): TrialRow {
  try {
    const volume = dosageMl(bottleMl, wineGL, targetGL, liqueurGL);
    return { reason: undefined, bottleMl: volume, glassMl: (volume * GLASS_ML) / bottleMl };
  } catch (refusal) {
    if (refusal instanceof Refusal)
      return { reason: refusal.message, bottleMl: undefined, glassMl: undefined };
    throw refusal;
  }
}

/** Share of the stronger of two wines or liqueurs, 0 to 1, that gives the strength wanted: (T − a)/(b − a). */
export function shareOfStronger(weakerGL: number, strongerGL: number, targetGL: number): number {
  if (strongerGL <= weakerGL) {
    throw unanswerable("stronger_gL", strongerGL, `give more than the weaker, ${wordNumber(weakerGL)} g/L`);
  }
  if (targetGL < weakerGL || targetGL > strongerGL) {
    throw unanswerable(
      "target_gL",
      targetGL,
      `give ${wordNumber(weakerGL)} to ${wordNumber(strongerGL)} g/L, between the two`,
    );
  }
  return (targetGL - weakerGL) / (strongerGL - weakerGL);
}

/** Whole bottles that a limited stock can dose. */
export function bottlesFromStock(
  stockL: number,
  bottleMl: number,
  wineGL: number,
  targetGL: number,
  liqueurGL: number,
): number {
  const each = dosageMl(bottleMl, wineGL, targetGL, liqueurGL);
  if (each === 0) {
    throw unanswerable("target_gL", targetGL, "no liqueur is needed, so the stock sets no limit");
  }
  const bottles = wholeDown((stockL * ML_PER_LITRE) / each);
  if (bottles === Infinity) {
    throw unanswerable("target_gL", targetGL, "a bottle takes next to nothing; give a higher target");
  }
  return bottles;
}

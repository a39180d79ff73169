/**
 * Filling for the second fermentation: sugar, liqueur, volumes and bottles. The dose is the fermentable sugar
 * in the filled bottle, g/L as sucrose, and includes what the wine still holds.
 */
import { LITRES_PER_KG_SUGAR } from "./constants";
import { besideSugarMl, missingSugar } from "./fermentation";
import { unanswerable, wordNumber } from "./refusal";
import { LITRES_PER_HL, ML_PER_LITRE, type InvertGL, type SucroseGL } from "./units";
import { wholeDown } from "./whole";

/** kg of sucrose to dissolve in the wine: V0·(s − S0)/(1000 − s·d), the sugar's own volume counted. */
export function tirageSugarKg(volumeHl: number, dose: SucroseGL, wineSugar: InvertGL): number {
  return (volumeHl * LITRES_PER_HL * missingSugar(dose, wineSugar)) / besideSugarMl(dose);
}

/** L of tirage liqueur to mix in: V0·(s − S0)/(L − s). */
export function tirageLiqueurL(
  volumeHl: number,
  dose: SucroseGL,
  liqueur: SucroseGL,
  wineSugar: InvertGL,
): number {
  const missing = missingSugar(dose, wineSugar);
  if (missing === 0) return 0;
  if (liqueur <= dose) {
    throw unanswerable(
      "liqueur_gL",
      liqueur,
      `the liqueur must be stronger than the dose of ${wordNumber(dose)} g/L`,
    );
  }
  return (volumeHl * LITRES_PER_HL * missing) / (liqueur - dose);
}

/** How the sugar comes: weighed dry, or as a liqueur of this strength. */
export type SugarForm = "dry" | SucroseGL;

/**
 * hL to put in bottles. The starter is counted as wine of the same sugar, so that the dose holds for the whole.
 */
export function tirageVolumeHl(
  volumeHl: number,
  dose: SucroseGL,
  form: SugarForm,
  wineSugar: InvertGL,
  starterL: number,
): number {
  const wineHl = volumeHl + starterL / LITRES_PER_HL;
  const addedL =
    form === "dry"
      ? tirageSugarKg(wineHl, dose, wineSugar) * LITRES_PER_KG_SUGAR
      : tirageLiqueurL(wineHl, dose, form, wineSugar);
  return wineHl + addedL / LITRES_PER_HL;
}

/** Whole bottles filled; a rest that does not fill a bottle is not one. */
export function bottlesFilled(volumeHl: number, bottleMl: number, lossPct: number): number {
  return wholeDown((volumeHl * LITRES_PER_HL * ML_PER_LITRE * (1 - lossPct / 100)) / bottleMl);
}

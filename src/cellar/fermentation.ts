/**
 * The second fermentation: alcohol and CO2 made from the dose.
 */
import { CO2_PER_SUCROSE, INVERT_G_PER_L_PER_VOL, LITRES_PER_KG_SUGAR } from "./constants";
import { unanswerable, wordNumber } from "./refusal";
import { LITRES_PER_HL, invertToSucrose, sucroseToInvert, type InvertGL, type SucroseGL } from "./units";

/** mL of a litre that its sugar leaves for the rest: 1000 − s·d. */
export function besideSugarMl(strength: SucroseGL): number {
  return 1000 - strength * LITRES_PER_KG_SUGAR;
}

/**
 * Share of the filled bottle that is base wine once the sugar that was missing has been dissolved in it:
 * (1000 − s·d)/(1000 − S0·d), both as g/L sucrose.
 */
export function wineShare(dose: SucroseGL, wineSugar: SucroseGL): number {
  return besideSugarMl(dose) / besideSugarMl(wineSugar);
}

/** g/L of sucrose to add to reach the dose; refused where the wine's own sugar is already more. */
export function missingSugar(dose: SucroseGL, wineSugar: InvertGL): number {
  const present = invertToSucrose(wineSugar);
  if (dose < present) {
    throw unanswerable(
      "dose_gL",
      dose,
      `the wine's own sugar already makes ${present.toFixed(2)} g/L as sucrose; give a dose of at least that`,
    );
  }
  return dose - present;
}

/** % vol that this much sugar makes when it ferments. */
export function alcoholFromSugar(sugar: InvertGL): number {
  return sugar / INVERT_G_PER_L_PER_VOL;
}

/** % vol after the second fermentation, with the dilution by the added sugar's own volume. */
export function alcoholAfter(baseAlcoholVol: number, dose: SucroseGL, wineSugar: InvertGL): number {
  missingSugar(dose, wineSugar);
  return (
    baseAlcoholVol * wineShare(dose, invertToSucrose(wineSugar)) + alcoholFromSugar(sucroseToInvert(dose))
  );
}

/** g of CO2 in a litre of wine from the dose. */
export function co2FromDose(dose: SucroseGL, yieldShare: number): number {
  return dose * CO2_PER_SUCROSE * yieldShare;
}

/** L of yeast starter so that wine and starter together hold the target: V0·t/(n − t). */
export function starterVolumeL(
  volumeHl: number,
  targetMillionCells: number,
  starterMillionCells: number,
): number {
  if (starterMillionCells <= targetMillionCells) {
    throw unanswerable(
      "starter_Mcells_mL",
      starterMillionCells,
      `the starter must hold more than the ${wordNumber(targetMillionCells)} million cells/mL wanted in the wine`,
    );
  }
  return (volumeHl * LITRES_PER_HL * targetMillionCells) / (starterMillionCells - targetMillionCells);
}

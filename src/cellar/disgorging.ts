/**
 * Disgorging: room left in the neck, and how cold the neck bath must be.
 */
import {
  ETHANOL_G_PER_MOL,
  ETHANOL_KG_PER_L,
  HEXOSE_G_PER_MOL,
  LITRES_PER_KG_SUGAR,
  WATER_KG_PER_L,
} from "./constants";
import { unanswerable, wordNumber } from "./refusal";
import { ML_PER_LITRE, type InvertGL } from "./units";

/** mL of room once the sediment is out: fill wanted − (filled at tirage − lost at disgorging). */
export function spaceMl(filledMl: number, lostMl: number, bottleMl: number): number {
  if (lostMl > filledMl) {
    throw unanswerable(
      "lost_mL",
      lostMl,
      `only ${wordNumber(filledMl)} mL were filled; give no more than that`,
    );
  }
  const space = bottleMl - (filledMl - lostMl);
  if (space < 0) {
    throw unanswerable(
      "filled_mL",
      filledMl,
      `after disgorging ${wordNumber(filledMl - lostMl)} mL remain, more than the ${wordNumber(bottleMl)} mL wanted; fill less at tirage or lose more`,
    );
  }
  return space;
}

/** Cryoscopic constant of water, K·kg/mol (memory: handbooks of physical chemistry). */
export const CRYOSCOPIC_CONSTANT = 1.86;

/** Alcohol for which the estimate is good, % vol. */
export const FREEZING_SURE_VOL = { min: 8, max: 15 } as const;

/**
 * Estimated freezing point of wine, °C: −1.86 · mol of ethanol and sugars per kg of water (colligative; derived).
 * An estimate for 8 to 15 % vol; close to the trade's "half the alcohol degree below zero" (practice).
 */
export function freezingPointC(alcoholVol: number, sugar: InvertGL): number {
  const { ethanolMol, sugarMol, waterKg } = litreOfWine(alcoholVol, sugar);
  return (-CRYOSCOPIC_CONSTANT * (ethanolMol + sugarMol)) / waterKg;
}

/** What a litre of wine holds that bears on its freezing: mol of ethanol and sugar, kg of water. */
export function litreOfWine(
  alcoholVol: number,
  sugar: InvertGL,
): { readonly ethanolMol: number; readonly sugarMol: number; readonly waterKg: number } {
  const ethanolMl = alcoholVol * 10;
  return {
    ethanolMol: (ethanolMl * ETHANOL_KG_PER_L) / ETHANOL_G_PER_MOL,
    sugarMol: sugar / HEXOSE_G_PER_MOL,
    waterKg: ((ML_PER_LITRE - ethanolMl - sugar * LITRES_PER_KG_SUGAR) * WATER_KG_PER_L) / ML_PER_LITRE,
  };
}

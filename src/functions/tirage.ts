/**
 * TIRAGE functions of mass, volume and alcohol. Each is a thin adapter: the doc comment is its only description, the arithmetic is in
 * src/cellar.
 */
import { DEFAULT_BOTTLE_ML } from "../cellar/constants";
import * as fermentation from "../cellar/fermentation";
import * as tirage from "../cellar/tirage";
import { invertGL, sucroseGL } from "../cellar/units";
import { answer, domains, given, optional } from "./arguments";

/**
 * Kilograms of sucrose to weigh and dissolve in the base wine for the dose wanted; the sugar's own volume is accounted for.
 * @customfunction TIRAGE.SUGAR
 * @param volume_hL Base wine in the tank, hL (more than 0, at most 100000).
 * @param dose_gL Fermentable sugar wanted in the filled bottle, g/L as sucrose (0 to 60).
 * @param [wineSugar_gL] Glucose + fructose already in the wine, g/L (0 to 1000); blank = 0.
 * @returns kg of sucrose
 * @equation m = V0·(s − S0)/(1000 − s·d), S0 as sucrose, d = 0.625 L/kg
 * @source derived mass balance; d read in trade handbooks and derived from ICUMSA
 * @refuses #N/A where the wine's own sugar is already more than the dose
 * @example TIRAGE.SUGAR(50, 24) = 121.83
 */
export function tirageSugar(volume_hL: number, dose_gL: number, wineSugar_gL?: number): number {
  return answer(() =>
    tirage.tirageSugarKg(
      given(domains.volumeHl, volume_hL, "volume_hL"),
      sucroseGL(given(domains.doseGL, dose_gL, "dose_gL")),
      invertGL(optional(domains.strengthGL, wineSugar_gL, "wineSugar_gL", 0)),
    ),
  );
}

/**
 * Litres of tirage liqueur (sugar dissolved in wine) to mix into the base wine for the dose wanted.
 * @customfunction TIRAGE.LIQUEUR
 * @param volume_hL Base wine in the tank, hL (more than 0, at most 100000).
 * @param dose_gL Fermentable sugar wanted in the filled bottle, g/L as sucrose (0 to 60).
 * @param liqueur_gL Strength of the liqueur, g/L as sucrose (0 to 1000), more than the dose.
 * @param [wineSugar_gL] Glucose + fructose already in the wine, g/L (0 to 1000); blank = 0.
 * @returns L of liqueur
 * @equation v = V0·(s − S0)/(L − s), S0 as sucrose
 * @source derived mass balance
 * @refuses #N/A where the liqueur is no stronger than the dose, or the wine's own sugar is already more
 * @example TIRAGE.LIQUEUR(10, 24, 500) = 50.420
 */
export function tirageLiqueur(
  volume_hL: number,
  dose_gL: number,
  liqueur_gL: number,
  wineSugar_gL?: number,
): number {
  return answer(() =>
    tirage.tirageLiqueurL(
      given(domains.volumeHl, volume_hL, "volume_hL"),
      sucroseGL(given(domains.doseGL, dose_gL, "dose_gL")),
      sucroseGL(given(domains.strengthGL, liqueur_gL, "liqueur_gL")),
      invertGL(optional(domains.strengthGL, wineSugar_gL, "wineSugar_gL", 0)),
    ),
  );
}

/**
 * Hectolitres to put in bottles: base wine, sugar or liqueur, and yeast starter. The starter is counted as wine of the same sugar.
 * @customfunction TIRAGE.VOLUME
 * @param volume_hL Base wine in the tank, hL (more than 0, at most 100000).
 * @param dose_gL Fermentable sugar wanted in the filled bottle, g/L as sucrose (0 to 60).
 * @param [liqueur_gL] Strength of the tirage liqueur, g/L as sucrose (0 to 1000); blank = dry sugar.
 * @param [wineSugar_gL] Glucose + fructose already in the wine, g/L (0 to 1000); blank = 0.
 * @param [starter_L] Yeast starter, L (0 to 10000000); blank = 0.
 * @returns hL to put in bottles
 * @equation V = V0 + starter + m·d with dry sugar, V0 + starter + v with liqueur
 * @source derived mass balance
 * @refuses #N/A as TIRAGE.SUGAR and TIRAGE.LIQUEUR do
 * @example TIRAGE.VOLUME(50, 24) = 50.761
 */
export function tirageVolume(
  volume_hL: number,
  dose_gL: number,
  liqueur_gL?: number,
  wineSugar_gL?: number,
  starter_L?: number,
): number {
  return answer(() => {
    const liqueur = optional(domains.strengthGL, liqueur_gL, "liqueur_gL", null);
    return tirage.tirageVolumeHl(
      given(domains.volumeHl, volume_hL, "volume_hL"),
      sucroseGL(given(domains.doseGL, dose_gL, "dose_gL")),
      // a liqueur of 0 g/L is no liqueur: a blank cell reaches us as 0 from some hosts
      liqueur === null || liqueur === 0 ? "dry" : sucroseGL(liqueur),
      invertGL(optional(domains.strengthGL, wineSugar_gL, "wineSugar_gL", 0)),
      optional(domains.volumeL, starter_L, "starter_L", 0),
    );
  });
}

/**
 * Whole bottles filled from a volume; a rest that does not fill a bottle is not counted.
 * @customfunction TIRAGE.BOTTLES
 * @param volume_hL Volume to put in bottles, hL (more than 0, at most 100000).
 * @param [bottle_mL] Bottle size, mL (50 to 30000); blank = 750.
 * @param [loss_pct] Wine lost at filling, % (0 to less than 100); blank = 0.
 * @returns whole bottles
 * @equation volume·(1 − loss/100)/bottle, rounded down
 * @source arithmetic
 * @example TIRAGE.BOTTLES(50, 750, 1) = 6600
 */
export function tirageBottles(volume_hL: number, bottle_mL?: number, loss_pct?: number): number {
  return answer(() =>
    tirage.bottlesFilled(
      given(domains.volumeHl, volume_hL, "volume_hL"),
      optional(domains.bottleMl, bottle_mL, "bottle_mL", DEFAULT_BOTTLE_ML),
      optional(domains.percentBelow100, loss_pct, "loss_pct", 0),
    ),
  );
}

/**
 * Alcohol after the second fermentation, % vol, with the dilution by the added sugar's own volume.
 * @customfunction TIRAGE.ALCOHOL
 * @param alcohol_vol Alcohol of the base wine, % vol (5 to 16).
 * @param dose_gL Fermentable sugar in the filled bottle, g/L as sucrose (0 to 60).
 * @param [wineSugar_gL] Part of it already in the wine, g/L of glucose + fructose (0 to 1000); blank = 0.
 * @returns % vol
 * @equation A = A0·(1000 − s·d)/(1000 − S0·d) + s·1.05263/16.83
 * @source derived; 16.83 g/L for 1 % vol is the OIV and EU convention (memory)
 * @refuses #N/A where the wine's own sugar is already more than the dose
 * @example TIRAGE.ALCOHOL(10.5, 24) = 11.84
 */
export function tirageAlcohol(alcohol_vol: number, dose_gL: number, wineSugar_gL?: number): number {
  return answer(() =>
    fermentation.alcoholAfter(
      given(domains.baseAlcoholVol, alcohol_vol, "alcohol_vol"),
      sucroseGL(given(domains.doseGL, dose_gL, "dose_gL")),
      invertGL(optional(domains.strengthGL, wineSugar_gL, "wineSugar_gL", 0)),
    ),
  );
}

/**
 * Litres of yeast starter so that the wine holds the live cells wanted.
 * @customfunction TIRAGE.STARTER
 * @param volume_hL Base wine in the tank, hL (more than 0, at most 100000).
 * @param target_Mcells_mL Live cells wanted in the wine, million/mL (more than 0, at most 10000).
 * @param starter_Mcells_mL Live cells in the starter, million/mL (more than 0, at most 10000), more than wanted.
 * @returns L of starter
 * @equation v = V0·t/(n − t)
 * @source derived mass balance; 1 to 3 million cells/mL is published practice
 * @refuses #N/A where the starter holds no more cells than wanted
 * @example TIRAGE.STARTER(50, 1.5, 75) = 102.04
 */
export function tirageStarter(
  volume_hL: number,
  target_Mcells_mL: number,
  starter_Mcells_mL: number,
): number {
  return answer(() =>
    fermentation.starterVolumeL(
      given(domains.volumeHl, volume_hL, "volume_hL"),
      given(domains.millionCells, target_Mcells_mL, "target_Mcells_mL"),
      given(domains.millionCells, starter_Mcells_mL, "starter_Mcells_mL"),
    ),
  );
}

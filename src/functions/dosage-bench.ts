/**
 * DOSAGE functions for the bench: blends and trials.
 */
import { shareOfStronger, trialRow } from "../cellar/dosage";
import { driestTerm } from "../cellar/sweetness";
import { invertGL } from "../cellar/units";
import { unanswerable } from "../cellar/refusal";
import { answer, domains, filledCells, given } from "./arguments";

/**
 * Share of the stronger of two wines or liqueurs that gives the strength wanted. All strengths on one basis.
 * @customfunction DOSAGE.BLEND
 * @param weaker_gL Sugar of the weaker, g/L (0 to 1000).
 * @param stronger_gL Sugar of the stronger, g/L (0 to 1000), more than the weaker.
 * @param target_gL Sugar wanted, g/L (0 to 1000), between the two.
 * @returns share of the stronger, 0 to 1
 * @equation (T − a)/(b − a)
 * @source derived mass balance
 * @refuses #N/A where the target does not lie between the two
 * @example DOSAGE.BLEND(0, 600, 150) = 0.25
 */
export function dosageBlend(weaker_gL: number, stronger_gL: number, target_gL: number): number {
  return answer(() =>
    shareOfStronger(
      given(domains.strengthGL, weaker_gL, "weaker_gL"),
      given(domains.strengthGL, stronger_gL, "stronger_gL"),
      given(domains.strengthGL, target_gL, "target_gL"),
    ),
  );
}

/**
 * Bench trial, a row for each target: target, mL a bottle, mL in a 100 mL glass, driest permitted EU term. Glucose + fructose throughout.
 * @customfunction DOSAGE.TRIAL
 * @param bottle_mL Wine in the finished bottle, mL (50 to 30000).
 * @param wine_gL Sugar of the wine, g/L of glucose + fructose (0 to 1000).
 * @param liqueur_gL Sugar of the liqueur, g/L of glucose + fructose (0 to 1000).
 * @param targets A range of sweetness to try, g/L of glucose + fructose (0 to 1000 each); blank cells are left out, or tried as 0 where Excel makes them 0.
 * @returns rows of four cells; a target that cannot be reached says why in the last one
 * @equation v = Vb·(St − Sw)/(L − Sw), the glass in proportion
 * @source derived mass balance; terms: Delegated Regulation (EU) 2019/33 annex III part A
 * @refuses #N/A where every cell of the range is blank
 * @example DOSAGE.TRIAL(750, 0, 600, {8}) = 8, 10, 1.333, "brut"
 */
export function dosageTrial(
  bottle_mL: number,
  wine_gL: number,
  liqueur_gL: number,
  targets: number[][],
): any[][] {
  return answer(() => {
    const bottle = given(domains.bottleMl, bottle_mL, "bottle_mL");
    const wine = given(domains.strengthGL, wine_gL, "wine_gL");
    const liqueur = given(domains.strengthGL, liqueur_gL, "liqueur_gL");
    const rows: any[][] = [];
    for (const cell of filledCells(targets)) {
      const target = given(domains.strengthGL, cell, "targets");
      const { reason, bottleMl, glassMl } = trialRow(bottle, wine, target, liqueur);
      if (reason !== undefined) rows.push([target, "", "", reason]);
      else rows.push([target, bottleMl, glassMl, driestTerm(invertGL(target), target > wine, "EU", "en")]);
    }
    if (rows.length === 0) throw unanswerable("targets", null, "give at least one sweetness to try");
    return rows;
  });
}

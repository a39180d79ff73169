/**
 * What the label says: alcohol to the half unit, energy.
 */
import { ETHANOL_KG_PER_L } from "./constants";

/** Alcohol for the label, nearest whole or half unit. */
export function labelAlcoholVol(alcoholVol: number): number {
  return Math.round(alcoholVol * 2) / 2;
}

/** Energy of 1 g (read: Regulation (EU) 1169/2011 annex XIV). kJ and kcal are separate tables, not a conversion. */
export const ENERGY_PER_G = {
  kJ: { alcohol: 29, carbohydrate: 17, organicAcid: 13, polyol: 10 },
  kcal: { alcohol: 7, carbohydrate: 4, organicAcid: 3, polyol: 2.4 },
} as const;

/** Energy of 100 mL, unrounded; sugar, acids and glycerol in g/L. */
export function energyPer100Ml(
  alcoholVol: number,
  sugarGL: number,
  acidGL: number,
  glycerolGL: number,
  unit: keyof typeof ENERGY_PER_G,
): number {
  const per = ENERGY_PER_G[unit];
  return (
    alcoholVol * ETHANOL_KG_PER_L * per.alcohol +
    (sugarGL * per.carbohydrate + acidGL * per.organicAcid + glycerolGL * per.polyol) / 10
  );
}

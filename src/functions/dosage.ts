/**
 * DOSAGE functions. Give all strengths of one call on one basis, sucrose or glucose + fructose.
 */
import { USUAL } from "../cellar/constants";
import * as dosage from "../cellar/dosage";
import { liqueurRecipe } from "../cellar/sugar";
import { sucroseGL } from "../cellar/units";
import { answer, domains, given, optional } from "./arguments";

/**
 * Millilitres of liqueur in each bottle for the sweetness wanted. All strengths on one basis, sucrose or glucose + fructose.
 * @customfunction DOSAGE.VOLUME
 * @param bottle_mL Wine in the finished bottle, mL (50 to 30000).
 * @param wine_gL Sugar of the wine, g/L (0 to 1000).
 * @param target_gL Sugar wanted, g/L (0 to 1000).
 * @param liqueur_gL Sugar of the liqueur, g/L (0 to 1000); for a sweetness as analysed, 600 weighed are 631.6 (SUGAR.INVERT).
 * @param [space_mL] Room in the neck, mL (0 to 30000); blank = no check. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @returns mL a bottle
 * @equation v = Vb·(St − Sw)/(L − Sw)
 * @source derived mass balance
 * @refuses #N/A where the wine is already sweeter, the liqueur too weak, or the room too small
 * @example DOSAGE.VOLUME(750, 1, 8, 600) = 8.765
 */
export function dosageVolume(
  bottle_mL: number,
  wine_gL: number,
  target_gL: number,
  liqueur_gL: number,
  space_mL?: number,
): number {
  return answer(() => {
    const bottle = given(domains.bottleMl, bottle_mL, "bottle_mL");
    const wine = given(domains.strengthGL, wine_gL, "wine_gL");
    const target = given(domains.strengthGL, target_gL, "target_gL");
    const liqueur = given(domains.strengthGL, liqueur_gL, "liqueur_gL");
    const space = optional(domains.partOfBottleMl, space_mL, "space_mL", null);
    return space === null
      ? dosage.dosageMl(bottle, wine, target, liqueur)
      : dosage.dosageMlWithin(bottle, wine, target, liqueur, space);
  });
}

/**
 * Sugar reached by a volume of liqueur, g/L. Both strengths on one basis, sucrose or glucose + fructose.
 * @customfunction DOSAGE.SUGAR
 * @param bottle_mL Wine in the finished bottle, mL (50 to 30000).
 * @param wine_gL Sugar of the wine, g/L (0 to 1000).
 * @param liqueur_mL Liqueur in the bottle, mL (0 to 30000).
 * @param liqueur_gL Sugar of the liqueur, g/L (0 to 1000); for a sweetness as analysed, 600 weighed are 631.6 (SUGAR.INVERT).
 * @returns g/L
 * @equation S = ((Vb − v)·Sw + v·L)/Vb
 * @source derived mass balance
 * @refuses #N/A where the liqueur is more than the bottle holds
 * @example DOSAGE.SUGAR(750, 0, 10, 600) = 8
 */
export function dosageSugar(
  bottle_mL: number,
  wine_gL: number,
  liqueur_mL: number,
  liqueur_gL: number,
): number {
  return answer(() =>
    dosage.dosedSugarGL(
      given(domains.bottleMl, bottle_mL, "bottle_mL"),
      given(domains.strengthGL, wine_gL, "wine_gL"),
      given(domains.partOfBottleMl, liqueur_mL, "liqueur_mL"),
      given(domains.strengthGL, liqueur_gL, "liqueur_gL"),
    ),
  );
}

/**
 * Millilitres of wine to top up with, once the liqueur is in.
 * @customfunction DOSAGE.TOPUP
 * @param space_mL Room in the neck, mL (0 to 30000).
 * @param liqueur_mL Liqueur in the bottle, mL (0 to 30000).
 * @returns mL of wine
 * @equation space − liqueur
 * @source arithmetic
 * @refuses #N/A where the liqueur does not fit
 * @example DOSAGE.TOPUP(20, 8.5) = 11.5
 */
export function dosageTopup(space_mL: number, liqueur_mL: number): number {
  return answer(() =>
    dosage.topUpMl(
      given(domains.partOfBottleMl, space_mL, "space_mL"),
      given(domains.partOfBottleMl, liqueur_mL, "liqueur_mL"),
    ),
  );
}

/**
 * Litres of liqueur to prepare for a batch, with a reserve.
 * @customfunction DOSAGE.BATCH
 * @param bottles Bottles to dose (a whole number, 0 to 100000000).
 * @param liqueur_mL Liqueur in each, mL (0 to 30000).
 * @param [reserve_pct] Reserve, % (0 to less than 100); blank = 5. A blank cell may arrive as 0, and 0 is kept: leave the argument out instead.
 * @returns L of liqueur
 * @equation bottles·mL/1000·(1 + reserve/100)
 * @source arithmetic
 * @example DOSAGE.BATCH(1000, 8, 5) = 8.4
 */
export function dosageBatch(bottles: number, liqueur_mL: number, reserve_pct?: number): number {
  return answer(() =>
    dosage.batchLiqueurL(
      given(domains.bottles, bottles, "bottles"),
      given(domains.partOfBottleMl, liqueur_mL, "liqueur_mL"),
      optional(domains.percentBelow100, reserve_pct, "reserve_pct", USUAL.reservePct),
    ),
  );
}

/**
 * Kilograms of sugar and litres of carrier wine for a liqueur, in one row. Both strengths as sucrose.
 * @customfunction DOSAGE.RECIPE
 * @param liqueur_L Liqueur wanted, L (0 to 10000000).
 * @param strength_gL Its strength, g/L as sucrose (0 to 1000).
 * @param [carrier_gL] Sugar of the carrier wine, g/L as sucrose (0 to 1000); blank = 0.
 * @returns two cells: kg of sugar, L of carrier
 * @equation m = V·(L − c)/(1000 − c·d), carrier = V − m·d, d = 0.625 L/kg
 * @source derived mass balance; d read in trade handbooks and derived from ICUMSA
 * @refuses #N/A where the carrier alone is stronger than the liqueur wanted
 * @example DOSAGE.RECIPE(10, 600) = 6, 6.25
 */
export function dosageRecipe(liqueur_L: number, strength_gL: number, carrier_gL?: number): number[][] {
  return answer(() => {
    const { sugarKg, carrierL } = liqueurRecipe(
      given(domains.volumeL, liqueur_L, "liqueur_L"),
      sucroseGL(given(domains.strengthGL, strength_gL, "strength_gL")),
      sucroseGL(optional(domains.strengthGL, carrier_gL, "carrier_gL", 0)),
    );
    return [[sugarKg, carrierL]];
  });
}

/**
 * Whole bottles that a limited stock of liqueur or sweet reserve wine can dose. All strengths on one basis.
 * @customfunction DOSAGE.STOCK
 * @param stock_L Stock, L (0 to 10000000).
 * @param bottle_mL Wine in the finished bottle, mL (50 to 30000).
 * @param wine_gL Sugar of the wine, g/L (0 to 1000).
 * @param target_gL Sugar wanted, g/L (0 to 1000).
 * @param liqueur_gL Sugar of the stock, g/L (0 to 1000); for a sweetness as analysed, 600 weighed are 631.6 (SUGAR.INVERT).
 * @returns whole bottles
 * @equation stock·1000/v, v as DOSAGE.VOLUME, rounded down
 * @source derived mass balance
 * @refuses #N/A where no liqueur is needed, or as DOSAGE.VOLUME does
 * @example DOSAGE.STOCK(10, 750, 0, 8, 600) = 1000
 */
export function dosageStock(
  stock_L: number,
  bottle_mL: number,
  wine_gL: number,
  target_gL: number,
  liqueur_gL: number,
): number {
  return answer(() =>
    dosage.bottlesFromStock(
      given(domains.volumeL, stock_L, "stock_L"),
      given(domains.bottleMl, bottle_mL, "bottle_mL"),
      given(domains.strengthGL, wine_gL, "wine_gL"),
      given(domains.strengthGL, target_gL, "target_gL"),
      given(domains.strengthGL, liqueur_gL, "liqueur_gL"),
    ),
  );
}

/**
 * Alcohol after dosage, % vol.
 * @customfunction DOSAGE.ALCOHOL
 * @param bottle_mL Wine in the finished bottle, mL (50 to 30000).
 * @param wine_vol Alcohol of the wine, % vol (0 to 20).
 * @param liqueur_mL Liqueur in the bottle, mL (0 to 30000).
 * @param liqueur_vol Alcohol of the liqueur, % vol (0 to 20).
 * @returns % vol
 * @equation A = ((Vb − v)·Aw + v·Al)/Vb
 * @source volume-weighted mean
 * @refuses #N/A where the liqueur is more than the bottle holds
 * @example DOSAGE.ALCOHOL(750, 12, 7.5, 7) = 11.95
 */
export function dosageAlcohol(
  bottle_mL: number,
  wine_vol: number,
  liqueur_mL: number,
  liqueur_vol: number,
): number {
  return answer(() =>
    dosage.dosedAlcoholVol(
      given(domains.bottleMl, bottle_mL, "bottle_mL"),
      given(domains.alcoholVol, wine_vol, "wine_vol"),
      given(domains.partOfBottleMl, liqueur_mL, "liqueur_mL"),
      given(domains.alcoholVol, liqueur_vol, "liqueur_vol"),
    ),
  );
}

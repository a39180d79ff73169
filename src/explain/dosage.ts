/**
 * DOSAGE workings. All strengths of one call on one basis.
 */
import { USUAL } from "../cellar/constants";
import * as cellar from "../cellar/dosage";
import { domains } from "../cellar/domains";
import { liqueurRecipe } from "../cellar/sugar";
import { sucroseGL } from "../cellar/units";
import { explainer, type Notebook } from "./notebook";
import { inProse } from "./numbers";
import { ARITHMETIC, MASS_BALANCE } from "./sources";

export const bottle = (on: Notebook) =>
  on.number("bottle_mL", domains.bottleMl, "[Vb] Wine in the finished bottle");
export const wine = (on: Notebook) => on.number("wine_gL", domains.strengthGL, "[Sw] Sugar of the wine");
export const liqueur = (on: Notebook) =>
  on.number("liqueur_gL", domains.strengthGL, "[L] Sugar of the liqueur");
const target = (on: Notebook) => on.number("target_gL", domains.strengthGL, "[St] Sugar wanted");
const liqueurMl = (on: Notebook) =>
  on.number("liqueur_mL", domains.partOfBottleMl, "[v] Liqueur in the bottle");

/** mL of liqueur a bottle; x tells several targets apart. */
export function dosageStep(on: Notebook, value: number, nothingMissing: boolean, x = ""): void {
  if (nothingMissing) on.found(`[v${x}] The wine already holds what is wanted, so no liqueur`, value, "mL");
  else
    on.step(
      "The liqueur takes the place of wine: each mL of it brings L instead of Sw",
      `v${x} = Vb·(St${x} − Sw)/(L − Sw)`,
      value,
      "mL",
    );
}

export const dosage = {
  "DOSAGE.VOLUME": explainer("bottle_mL wine_gL target_gL liqueur_gL space_mL", (on) => {
    const [b, w, t, l] = [bottle(on), wine(on), target(on), liqueur(on)];
    const space = on.optionalOrNone("space_mL", domains.partOfBottleMl, "Room in the neck", "no check");
    const result = space === null ? cellar.dosageMl(b, w, t, l) : cellar.dosageMlWithin(b, w, t, l, space);
    dosageStep(on, result, t === w);
    if (space !== null) on.say(`The room in the neck is ${inProse(space)} mL`, "it fits");
    return { result, unit: "mL a bottle", sources: [MASS_BALANCE] };
  }),

  "DOSAGE.SUGAR": explainer("bottle_mL wine_gL liqueur_mL liqueur_gL", (on) => {
    const [b, w, v, l] = [bottle(on), wine(on), liqueurMl(on), liqueur(on)];
    const result = cellar.dosedSugarGL(b, w, v, l);
    on.step(
      "Sugar of the wine that stays and of the liqueur, in the whole bottle",
      "S = ((Vb − v)·Sw + v·L)/Vb",
      result,
      "g/L",
    );
    return { result, unit: "g/L", sources: [MASS_BALANCE] };
  }),

  "DOSAGE.TOPUP": explainer("space_mL liqueur_mL", (on) => {
    const space = on.number("space_mL", domains.partOfBottleMl, "[r] Room in the neck");
    const result = cellar.topUpMl(space, liqueurMl(on));
    on.step("Wine fills what room the liqueur leaves", "w = r − v", result, "mL");
    return { result, unit: "mL of wine", sources: [ARITHMETIC] };
  }),

  "DOSAGE.BATCH": explainer("bottles liqueur_mL reserve_pct", (on) => {
    const bottles = on.number("bottles", domains.bottles, "[n] Bottles to dose");
    const each = liqueurMl(on);
    const reserve = on.optional("reserve_pct", domains.percentBelow100, "[r] Reserve", USUAL.reservePct);
    const result = cellar.batchLiqueurL(bottles, each, reserve);
    on.step(
      "All bottles, 1000 mL to the litre, and the reserve on top",
      "V = n·v/1000·(1 + r/100)",
      result,
      "L",
    );
    return { result, unit: "L of liqueur", sources: [ARITHMETIC] };
  }),

  "DOSAGE.RECIPE": explainer("liqueur_L strength_gL carrier_gL", (on) => {
    const litres = on.number("liqueur_L", domains.volumeL, "[V] Liqueur wanted");
    const strength = sucroseGL(on.number("strength_gL", domains.strengthGL, "[L] Its strength, as sucrose"));
    const carrier = sucroseGL(
      on.optional("carrier_gL", domains.strengthGL, "[c] Sugar of the carrier wine, as sucrose", 0),
    );
    const { sugarKg, carrierL } = liqueurRecipe(litres, strength, carrier);
    on.step(
      "Sugar that the carrier does not bring; what it dissolves in takes room, too",
      "m = V·(L − c)/(1000 − c·d)",
      sugarKg,
      "kg of sucrose",
    );
    on.step("The carrier fills what the dissolved sugar leaves", "w = V − m·d", carrierL, "L of carrier");
    return { result: [[sugarKg, carrierL]], unit: "kg of sugar, L of carrier", sources: [MASS_BALANCE] };
  }),

  "DOSAGE.STOCK": explainer("stock_L bottle_mL wine_gL target_gL liqueur_gL", (on) => {
    const stock = on.number("stock_L", domains.volumeL, "[Q] Stock");
    const [b, w, t, l] = [bottle(on), wine(on), target(on), liqueur(on)];
    const result = cellar.bottlesFromStock(stock, b, w, t, l);
    dosageStep(on, cellar.dosageMl(b, w, t, l), false);
    on.step(
      "Bottles, rounded down: a rest that does not dose a bottle is left over",
      "n = ⌊Q·1000/v⌋",
      result,
      "bottles",
    );
    return { result, unit: "whole bottles", sources: [MASS_BALANCE] };
  }),

  "DOSAGE.ALCOHOL": explainer("bottle_mL wine_vol liqueur_mL liqueur_vol", (on) => {
    const b = bottle(on);
    const w = on.number("wine_vol", domains.alcoholVol, "[Aw] Alcohol of the wine");
    const v = liqueurMl(on);
    const l = on.number("liqueur_vol", domains.alcoholVol, "[Al] Alcohol of the liqueur");
    const result = cellar.dosedAlcoholVol(b, w, v, l);
    on.step(
      "Alcohol of the wine that stays and of the liqueur, in the whole bottle",
      "A = ((Vb − v)·Aw + v·Al)/Vb",
      result,
      "% vol",
    );
    return { result, unit: "% vol", sources: [MASS_BALANCE] };
  }),
};

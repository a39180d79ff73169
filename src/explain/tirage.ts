/**
 * TIRAGE workings of mass, volume and alcohol.
 */
import { LITRES_PER_KG_SUGAR } from "../cellar/constants";
import { domains } from "../cellar/domains";
import { alcoholAfter, besideSugarMl, missingSugar, starterVolumeL, wineShare } from "../cellar/fermentation";
import { bottlesFilled, tirageLiqueurL, tirageSugarKg, tirageVolumeHl } from "../cellar/tirage";
import {
  invertGL,
  invertToSucrose,
  LITRES_PER_HL,
  sucroseGL,
  type InvertGL,
  type SucroseGL,
} from "../cellar/units";
import { dose } from "./bottle";
import { inProse } from "./numbers";
import { explainer, type Notebook } from "./notebook";
import { ARITHMETIC, MASS_BALANCE } from "./sources";

const WANTED = "Sugar wanted in the filled bottle";
const volume = (on: Notebook, what = "[V] Base wine in the tank") =>
  on.number("volume_hL", domains.volumeHl, what);
const wineSugar = (on: Notebook) =>
  invertGL(
    on.optional("wineSugar_gL", domains.strengthGL, "[S] Glucose + fructose already in the wine", 0, "g/L"),
  );

/** S0 and what is missing. */
function missingSteps(on: Notebook, s: SucroseGL, sugar: InvertGL): void {
  const own = invertToSucrose(sugar);
  if (sugar === 0) on.found("[S0] The wine's own sugar as sucrose", own, "g/L");
  else
    on.step(
      "The wine's own sugar, counted as the sucrose that makes it",
      "S0 = S/inv",
      own,
      "g/L as sucrose",
    );
  const missing = missingSugar(s, sugar);
  on.step(
    `The wine brings ${inProse(own)} g/L, so ${inProse(missing)} g/L are missing`,
    "M = s − S0",
    missing,
    "g/L as sucrose",
  );
}

function litresStep(on: Notebook, volumeHl: number): void {
  const litres = volumeHl * LITRES_PER_HL;
  on.step(`${inProse(volumeHl)} hL are ${inProse(litres)} L`, "V0 = V·100", litres, "L");
}

function sugarSteps(on: Notebook, wineHl: number, s: SucroseGL, sugar: InvertGL): void {
  const beside = besideSugarMl(s);
  on.step(
    `Each kg of dissolved sugar takes ${LITRES_PER_KG_SUGAR} L, so a litre of filled bottle holds ${inProse(1000 - beside)} mL of sugar and, beside it`,
    "b = 1000 − s·d",
    beside,
    "mL",
  );
  on.step(
    "Sucrose to weigh",
    "m = V0·(s − S0)/(1000 − s·d)",
    tirageSugarKg(wineHl, s, sugar),
    "kg of sucrose",
  );
}

function liqueurStep(on: Notebook, wineHl: number, s: SucroseGL, liqueur: SucroseGL, sugar: InvertGL): void {
  const litres = tirageLiqueurL(wineHl, s, liqueur, sugar);
  if (missingSugar(s, sugar) === 0) on.found("[v] Nothing is missing, so no liqueur", litres, "L of liqueur");
  else
    on.step(
      "Liqueur to mix in: each litre brings L g and must itself hold the dose",
      "v = V0·(s − S0)/(L − s)",
      litres,
      "L of liqueur",
    );
}

const strength = "[L] Strength of the tirage liqueur, as sucrose";

export const tirage = {
  "TIRAGE.SUGAR": explainer("volume_hL dose_gL wineSugar_gL", (on) => {
    const [hl, s, sugar] = [volume(on), dose(on, WANTED), wineSugar(on)];
    const result = tirageSugarKg(hl, s, sugar);
    missingSteps(on, s, sugar);
    litresStep(on, hl);
    sugarSteps(on, hl, s, sugar);
    return { result, unit: "kg of sucrose", sources: [MASS_BALANCE] };
  }),

  "TIRAGE.LIQUEUR": explainer("volume_hL dose_gL liqueur_gL wineSugar_gL", (on) => {
    const [hl, s] = [volume(on), dose(on, WANTED)];
    const liqueur = sucroseGL(on.number("liqueur_gL", domains.strengthGL, strength));
    const sugar = wineSugar(on);
    const result = tirageLiqueurL(hl, s, liqueur, sugar);
    missingSteps(on, s, sugar);
    litresStep(on, hl);
    liqueurStep(on, hl, s, liqueur, sugar);
    return { result, unit: "L of liqueur", sources: [MASS_BALANCE] };
  }),

  "TIRAGE.VOLUME": explainer("volume_hL dose_gL liqueur_gL wineSugar_gL starter_L", (on) => {
    const given = on.optionalOrNone("liqueur_gL", domains.strengthGL, strength, "dry sugar");
    const [hl, s, sugar] = [volume(on), dose(on, WANTED), wineSugar(on)];
    const starter = on.optional("starter_L", domains.volumeL, "[q] Yeast starter", 0);
    // a liqueur of 0 g/L is no liqueur: a blank cell arrives as 0 from some hosts
    const liqueur = given === null || given === 0 ? null : sucroseGL(given);
    if (given === 0) on.said("liqueur_gL", strength, "dry sugar", "default");
    const result = tirageVolumeHl(hl, s, liqueur ?? "dry", sugar, starter);
    missingSteps(on, s, sugar);
    const wineHl = hl + starter / LITRES_PER_HL;
    on.step(
      "Base wine and starter; the starter counts as wine of the same sugar",
      "V0 = V·100 + q",
      wineHl * LITRES_PER_HL,
      "L",
    );
    if (liqueur === null) sugarSteps(on, wineHl, s, sugar);
    else liqueurStep(on, wineHl, s, liqueur, sugar);
    on.step(
      liqueur === null
        ? "To put in bottles: the wine and the volume of the dissolved sugar"
        : "To put in bottles: the wine and the liqueur",
      liqueur === null ? "B = (V0 + m·d)/100" : "B = (V0 + v)/100",
      result,
      "hL",
    );
    return { result, unit: "hL to put in bottles", sources: [MASS_BALANCE] };
  }),

  "TIRAGE.BOTTLES": explainer("volume_hL bottle_mL loss_pct", (on) => {
    const hl = volume(on, "[V] Volume to put in bottles");
    const bottle = on.optional("bottle_mL", domains.bottleMl, "[Vb] Bottle size", "Vb");
    const loss = on.optional("loss_pct", domains.percentBelow100, "[l] Wine lost at filling", 0);
    const result = bottlesFilled(hl, bottle, loss);
    on.step(
      "1 hL is 100 000 mL; what is not lost, divided by the bottle and rounded down: a rest that does not fill a bottle is not one",
      "n = ⌊V·100·1000·(1 − l/100)/Vb⌋",
      result,
      "bottles",
    );
    return { result, unit: "whole bottles", sources: [ARITHMETIC] };
  }),

  "TIRAGE.ALCOHOL": explainer("alcohol_vol dose_gL wineSugar_gL", (on) => {
    const alcohol = on.number("alcohol_vol", domains.baseAlcoholVol, "[A0] Alcohol of the base wine");
    const [s, sugar] = [dose(on), wineSugar(on)];
    const result = alcoholAfter(alcohol, s, sugar);
    missingSteps(on, s, sugar);
    on.step(
      "The volume of the added sugar thins the wine; share of the filled bottle that is base wine",
      "w = (1000 − s·d)/(1000 − S0·d)",
      wineShare(s, invertToSucrose(sugar)),
      "",
    );
    on.step("Alcohol of the thinned wine, and what the dose makes", "A = A0·w + s·inv/F", result, "% vol");
    return { result, unit: "% vol", sources: [MASS_BALANCE] };
  }),

  "TIRAGE.STARTER": explainer("volume_hL target_Mcells_mL starter_Mcells_mL", (on) => {
    const hl = volume(on);
    const target = on.number("target_Mcells_mL", domains.millionCells, "[t] Live cells wanted in the wine");
    const starter = on.number("starter_Mcells_mL", domains.millionCells, "[n] Live cells in the starter");
    const result = starterVolumeL(hl, target, starter);
    litresStep(on, hl);
    on.step(
      "Starter: each litre of it must itself hold the cells wanted",
      "v = V0·t/(n − t)",
      result,
      "L of starter",
    );
    return { result, unit: "L of starter", sources: [MASS_BALANCE] };
  }),
};

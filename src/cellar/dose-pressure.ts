/**
 * From the dose to the pressure under the crown cap, and back.
 */
import {
  CO2_PER_SUCROSE,
  INVERT_G_PER_L_PER_VOL,
  INVERT_PER_SUCROSE,
  LITRES_PER_KG_SUGAR,
} from "./constants";
import { bottlePressure, headspaceCapacity, nitrogenAt, underCrownCap } from "./closed-bottle";
import { domains, isWithin } from "./domains";
import { alcoholFromSugar, co2FromDose, wineShare } from "./fermentation";
import { unanswerable } from "./refusal";
import { leftByAlcohol, leftBySugar, LOSS_PER_VOL, temperatureFactor } from "./solubility";
import {
  excessToAbsolute,
  invertGL,
  sucroseGL,
  sucroseToInvert,
  type ExcessBar,
  type InvertGL,
  type SucroseGL,
} from "./units";

/** What goes into a bottle at tirage. */
export interface Fill {
  readonly dose: SucroseGL;
  /** Alcohol of the base wine, % vol. */
  readonly baseAlcoholVol: number;
  readonly yieldShare: number;
  readonly headspacePct: number;
  /** CO2 that the base wine brings along, g/L. */
  readonly dissolvedCo2GL: number;
}

/** Expected excess pressure under the crown cap when the dose has fermented out. */
export function expectedPressure(fill: Fill, temperatureC: number): ExcessBar {
  return pressureAtShare(fill, temperatureC, 1);
}

/** What a litre of the filled bottle holds when this share (0 to 1) of the dose has fermented; all of it is linear in the share. */
export function contentsAtShare(
  fill: Fill,
  share: number,
): { readonly alcoholVol: number; readonly co2GL: number; readonly sugar: InvertGL } {
  const sugar = sucroseToInvert(fill.dose);
  return {
    alcoholVol:
      fill.baseAlcoholVol * wineShare(fill.dose, sucroseGL(0)) + alcoholFromSugar(invertGL(share * sugar)),
    co2GL: share * co2FromDose(fill.dose, fill.yieldShare) + fill.dissolvedCo2GL,
    sugar: invertGL((1 - share) * sugar),
  };
}

/** Excess pressure when this share (0 to 1) of the dose has fermented. */
export function pressureAtShare(fill: Fill, temperatureC: number, share: number): ExcessBar {
  const { alcoholVol, co2GL, sugar } = contentsAtShare(fill, share);
  return bottlePressure(co2GL, temperatureC, alcoholVol, sugar, underCrownCap(fill.headspacePct));
}

/**
 * The share of the dose fermented that makes this excess pressure, its inverse: what alcohol and what sugar leave of
 * the solubility are both linear in the share, so that their product makes it the root of a square equation. Without
 * a dose there is no equation, and the answer is no number.
 */
export function shareAtPressure(pressure: ExcessBar, temperatureC: number, fill: Fill): number {
  const bottle = underCrownCap(fill.headspacePct);
  const co2Bar = excessToAbsolute(pressure) - nitrogenAt(bottle, temperatureC);
  const [before, after] = [contentsAtShare(fill, 0), contentsAtShare(fill, 1)];
  const wine = leftByAlcohol(before.alcoholVol);
  const wineChange = leftByAlcohol(after.alcoholVol) - wine;
  const sweet = leftBySugar(before.sugar);
  const sweetChange = leftBySugar(after.sugar) - sweet;
  const scale = co2Bar * temperatureFactor(temperatureC);
  const square = scale * wineChange * sweetChange;
  const linear = scale * (wine * sweetChange + wineChange * sweet) - (after.co2GL - before.co2GL);
  const constant = scale * wine * sweet + co2Bar * headspaceCapacity(bottle, temperatureC) - before.co2GL;
  // the form that does not lose digits where the square term is small
  return (2 * constant) / (Math.sqrt(linear * linear - 4 * square * constant) - linear);
}

/** % vol that 1 g/L of dose adds, its dilution included. */
export function alcoholPerDose(baseAlcoholVol: number): number {
  return INVERT_PER_SUCROSE / INVERT_G_PER_L_PER_VOL - (baseAlcoholVol * LITRES_PER_KG_SUGAR) / 1000;
}

/** Solubility lost to the alcohol of 1 g/L of dose, g/L per bar; the factor is that of the temperature. */
export function capacityLostPerDose(factor: number, baseAlcoholVol: number): number {
  return LOSS_PER_VOL * factor * alcoholPerDose(baseAlcoholVol);
}

/**
 * The dose that gives an excess pressure, exactly: alcohol, and with it solubility, is linear in the dose, so
 * the equation of expectedPressure solves in closed form. Refused where no dose in range does it.
 */
export function doseForPressure(
  pressure: ExcessBar,
  temperatureC: number,
  rest: Omit<Fill, "dose">,
): SucroseGL {
  const bottle = underCrownCap(rest.headspacePct);
  const co2Bar = excessToAbsolute(pressure) - nitrogenAt(bottle, temperatureC);
  const factor = temperatureFactor(temperatureC);
  const capacityAtNoDose =
    factor * leftByAlcohol(rest.baseAlcoholVol) + headspaceCapacity(bottle, temperatureC);
  const dose = withoutFloatTail(
    (co2Bar * capacityAtNoDose - rest.dissolvedCo2GL) /
      (CO2_PER_SUCROSE * rest.yieldShare + co2Bar * capacityLostPerDose(factor, rest.baseAlcoholVol)),
  );
  if (!isWithin(domains.doseGL, dose)) {
    const reached = (extreme: number) =>
      expectedPressure({ ...rest, dose: sucroseGL(extreme) }, temperatureC).toFixed(2);
    const { min, max } = domains.doseGL;
    throw unanswerable(
      "pressure_bar",
      pressure,
      `doses of ${min} to ${max} g/L give ${reached(min)} to ${reached(max)} bar at ${temperatureC} °C in this wine; give a pressure between these`,
    );
  }
  return sucroseGL(dose);
}

/** The last bits of a float must not refuse the pressure of the smallest or the largest dose. */
function withoutFloatTail(dose: number): number {
  const { min, max } = domains.doseGL;
  const bound = Math.min(Math.max(dose, min), max);
  return Math.abs(dose - bound) <= 1e-10 ? bound : dose;
}

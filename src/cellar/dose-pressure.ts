/**
 * From the dose to the pressure under the crown cap, and back.
 */
import {
  CO2_PER_SUCROSE,
  INVERT_G_PER_L_PER_VOL,
  INVERT_PER_SUCROSE,
  LITRES_PER_KG_SUGAR,
} from "./constants";
import { headspaceCapacity, nitrogenAt, underCrownCap } from "./closed-bottle";
import { domains, isWithin, withoutFloatTail } from "./domains";
import { alcoholFromSugar, co2FromDose, wineShare } from "./fermentation";
import { unanswerable } from "./refusal";
import { LOSS_PER_VOL, shareOfSolubility, solubility, temperatureFactor } from "./solubility";
import {
  absoluteBar,
  absoluteToExcess,
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

const DRY = invertGL(0);

/** Expected excess pressure under the crown cap when the dose has fermented out. */
export function expectedPressure(fill: Fill, temperatureC: number): ExcessBar {
  return pressureAtShare(fill, temperatureC, 1);
}

/** What a litre of the filled bottle holds when this share (0 to 1) of the dose has fermented. */
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
  return pressuresByShare(fill, temperatureC)(share);
}

/** The same for many shares at one temperature: what only the temperature decides is worked out once. */
export function pressuresByShare(fill: Fill, temperatureC: number): (share: number) => ExcessBar {
  const bottle = underCrownCap(fill.headspacePct);
  const factor = temperatureFactor(temperatureC);
  const head = headspaceCapacity(bottle, temperatureC);
  const nitrogen = nitrogenAt(bottle, temperatureC);
  return (share) => {
    const { alcoholVol, co2GL, sugar } = contentsAtShare(fill, share);
    const capacity = factor * shareOfSolubility(alcoholVol, sugar) + head;
    return absoluteToExcess(absoluteBar(co2GL / capacity + nitrogen));
  };
}

/** % vol that 1 g/L of dose adds, its dilution included. */
export function alcoholPerDose(baseAlcoholVol: number): number {
  return INVERT_PER_SUCROSE / INVERT_G_PER_L_PER_VOL - (baseAlcoholVol * LITRES_PER_KG_SUGAR) / 1000;
}

/** Solubility lost to the alcohol of 1 g/L of dose, g/L per bar. */
export function capacityLostPerDose(temperatureC: number, baseAlcoholVol: number): number {
  return LOSS_PER_VOL * temperatureFactor(temperatureC) * alcoholPerDose(baseAlcoholVol);
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
  const capacityAtNoDose =
    solubility(temperatureC, rest.baseAlcoholVol, DRY) + headspaceCapacity(bottle, temperatureC);
  const dose = withoutFloatTail(
    domains.doseGL,
    (co2Bar * capacityAtNoDose - rest.dissolvedCo2GL) /
      (CO2_PER_SUCROSE * rest.yieldShare + co2Bar * capacityLostPerDose(temperatureC, rest.baseAlcoholVol)),
  );
  if (!isWithin(domains.doseGL, dose)) {
    const reached = (extreme: number) =>
      expectedPressure({ ...rest, dose: sucroseGL(extreme) }, temperatureC).toFixed(2);
    const { min, max } = domains.doseGL;
    throw unanswerable(
      "pressure_bar",
      pressure,
      `doses of ${min} to ${max} g/L give ${reached(min)} to ${reached(max)} bar at ${temperatureC} °C in this wine; give a pressure between`,
    );
  }
  return sucroseGL(dose);
}

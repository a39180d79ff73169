/**
 * CO2 in wine and in the closed bottle: solubility, pressure, dose for a pressure, and a pressure moved to
 * another temperature.
 *
 * Solubility at 20 °C: Commission Regulation (EEC) 2676/90, annex ch. 37, and OIV-MA-AS314 (read in parallel
 * EU language copies, exponent derived from the unit). Other temperatures: van 't Hoff with an enthalpy fitted
 * to the published 0 to 25 °C table for 12.5 % vol and 10 g/L (derived). It is an interpolation, usable from
 * −2 to 40 °C, to be taken with care beyond 0 to 30 °C.
 * The bottle: official solution of the International Physics Olympiad 2025, theory Q3 (read).
 */
import {
  CO2_G_PER_MOL,
  CO2_PER_SUCROSE,
  GAS_CONSTANT,
  INVERT_G_PER_L_PER_VOL,
  INVERT_PER_SUCROSE,
  LITRES_PER_KG_SUGAR,
  NITROGEN_AT_20C_BAR,
} from "./constants";
import { domains, isWithin } from "./domains";
import { alcoholAfter, alcoholFromSugar, co2FromDose, wineShare } from "./fermentation";
import { unanswerable } from "./refusal";
import {
  absoluteBar,
  absoluteToExcess,
  excessToAbsolute,
  invertGL,
  kelvin,
  sucroseGL,
  sucroseToInvert,
  type AbsoluteBar,
  type ExcessBar,
  type InvertGL,
  type SucroseGL,
} from "./units";

/** g/L of CO2 per bar in water at 20 °C by the EU/OIV relation, before alcohol and sugar are allowed for. */
const SOLUBILITY_AT_20C = 1.951;
/** Enthalpy of dissolution, J/mol (derived; literature 24.8 kJ/mol, memory: Liger-Belair 2005). */
const DISSOLUTION_J_PER_MOL = 24_700;
/** Loss of solubility for each % vol of alcohol, and for each g/L of sugar (EU/OIV relation). */
const ALCOHOL_FREE = 0.86;
const LOSS_PER_VOL = 0.01;
const LOSS_PER_GL = 0.00144;

const REFERENCE_K = kelvin(20);
/** g/L of CO2 gas at 1 bar, times kelvin: 100·M/R = 529.31. */
const GAS_GL_K_PER_BAR = (100 * CO2_G_PER_MOL) / GAS_CONSTANT;

/** A bottle under its crown cap. */
export interface Bottle {
  /** Headspace, % of the wine's volume. */
  readonly headspacePct: number;
  /** Nitrogen in the headspace, bar at 20 °C; 0 once disgorged. */
  readonly nitrogenBar: number;
}

export const underCrownCap = (headspacePct: number): Bottle => ({
  headspacePct,
  nitrogenBar: NITROGEN_AT_20C_BAR,
});

function temperatureFactor(temperatureC: number): number {
  return (
    SOLUBILITY_AT_20C *
    Math.exp((DISSOLUTION_J_PER_MOL / GAS_CONSTANT) * (1 / kelvin(temperatureC) - 1 / REFERENCE_K))
  );
}

/** Solubility of CO2 in wine, g/L per bar of CO2 above it. */
export function solubility(temperatureC: number, alcoholVol: number, sugar: InvertGL): number {
  return (
    temperatureFactor(temperatureC) * (ALCOHOL_FREE - LOSS_PER_VOL * alcoholVol) * (1 - LOSS_PER_GL * sugar)
  );
}

/** g of CO2 gas in the headspace for each litre of wine and bar. */
function headspaceCapacity(bottle: Bottle, temperatureC: number): number {
  return ((bottle.headspacePct / 100) * GAS_GL_K_PER_BAR) / kelvin(temperatureC);
}

const nitrogenAt = (bottle: Bottle, temperatureC: number) =>
  (bottle.nitrogenBar * kelvin(temperatureC)) / REFERENCE_K;

/** Excess pressure of a closed bottle holding this much CO2 in all, g per litre of wine. */
export function bottlePressure(
  totalCo2GL: number,
  temperatureC: number,
  alcoholVol: number,
  sugar: InvertGL,
  bottle: Bottle,
): ExcessBar {
  const capacity = solubility(temperatureC, alcoholVol, sugar) + headspaceCapacity(bottle, temperatureC);
  return absoluteToExcess(absoluteBar(totalCo2GL / capacity + nitrogenAt(bottle, temperatureC)));
}

/** The CO2 in all, g per litre of wine, that gives this excess pressure: the inverse of bottlePressure. */
export function bottleCo2(
  pressure: ExcessBar,
  temperatureC: number,
  alcoholVol: number,
  sugar: InvertGL,
  bottle: Bottle,
): number {
  const co2Bar = excessToAbsolute(pressure) - nitrogenAt(bottle, temperatureC);
  return co2Bar * (solubility(temperatureC, alcoholVol, sugar) + headspaceCapacity(bottle, temperatureC));
}

/** Dissolved CO2, g/L, at equilibrium with CO2 alone above the wine. */
export function dissolvedCo2(
  pressure: AbsoluteBar,
  temperatureC: number,
  alcoholVol: number,
  sugar: InvertGL,
): number {
  return pressure * solubility(temperatureC, alcoholVol, sugar);
}

/** The pressure of CO2 at equilibrium with this much dissolved in the wine. */
export function pressureOfDissolved(
  co2GL: number,
  temperatureC: number,
  alcoholVol: number,
  sugar: InvertGL,
): AbsoluteBar {
  return absoluteBar(co2GL / solubility(temperatureC, alcoholVol, sugar));
}

/** Excess pressure of the same closed bottle at another temperature: the CO2 in it stays. */
export function shiftPressure(
  pressure: ExcessBar,
  fromC: number,
  toC: number,
  alcoholVol: number,
  sugar: InvertGL,
  bottle: Bottle,
): ExcessBar {
  const co2 = bottleCo2(pressure, fromC, alcoholVol, sugar, bottle);
  if (co2 < 0) {
    const own = absoluteToExcess(absoluteBar(nitrogenAt(bottle, fromC))).toFixed(2);
    throw unanswerable(
      "pressure_bar",
      pressure,
      `the nitrogen alone makes ${own} bar at ${fromC} °C; give at least that`,
    );
  }
  return bottlePressure(co2, toC, alcoholVol, sugar, bottle);
}

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

/** Excess pressure when this share (0 to 1) of the dose has fermented. */
export function pressureAtShare(fill: Fill, temperatureC: number, share: number): ExcessBar {
  const sugar = sucroseToInvert(fill.dose);
  const alcohol =
    fill.baseAlcoholVol * wineShare(fill.dose, sucroseGL(0)) + alcoholFromSugar(invertGL(share * sugar));
  const co2 = share * co2FromDose(fill.dose, fill.yieldShare) + fill.dissolvedCo2GL;
  return bottlePressure(
    co2,
    temperatureC,
    alcohol,
    invertGL((1 - share) * sugar),
    underCrownCap(fill.headspacePct),
  );
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
  const alcoholPerDose =
    INVERT_PER_SUCROSE / INVERT_G_PER_L_PER_VOL - (rest.baseAlcoholVol * LITRES_PER_KG_SUGAR) / 1000;
  const capacityLostPerDose = LOSS_PER_VOL * temperatureFactor(temperatureC) * alcoholPerDose;
  const dose = withoutFloatTail(
    (co2Bar * capacityAtNoDose - rest.dissolvedCo2GL) /
      (CO2_PER_SUCROSE * rest.yieldShare + co2Bar * capacityLostPerDose),
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

/** The last bits of a float must not refuse the pressure of the smallest or the largest dose. */
function withoutFloatTail(dose: number): number {
  const { min, max } = domains.doseGL;
  const bound = Math.min(Math.max(dose, min), max);
  return Math.abs(dose - bound) <= 1e-10 ? bound : dose;
}

/** Standard deviations from bottle to bottle, independent of each other. */
export interface Spread {
  readonly doseGL: number;
  readonly yieldShare: number;
  readonly temperatureC: number;
  readonly headspacePct: number;
}

/** A careful tirage (memory; no published source: the user can give measured ones). */
export const DEFAULT_SPREAD: Spread = { doseGL: 0.4, yieldShare: 0.02, temperatureC: 0.5, headspacePct: 0.5 };

export interface PressureRange {
  readonly low: ExcessBar;
  readonly expected: ExcessBar;
  readonly high: ExcessBar;
}

/** Half-width of the interval that holds 95 % of a normal distribution, in standard deviations. */
const NORMAL_95 = 1.96;

/** Where 95 % of the bottles lie: each deviation through its first derivative, summed in quadrature. */
export function pressureRange(fill: Fill, temperatureC: number, spread: Spread): PressureRange {
  const bottle = underCrownCap(fill.headspacePct);
  const T = kelvin(temperatureC);
  const alcohol = alcoholAfter(fill.baseAlcoholVol, fill.dose, DRY);
  const solved = solubility(temperatureC, alcohol, DRY);
  const capacity = solved + headspaceCapacity(bottle, temperatureC);
  const co2Bar = (co2FromDose(fill.dose, fill.yieldShare) + fill.dissolvedCo2GL) / capacity;
  const alcoholPerDose =
    INVERT_PER_SUCROSE / INVERT_G_PER_L_PER_VOL - (fill.baseAlcoholVol * LITRES_PER_KG_SUGAR) / 1000;

  const perDose =
    (CO2_PER_SUCROSE * fill.yieldShare +
      co2Bar * LOSS_PER_VOL * temperatureFactor(temperatureC) * alcoholPerDose) /
    capacity;
  const perYield = (fill.dose * CO2_PER_SUCROSE) / capacity;
  const capacityPerKelvin =
    -(solved * DISSOLUTION_J_PER_MOL) / (GAS_CONSTANT * T * T) - headspaceCapacity(bottle, temperatureC) / T;
  const perKelvin = (-co2Bar * capacityPerKelvin) / capacity + bottle.nitrogenBar / REFERENCE_K;
  const perHeadspacePct = (-co2Bar * (GAS_GL_K_PER_BAR / 100 / T)) / capacity;

  const halfWidth =
    NORMAL_95 *
    Math.hypot(
      perDose * spread.doseGL,
      perYield * spread.yieldShare,
      perKelvin * spread.temperatureC,
      perHeadspacePct * spread.headspacePct,
    );
  const expected = absoluteToExcess(absoluteBar(co2Bar + nitrogenAt(bottle, temperatureC)));
  return { low: (expected - halfWidth) as ExcessBar, expected, high: (expected + halfWidth) as ExcessBar };
}

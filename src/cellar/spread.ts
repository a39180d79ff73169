/**
 * How far bottles of one batch differ in pressure.
 */
import { ATMOSPHERE_BAR, CO2_PER_SUCROSE, GAS_CONSTANT } from "./constants";
import { GAS_GL_K_PER_BAR, headspaceCapacity, nitrogenAt, underCrownCap } from "./closed-bottle";
import { capacityLostPerDose, type Fill } from "./dose-pressure";
import { alcoholAfter, co2FromDose } from "./fermentation";
import { unanswerable } from "./refusal";
import { DISSOLUTION_J_PER_MOL, leftByAlcohol, REFERENCE_K, temperatureFactor } from "./solubility";
import { absoluteBar, absoluteToExcess, excessBar, invertGL, kelvin, type ExcessBar } from "./units";

const DRY = invertGL(0);

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
export const NORMAL_95 = 1.96;

/** CO2's own pressure in the bottle, and by how many bar the pressure changes with each quantity. */
export interface PressureSlopes {
  readonly co2Bar: number;
  readonly perDose: number;
  readonly perYield: number;
  readonly perKelvin: number;
  readonly perHeadspacePct: number;
}

export function pressureSlopes(fill: Fill, temperatureC: number): PressureSlopes {
  const bottle = underCrownCap(fill.headspacePct);
  const T = kelvin(temperatureC);
  const alcohol = alcoholAfter(fill.baseAlcoholVol, fill.dose, DRY);
  const factor = temperatureFactor(temperatureC);
  const solved = factor * leftByAlcohol(alcohol);
  const head = headspaceCapacity(bottle, temperatureC);
  const capacity = solved + head;
  const co2Bar = (co2FromDose(fill.dose, fill.yieldShare) + fill.dissolvedCo2GL) / capacity;
  const capacityPerKelvin = -(solved * DISSOLUTION_J_PER_MOL) / (GAS_CONSTANT * T * T) - head / T;
  return {
    co2Bar,
    perDose:
      (CO2_PER_SUCROSE * fill.yieldShare + co2Bar * capacityLostPerDose(factor, fill.baseAlcoholVol)) /
      capacity,
    perYield: (fill.dose * CO2_PER_SUCROSE) / capacity,
    perKelvin: (-co2Bar * capacityPerKelvin) / capacity + bottle.nitrogenBar / REFERENCE_K,
    perHeadspacePct: (-co2Bar * (GAS_GL_K_PER_BAR / 100 / T)) / capacity,
  };
}

/** Where 95 % of the bottles lie: each deviation through its first derivative, summed in quadrature. */
export function pressureRange(fill: Fill, temperatureC: number, spread: Spread): PressureRange {
  const slopes = pressureSlopes(fill, temperatureC);
  const byDose = slopes.perDose * spread.doseGL;
  const byYield = slopes.perYield * spread.yieldShare;
  const byTemperature = slopes.perKelvin * spread.temperatureC;
  const byHeadspace = slopes.perHeadspacePct * spread.headspacePct;
  const variance = byDose ** 2 + byYield ** 2 + byTemperature ** 2 + byHeadspace ** 2;
  const halfWidth = NORMAL_95 * Math.sqrt(variance);
  const nitrogen = nitrogenAt(underCrownCap(fill.headspacePct), temperatureC);
  const expected = absoluteToExcess(absoluteBar(slopes.co2Bar + nitrogen));
  if (expected - halfWidth < -ATMOSPHERE_BAR) {
    const remedy = "the spread reaches below vacuum; give smaller standard deviations";
    throw unanswerable("doseSd_gL", spread.doseGL, remedy);
  }
  return { low: excessBar(expected - halfWidth), expected, high: excessBar(expected + halfWidth) };
}

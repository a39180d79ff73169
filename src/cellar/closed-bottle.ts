/**
 * The closed bottle: CO2 shared between wine and headspace, and nitrogen beside it.
 * Official solution of the International Physics Olympiad 2025, theory Q3 (read).
 */
import { CO2_G_PER_MOL, GAS_CONSTANT, NITROGEN_AT_20C_BAR } from "./constants";
import { unanswerable } from "./refusal";
import { REFERENCE_K, solubility } from "./solubility";
import {
  absoluteBar,
  absoluteToExcess,
  excessToAbsolute,
  kelvin,
  type ExcessBar,
  type InvertGL,
} from "./units";

/** g/L of CO2 gas at 1 bar, times kelvin: 100·M/R = 529.31. */
export const GAS_GL_K_PER_BAR = (100 * CO2_G_PER_MOL) / GAS_CONSTANT;

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

/** g of CO2 gas in the headspace for each litre of wine and bar. */
export function headspaceCapacity(bottle: Bottle, temperatureC: number): number {
  return ((bottle.headspacePct / 100) * GAS_GL_K_PER_BAR) / kelvin(temperatureC);
}

/** bar of nitrogen in the headspace at this temperature. */
export const nitrogenAt = (bottle: Bottle, temperatureC: number) =>
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

/**
 * Reading a gauge away from 20 °C by the official method's table: excess pressure at 20 °C over excess
 * pressure at t, for t = 0 to 25 °C (memory: OIV-MA-AS314-02; Regulation (EC) 1293/2005).
 * It is no rounding of the physics of shiftPressure: for 6 bar at 20 °C and no nitrogen it comes out 11 % lower
 * from 10 °C and 26 % lower from 0 °C, more at lower pressures, and 6 % higher from 25 °C.
 */
import { excessBar, type ExcessBar } from "./units";

export const RATIO_TO_20C: readonly number[] = [
  1.85, 1.8, 1.74, 1.68, 1.64, 1.59, 1.54, 1.5, 1.45, 1.4, 1.36, 1.32, 1.28, 1.24, 1.2, 1.16, 1.13, 1.09,
  1.06, 1.03, 1.0, 0.97, 0.95, 0.93, 0.91, 0.88,
];

/** The table's rows on both sides of a temperature, and the ratio between them. */
export function ratioTo20C(temperatureC: number): {
  readonly below: number;
  readonly low: number;
  readonly high: number;
  readonly ratio: number;
} {
  const below = Math.min(Math.floor(temperatureC), RATIO_TO_20C.length - 2);
  const [low, high] = [RATIO_TO_20C[below]!, RATIO_TO_20C[below + 1]!];
  return { below, low, high, ratio: low + (high - low) * (temperatureC - below) };
}

/** Excess pressure at 20 °C from a reading at 0 to 25 °C, linear between whole degrees; nothing outside. */
export function pressureAt20(reading: ExcessBar, temperatureC: number): ExcessBar {
  return excessBar(reading * ratioTo20C(temperatureC).ratio);
}

/**
 * Readings on the lees: how far a fermentation has got, and the yield that explains a finished one.
 */
import {
  bottleCo2,
  bottlePressure,
  contentsAtShare,
  expectedPressure,
  pressureAtShare,
  shareAtPressure,
  underCrownCap,
  type Fill,
} from "./carbonation";
import { domains, isWithin } from "./domains";
import { alcoholAfter, co2FromDose } from "./fermentation";
import { unanswerable } from "./refusal";
import { invertGL, type ExcessBar } from "./units";

const DRY = invertGL(0);

const shown = (pressure: number) => pressure.toFixed(2);

/**
 * Share of the dose fermented, 0 to 1, from a reading. The pressure rises with the share, so the root is single.
 * A reading outside what the bottle can show is refused, not pushed to the nearer end.
 */
export function shareFermented(reading: ExcessBar, temperatureC: number, fill: Fill): number {
  const none = pressureAtShare(fill, temperatureC, 0);
  const all = pressureAtShare(fill, temperatureC, 1);
  if (reading < none || reading > all) {
    throw unanswerable(
      "reading_bar",
      reading,
      `this bottle shows ${shown(none)} to ${shown(all)} bar at ${temperatureC} °C, from no sugar fermented to all; ` +
        "check the temperature and the dose, or take TIRAGE.YIELD if it has finished",
    );
  }
  // the ends as they are; with no dose both are one, and there is no equation
  if (reading === none) return 0;
  if (reading === all) return 1;
  // only the last bits of a float can lie outside
  return Math.min(Math.max(shareAtPressure(reading, temperatureC, fill), 0), 1);
}

/** The yield that makes the expected pressure equal to a reading on a finished fermentation. */
export function yieldFromReading(
  reading: ExcessBar,
  temperatureC: number,
  fill: Omit<Fill, "yieldShare">,
): number {
  if (fill.dose === 0) {
    throw unanswerable("dose_gL", fill.dose, "no sugar gives no CO2 to measure a yield by; give more than 0");
  }
  const alcoholVol = alcoholAfter(fill.baseAlcoholVol, fill.dose, DRY);
  const inAll = bottleCo2(reading, temperatureC, alcoholVol, DRY, underCrownCap(fill.headspacePct));
  const share = (inAll - fill.dissolvedCo2GL) / co2FromDose(fill.dose, 1);
  if (isWithin(domains.yieldShare, share)) return share;
  const { min, max } = domains.yieldShare;
  const at = (yieldShare: number) => expectedPressure({ ...fill, yieldShare }, temperatureC);
  const [least, most] = [at(min), at(max)];
  if (reading < least || reading > most) {
    throw unanswerable(
      "reading_bar",
      reading,
      `yields of ${min} to ${max} give ${shown(least)} to ${shown(most)} bar at ${temperatureC} °C; ` +
        "check the temperature, the dose and whether it has finished",
    );
  }
  // only the last bits of a float can lie outside
  return Math.min(Math.max(share, min), max);
}

const MOST_ROWS = 200;

/** Excess pressure against temperature, from one to another in steps. */
export function pressureCurve(
  fill: Fill,
  fromC: number,
  toC: number,
  stepC: number,
): [celsius: number, pressure: ExcessBar][] {
  if (toC < fromC) throw unanswerable("to_C", toC, `give at least the lower end, ${fromC} °C`);
  // a last step that misses the end by a float's tail still counts
  const rows = Math.floor((toC - fromC) / stepC + 1e-9) + 1;
  if (rows > MOST_ROWS) {
    throw unanswerable(
      "step_C",
      stepC,
      `that makes ${rows} rows, at most ${MOST_ROWS} are given; take a larger step`,
    );
  }
  // all but the temperature stays
  const { alcoholVol, co2GL, sugar } = contentsAtShare(fill, 1);
  const bottle = underCrownCap(fill.headspacePct);
  const curve: [celsius: number, pressure: ExcessBar][] = [];
  for (let row = 0; row < rows; row++) {
    const celsius = Math.min(fromC + row * stepC, toC);
    curve.push([celsius, bottlePressure(co2GL, celsius, alcoholVol, sugar, bottle)]);
  }
  return curve;
}

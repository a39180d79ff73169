/**
 * The pressure of a planned batch over the temperatures that its bottles may come to, and what it is held against.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import { wineOf } from "../../cellar/batch/plan-tirage";
import { DEFAULT_SPREAD, pressureRange, type PressureRange } from "../../cellar/carbonation";
import { bisect } from "../../cellar/root";
import { classLow, pressureRules } from "../../cellar/rules/pressure-classes";

/** °C beyond the warmest mark. */
const BEYOND_C = 2;
const STEPS = 24;
export const AT_20C = 20;

/** Units as they are kept: °C and excess bar. */
export interface PressureCurve {
  readonly coldest_C: number;
  readonly warmest_C: number;
  readonly points: readonly { readonly at_C: number; readonly range: PressureRange }[];
  /** Where the high end of the bottles reaches the rating, within the drawing. */
  readonly reached_C: number | null;
  /** The least that the rules ask of the finished wine at 20 °C; null where they count it otherwise. */
  readonly least_bar: number | null;
}

export function pressureCurve(inputs: BatchInputs, plan: BatchPlan): PressureCurve {
  const { cellar_C, hottest_C, glassRating_bar } = inputs.tirage;
  const fill = { ...wineOf(inputs), dose: plan.tirage.dose };
  const rangeAt = (celsius: number) => pressureRange(fill, celsius, DEFAULT_SPREAD);
  const coldest_C = Math.min(0, cellar_C, hottest_C);
  const warmest_C = Math.max(AT_20C, cellar_C, hottest_C) + BEYOND_C;
  const { measure, classes } = pressureRules[inputs.batch.rules];
  const over = (celsius: number) => rangeAt(celsius).high - (glassRating_bar ?? Infinity);
  return {
    coldest_C,
    warmest_C,
    points: Array.from({ length: STEPS + 1 }, (_, index) => {
      const at_C = coldest_C + ((warmest_C - coldest_C) * index) / STEPS;
      return { at_C, range: rangeAt(at_C) };
    }),
    reached_C: over(coldest_C) < 0 && over(warmest_C) >= 0 ? bisect(over, coldest_C, warmest_C) : null,
    least_bar: measure === "excess bar at 20 °C" ? classLow(classes[0], inputs.batch.bottle_mL) : null,
  };
}

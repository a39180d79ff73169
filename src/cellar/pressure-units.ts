/**
 * Pressure in the units that gauges and old books carry, gauge or absolute.
 */
import { ATMOSPHERE_BAR } from "./constants";
import { fold } from "./matching";
import { Refusal, unanswerable, wordNumber } from "./refusal";

/** bar in one unit. kgf/cm² and psi follow exactly from standard gravity, the pound and the inch. */
export const BAR_PER_UNIT = {
  bar: 1,
  kPa: 0.01,
  atm: ATMOSPHERE_BAR,
  psi: (0.45359237 * 9.80665) / 0.0254 ** 2 / 1e5,
  "kgf/cm2": 9.80665e4 / 1e5,
} as const;

type Unit = keyof typeof BAR_PER_UNIT;
const UNITS = Object.keys(BAR_PER_UNIT) as Unit[];
const ABSOLUTE = " abs";

export interface Scale {
  readonly barPerUnit: number;
  /** bar above vacuum at the scale's zero. */
  readonly zeroBar: number;
}

/** The scale a unit stands for, gauge or absolute. */
export function scaleOf(unit: unknown, argument: string): Scale {
  if (typeof unit === "string") {
    const wanted = fold(unit).replace("²", "2");
    const absolute = wanted.endsWith(ABSOLUTE);
    const plain = absolute ? wanted.slice(0, -ABSOLUTE.length) : wanted;
    const found = UNITS.find((each) => fold(each) === plain);
    if (found) return { barPerUnit: BAR_PER_UNIT[found], zeroBar: absolute ? 0 : ATMOSPHERE_BAR };
  }
  throw new Refusal({
    kind: "domain",
    argument,
    given: unit,
    remedy: `give one of: ${UNITS.join(", ")}; with "${ABSOLUTE}" after it for absolute pressure, as "bar abs"`,
  });
}

export const barAboveVacuum = (value: number, { barPerUnit, zeroBar }: Scale) => value * barPerUnit + zeroBar;

/** A pressure on another scale; below vacuum there is none. */
export function convertPressure(value: number, fromUnit: unknown, toUnit: unknown): number {
  const from = scaleOf(fromUnit, "from_unit");
  const to = scaleOf(toUnit, "to_unit");
  const aboveVacuumBar = barAboveVacuum(value, from);
  if (aboveVacuumBar < 0) {
    throw unanswerable(
      "value",
      value,
      `that is below vacuum; give at least ${wordNumber(-from.zeroBar / from.barPerUnit)} in this unit`,
    );
  }
  return (aboveVacuumBar - to.zeroBar) / to.barPerUnit;
}

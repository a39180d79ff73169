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

/** By the unit's name as it is written and folded: alone for gauge, with "abs" after it for absolute pressure. */
const SCALES: ReadonlyMap<string, Scale> = new Map(
  UNITS.flatMap((unit) =>
    [unit, fold(unit)].flatMap((name): [string, Scale][] => [
      [name, { barPerUnit: BAR_PER_UNIT[unit], zeroBar: ATMOSPHERE_BAR }],
      [name + ABSOLUTE, { barPerUnit: BAR_PER_UNIT[unit], zeroBar: 0 }],
    ]),
  ),
);

/** The scale a unit stands for, gauge or absolute. */
export function scaleOf(unit: unknown, argument: string): Scale {
  if (typeof unit === "string") {
    const found = SCALES.get(unit) ?? SCALES.get(fold(unit).replace("²", "2"));
    if (found) return found;
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

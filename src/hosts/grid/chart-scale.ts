/**
 * An axis of numbers: where it begins and ends, and which round numbers are marked on it.
 */
import type { CellValue, ChartAxis } from "../../workbook/data";

export interface Scale {
  readonly min: number;
  readonly max: number;
  /** From the least to the greatest, within the ends. */
  readonly ticks: readonly number[];
}

/** Beyond it differences could overflow; no sheet of ours holds such a number. */
const LARGEST = 1e100;
/** Nothing smaller is told from 0. */
const SMALLEST = 1e-90;
/** Numbers that lie closer, in parts of their size, are one number. */
const SAME = 1e-12;
/** Numbers above this share of the greatest need no 0 beneath them. */
const FAR_FROM_ZERO = 5 / 6;

/** Nothing for texts, blanks and errors. */
export function numberIn(value: CellValue | undefined): number | undefined {
  return typeof value === "number" && Math.abs(value) < LARGEST ? value : undefined;
}

export interface Wish {
  /** How many steps there is room for. */
  readonly steps: number;
  /** Bars begin at 0, so that their lengths can be compared. */
  readonly fromZero?: boolean;
}

export function scaleOf(numbers: readonly number[], axis: Pick<ChartAxis, "min" | "max">, wish: Wish): Scale {
  const [low, high] = endsOf(numbers, axis, wish.fromZero ?? false);
  const step = roundStep((high - low) / Math.max(1, wish.steps));
  const min = axis.min ?? Math.floor(low / step + SAME) * step;
  const max = axis.max !== undefined && axis.max > min ? axis.max : Math.ceil(high / step - SAME) * step;
  const first = Math.ceil(min / step - SAME);
  const last = Math.floor(max / step + SAME);
  // 3 × 0.1 is to read 0.3
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => tidy((first + index) * step));
  return { min: tidy(min), max: tidy(max), ticks };
}

/** 0 at the beginning of a scale, 1 at its end; what lies outside is outside. */
export const share = ({ min, max }: Scale, value: number) => (value - min) / (max - min);

function endsOf(
  numbers: readonly number[],
  { min, max }: Pick<ChartAxis, "min" | "max">,
  fromZero: boolean,
): readonly [low: number, high: number] {
  const least = numbers.reduce((least, each) => Math.min(least, each), Infinity);
  const most = numbers.reduce((most, each) => Math.max(most, each), -Infinity);
  const [low, high] = least <= most ? withZero(least, most, fromZero) : [0, 1];
  const ends = [min ?? low, max ?? high] as const;
  const size = Math.max(Math.abs(ends[0]), Math.abs(ends[1]));
  if (ends[1] - ends[0] > Math.max(size, SMALLEST) * SAME) return ends;
  const room = size < SMALLEST ? 1 : size / 10;
  return min === undefined && max !== undefined ? [max - room, max] : [ends[0], ends[0] + room];
}

function withZero(low: number, high: number, always: boolean): readonly [number, number] {
  const one = always || low === high;
  if (low >= 0 && (one || low <= high * FAR_FROM_ZERO)) return [0, high];
  if (high <= 0 && (one || high >= low * FAR_FROM_ZERO)) return [low, 0];
  return [low, high];
}

/** 1, 2 or 5 times a power of ten, not below what is asked for. */
function roundStep(atLeast: number): number {
  const power = 10 ** Math.floor(Math.log10(atLeast));
  const factor = [1, 2, 5].find((each) => each * power >= atLeast * (1 - SAME)) ?? 10;
  return factor * power;
}

const tidy = (value: number) => Number(value.toPrecision(12));

/**
 * Pressure against temperature: the figures in the reader's units, and where they are drawn.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import { wineOf } from "../../cellar/batch/plan-tirage";
import { DEFAULT_SPREAD, pressureRange, type PressureRange } from "../../cellar/carbonation";
import { bisect } from "../../cellar/root";
import { classLow, pressureRules } from "../../cellar/rules/pressure-classes";
import { scaleOf, share, type Scale } from "../../hosts/grid/chart-scale";
import { ASCENT, LINE, WIDTH, placed, textWidth, type Box, type Label } from "./geometry-labels";
import type { Point } from "./svg";

/** °C beyond the warmest mark. */
const BEYOND_C = 2;
const STEPS = 24;
/** A rating that far above everything else would flatten the rest. */
const RATING_FAR = 2.5;
const AT_20C = 20;

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

/** How a quantity and its marks are shown. */
export interface Axis {
  readonly unit: string;
  readonly shown: (kept: number) => number;
  readonly number: (shown: number) => string;
}

export interface PressureMark {
  readonly at_C: number;
  readonly range: PressureRange;
  readonly text: string;
}

export interface PressureWishes {
  readonly curve: PressureCurve;
  readonly cellar: PressureMark;
  readonly hottest: PressureMark;
  readonly finished_bar: number;
  readonly rating: { readonly bar: number; readonly text: string } | null;
  readonly leastText: string;
  readonly temperature: Axis;
  readonly pressure: Axis;
}

/** The expected pressure, with the low and high end above one another. */
export interface PlacedMark {
  readonly x: number;
  readonly low: number;
  readonly expected: number;
  readonly high: number;
}

export interface PressurePicture {
  readonly height: number;
  readonly plot: Box;
  readonly expected: readonly Point[];
  readonly low: readonly Point[];
  readonly high: readonly Point[];
  readonly cellar: PlacedMark;
  readonly hottest: PlacedMark;
  readonly finished: Point;
  readonly least: Point | null;
  /** null where none is given, or where it lies too far above. */
  readonly ratingY: number | null;
  readonly across: readonly { readonly x: number }[];
  readonly up: readonly { readonly y: number; readonly isZero: boolean }[];
  readonly quiet: readonly Label[];
  readonly values: readonly Label[];
}

const HEIGHT = 208;
const TOP = 22;
const FOOT = 22;
const GAP = 6;
const MARK = 5;

export function pressurePicture(wishes: PressureWishes): PressurePicture {
  const { curve, temperature, pressure, rating } = wishes;
  const y = upScale(wishes);
  const upNames = y.ticks.map(pressure.number);
  const left = Math.max(...upNames.map(textWidth)) + GAP;
  const plot = { left, top: TOP, width: WIDTH - left - 2 * GAP, height: HEIGHT - TOP - FOOT };
  const foot = plot.top + plot.height;
  const x = scaleOf(
    [],
    { min: temperature.shown(curve.coldest_C), max: temperature.shown(curve.warmest_C) },
    { steps: plot.width / 40 },
  );
  const acrossAt = (shown: number) => plot.left + share(x, shown) * plot.width;
  const upAt = (shown: number) => foot - share(y, shown) * plot.height;
  const xOf = (celsius: number) => acrossAt(temperature.shown(celsius));
  const yOf = (bar: number) => upAt(pressure.shown(bar));
  const line = (end: keyof PressureRange) =>
    curve.points.map(({ at_C, range }): Point => [xOf(at_C), yOf(range[end])]);
  const mark = ({ at_C, range }: PressureMark): PlacedMark => ({
    x: xOf(at_C),
    low: yOf(range.low),
    expected: yOf(range.expected),
    high: yOf(range.high),
  });
  const [cellar, hottest] = [mark(wishes.cellar), mark(wishes.hottest)];
  const finished: Point = [xOf(AT_20C), yOf(wishes.finished_bar)];
  const least: Point | null = curve.least_bar === null ? null : [xOf(AT_20C), yOf(curve.least_bar)];
  const ratingY = rating && pressure.shown(rating.bar) <= y.max ? yOf(rating.bar) : null;

  const page = { left: 0, top: 0, width: WIDTH, height: HEIGHT };
  const foots = [
    [{ text: temperature.unit, x: WIDTH, y: HEIGHT - 5, anchor: "end" as const }],
    ...x.ticks.map((tick) => [
      { text: temperature.number(tick), x: acrossAt(tick), y: HEIGHT - 5, anchor: "middle" as const },
    ]),
  ];
  const sides = [
    [{ text: pressure.unit, x: 0, y: ASCENT, anchor: "start" as const }],
    ...y.ticks.map((tick, index) => [
      { text: upNames[index]!, x: left - GAP, y: upAt(tick) + 4, anchor: "end" as const },
    ]),
  ];
  return {
    height: HEIGHT,
    plot,
    expected: line("expected"),
    low: line("low"),
    high: line("high"),
    cellar,
    hottest,
    finished,
    least,
    ratingY,
    across: x.ticks.map((tick) => ({ x: acrossAt(tick) })),
    up: y.ticks.map((tick) => ({ y: upAt(tick), isZero: tick === 0 })),
    quiet: placed([...foots, ...sides], page),
    values: placed(
      [
        besideCurve(wishes.hottest.text, hottest),
        rating && ratingY !== null ? besideLine(rating.text, plot, ratingY) : [],
        besideCurve(wishes.cellar.text, cellar),
        least ? besideMark(wishes.leastText, least) : [],
      ],
      plot,
      [spanOf(cellar), spanOf(hottest), squareAt(finished), ...(least ? [squareAt(least)] : [])],
    ),
  };
}

function upScale({ curve, cellar, hottest, finished_bar, rating, pressure }: PressureWishes): Scale {
  const drawn = [
    ...curve.points.flatMap(({ range }) => [range.low, range.high]),
    cellar.range.high,
    hottest.range.high,
    cellar.range.low,
    hottest.range.low,
    finished_bar,
    curve.least_bar ?? 0,
    // a batch without a dose still needs a scale
    1,
  ];
  const top = Math.max(...drawn);
  const shownRating = rating && rating.bar <= top * RATING_FAR ? [rating.bar] : [];
  const numbers = [0, ...drawn, ...shownRating].map(pressure.shown);
  const least = Math.min(...numbers);
  // below zero the scale ends where the figures end: a whole step would be empty
  return scaleOf(numbers, least < 0 ? { min: least } : {}, { steps: (HEIGHT - TOP - FOOT) / 32 });
}

/** Above at the left, or below at the right, where a rising curve is not. */
const besideCurve = (text: string, { x, low, high }: PlacedMark): Label[] => [
  { text, x: x - GAP, y: high - GAP, anchor: "end" },
  { text, x: x + GAP, y: low + ASCENT + 2, anchor: "start" },
  { text, x: x - GAP, y: high - GAP - LINE, anchor: "end" },
  { text, x: x + GAP, y: low + ASCENT + 2 + LINE, anchor: "start" },
];

const besideLine = (text: string, { left, width }: Box, y: number): Label[] => [
  { text, x: left + GAP, y: y - 4, anchor: "start" },
  { text, x: left + GAP, y: y + ASCENT + 2, anchor: "start" },
  { text, x: left + width - GAP, y: y - 4, anchor: "end" },
  { text, x: left + width - GAP, y: y + ASCENT + 2, anchor: "end" },
];

const besideMark = (text: string, [x, y]: Point): Label[] => [
  { text, x: x - 2 * MARK - GAP, y: y + 4, anchor: "end" },
  { text, x: x - 2 * MARK - GAP, y: y + ASCENT + GAP, anchor: "end" },
  { text, x: x + 2 * MARK + GAP, y: y + 4, anchor: "start" },
];

const squareAt = ([x, y]: Point): Box => ({
  left: x - MARK,
  top: y - MARK,
  width: 2 * MARK,
  height: 2 * MARK,
});

const spanOf = ({ x, low, high }: PlacedMark): Box => ({
  left: x - MARK,
  top: high,
  width: 2 * MARK,
  height: Math.max(0, low - high),
});

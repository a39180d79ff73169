/**
 * Pressure against temperature: where it is drawn, on scales in the reader's units.
 */
import type { PressureRange } from "../../cellar/carbonation";
import { scaleOf, share, type Scale } from "../../hosts/grid/chart-scale";
import { besideCurve, besideLine, besideMark, spanOf, squareAt, type PlacedMark } from "./geometry-beside";
import { ASCENT, WIDTH, placed, textWidth, type Box, type Label } from "./geometry-labels";
import { AT_20C, type PressureCurve } from "./pressure-curve";
import type { Point } from "./svg";

/** A rating that far above everything else would flatten the rest. */
const RATING_FAR = 2.5;

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
  const [low, high] = [line("low"), line("high")];
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
    low,
    high,
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
        besideCurve(wishes.hottest.text, hottest, plot, low, high, cellar.x),
        rating && ratingY !== null ? besideLine(rating.text, plot, ratingY) : [],
        besideCurve(wishes.cellar.text, cellar, plot, low, high),
        least ? besideMark(wishes.leastText, least) : [],
      ],
      plot,
      [
        spanOf(cellar),
        spanOf(hottest),
        squareAt(finished, GAP),
        ...(least ? [squareAt(least, 0)] : []),
        ...(ratingY === null ? [] : [{ ...plot, top: ratingY - 1, height: 2 }]),
      ],
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

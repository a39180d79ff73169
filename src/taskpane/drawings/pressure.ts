/**
 * The excess pressure under the crown cap against temperature: expected, where 95 % of the bottles lie, and what it is
 * to be held against.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import { pressureRules } from "../../cellar/rules/pressure-classes";
import { shownResult } from "../typed-numbers";
import type { Quantity, Units } from "../units";
import { SWATCH, figure, write, type Saying } from "./figure";
import { pressurePicture, type Axis } from "./geometry-pressure";
import { pressureCurve, type PressureCurve } from "./pressure-curve";
import { along, around, svg, type Point } from "./svg";

const CAPTION = "Excess pressure against temperature";
const MIDDLE = SWATCH.height / 2;
const CENTRE: Point = [SWATCH.width / 2, MIDDLE];

export function pressureDrawing(inputs: BatchInputs, plan: BatchPlan, units: Units): HTMLElement {
  const { cellar_C, hottest_C, glassRating_bar } = inputs.tirage;
  const { cellar, hottest } = plan.tirage.pressures;
  const curve = pressureCurve(inputs, plan);
  const bar = (kept: number) => units.text("pressure", kept, 2);
  const picture = pressurePicture({
    curve,
    cellar: { at_C: cellar_C, range: cellar, text: bar(cellar.expected) },
    hottest: { at_C: hottest_C, range: hottest, text: bar(hottest.expected) },
    finished_bar: plan.dosage.pressureAt20,
    rating:
      glassRating_bar === null ? null : { bar: glassRating_bar, text: `Rating ${bar(glassRating_bar)}` },
    leastText: bar(curve.least_bar ?? 0),
    temperature: axisOf("temperature", units),
    pressure: axisOf("pressure", units),
  });
  const { plot, height, ratingY } = picture;
  const right = plot.left + plot.width;
  const foot = plot.top + plot.height;
  const whisker = ({ x, low, high }: typeof picture.cellar) =>
    svg("line", { x1: x, x2: x, y1: low, y2: high, class: "drawing-whisker" });
  return figure({
    name: "pressure",
    caption: CAPTION,
    height,
    nodes: [
      ...picture.up.map(({ y, isZero }) => level(plot.left, right, y, isZero ? "axis" : "grid")),
      ...picture.across.map(({ x }) =>
        svg("line", { x1: x, x2: x, y1: foot, y2: foot + 4, class: "drawing-axis" }),
      ),
      svg("path", {
        d: along([
          [plot.left, plot.top],
          [plot.left, foot],
          [right, foot],
        ]),
        class: "drawing-axis",
      }),
      svg("path", { d: around([...picture.high, ...[...picture.low].reverse()]), class: "drawing-band" }),
      svg("path", { d: along(picture.low), class: "drawing-edge" }),
      svg("path", { d: along(picture.high), class: "drawing-edge" }),
      ...(ratingY === null ? [] : [level(plot.left, right, ratingY, "rating")]),
      svg("path", { d: along(picture.expected), class: "drawing-line" }),
      whisker(picture.cellar),
      whisker(picture.hottest),
      ...(picture.least ? [leastMark(picture.least)] : []),
      finishedMark(picture.finished),
      cellarMark([picture.cellar.x, picture.cellar.expected]),
      hottestMark([picture.hottest.x, picture.hottest.expected]),
      ...picture.quiet.map((label) => write(label, "quiet")),
      ...picture.values.map((label) => write(label, "strong")),
    ],
    sayings: sayingsOf(inputs, plan, units, curve, ratingY !== null),
    unseen: [
      `From ${degrees(units, curve.coldest_C)} to ${degrees(units, curve.warmest_C)} the expected pressure goes from ${bar(curve.points[0]!.range.expected)} to ${bar(curve.points.at(-1)!.range.expected)}.`,
    ],
  });
}

/** A reader's unit that has no value here falls back on what is kept; pressure and temperature always have one. */
function axisOf(quantity: Quantity, units: Units): Axis {
  const { name, shown } = units.of(quantity);
  const number = (value: number) => shownResult(value, Number.isInteger(value) ? 0 : 1);
  return { unit: name, shown: (kept) => shown(kept) ?? kept, number };
}

function degrees(units: Units, celsius: number): string {
  const shown = units.of("temperature").shown(celsius) ?? celsius;
  return units.text("temperature", celsius, Number.isInteger(shown) ? 0 : 1);
}

function sayingsOf(
  inputs: BatchInputs,
  plan: BatchPlan,
  units: Units,
  curve: PressureCurve,
  isRatingDrawn: boolean,
): Saying[] {
  const { cellar_C, hottest_C } = inputs.tirage;
  const { cellar, hottest } = plan.tirage.pressures;
  const bar = (kept: number) => units.text("pressure", kept, 2);
  const from = (kept: number) => units.parts("pressure", kept, 2).value;
  return [
    {
      mark: [cellarMark(CENTRE)],
      words: `Cellar, ${degrees(units, cellar_C)}: expected ${bar(cellar.expected)}, ${from(cellar.low)} to ${bar(cellar.high)}.`,
    },
    {
      mark: [hottestMark(CENTRE)],
      words: `Hottest, ${degrees(units, hottest_C)}: expected ${bar(hottest.expected)}, ${from(hottest.low)} to ${bar(hottest.high)}.`,
    },
    {
      mark: [
        svg("rect", { x: 1, y: 1, width: 22, height: 12, class: "drawing-band" }),
        svg("path", { d: "M1 1H23M1 13H23", class: "drawing-edge" }),
        level(1, 23, MIDDLE, "line"),
      ],
      words: "Line: expected. Band: 95 % of the bottles.",
    },
    ratingSaying(inputs.tirage.glassRating_bar, units, curve, isRatingDrawn),
    {
      mark: [finishedMark(CENTRE)],
      words: `Finished wine, ${degrees(units, 20)}: expected ${bar(plan.dosage.pressureAt20)}.`,
    },
    leastSaying(inputs, units, curve),
  ];
}

function ratingSaying(
  rating_bar: number | null,
  units: Units,
  { warmest_C, reached_C, points }: PressureCurve,
  isDrawn: boolean,
): Saying {
  if (rating_bar === null) return { words: "No glass maker's rating is given, so none is drawn." };
  const mark = isDrawn ? { mark: [level(0, SWATCH.width, MIDDLE, "rating")] } : {};
  const rating = units.text("pressure", rating_bar, 2);
  if (!isDrawn) return { words: `Glass maker's rating: ${rating}, far above what is drawn.` };
  if (reached_C !== null)
    return {
      ...mark,
      words: `Glass maker's rating: ${rating}. The band reaches it at ${units.text("temperature", reached_C, 1)}.`,
    };
  return points[0]!.range.high >= rating_bar
    ? { ...mark, words: `Glass maker's rating: ${rating}. The band is above it at every temperature drawn.` }
    : {
        ...mark,
        words: `Glass maker's rating: ${rating}. The band stays below it up to ${degrees(units, warmest_C)}.`,
      };
}

function leastSaying({ batch }: BatchInputs, units: Units, { least_bar }: PressureCurve): Saying {
  const { measure, classes } = pressureRules[batch.rules];
  return least_bar === null
    ? { words: `The rules of ${batch.rules} count ${measure}: their least is not drawn.` }
    : {
        mark: [leastMark(CENTRE)],
        words: `Least for ${classes[0].name} (${batch.rules}), ${degrees(units, 20)}: ${units.text("pressure", least_bar, 2)} in the finished wine.`,
      };
}

const level = (x1: number, x2: number, y: number, look: "axis" | "grid" | "rating" | "line") =>
  svg("line", { x1, x2, y1: y, y2: y, class: `drawing-${look}` });

const cellarMark = ([cx, cy]: Point) => svg("circle", { cx, cy, r: 4, class: "drawing-mark" });
const hottestMark = ([x, y]: Point) =>
  svg("path", {
    d: around([
      [x, y - 5.5],
      [x + 5.5, y],
      [x, y + 5.5],
      [x - 5.5, y],
    ]),
    class: "drawing-mark",
  });
const finishedMark = ([x, y]: Point) =>
  svg("rect", { x: x - 3.5, y: y - 3.5, width: 7, height: 7, class: "drawing-open" });
const leastMark = ([x, y]: Point) =>
  svg("path", {
    d: along([
      [x - 9, y - 4],
      [x - 9, y],
      [x + 9, y],
      [x + 9, y - 4],
    ]),
    class: "drawing-least",
  });

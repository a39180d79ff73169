/**
 * A chart as a drawing: title, axes, lines or bars, legend. What is drawn is decided here, without a page.
 */
import {
  CHART_GRID,
  CHART_INK,
  CHART_PAPER,
  CHART_QUIET,
  CHART_TEXT_SIZE,
  CHART_TITLE_SIZE,
  hasLegend,
  lookOf,
} from "../../workbook/chart-looks";
import type { CellValue, ChartAxis } from "../../workbook/data";
import { FONT } from "../../workbook/styles";
import type { ChartReading } from "./chart-cells";
import { legendOf } from "./chart-legend";
import { barMarks, barsOf, lineMarks, type Box } from "./chart-marks";
import { numberIn, scaleOf, share, type Scale } from "./chart-scale";
import { cut, label, widthOf } from "./chart-text";
import { node, type SvgNode } from "./svg";

/** A number in one of our formats, as text. */
export type Shown = (value: number, format: string) => string;

const TEXT = (CHART_TEXT_SIZE * 96) / 72;
const TITLE = (CHART_TITLE_SIZE * 96) / 72;
const LINE = TEXT * 1.5;
const MARGIN = 8;
const TICK = 4;
/** Names of bars take no more of the breadth than this. */
const WIDEST_NAMES = 0.45;
/** Between a mark and the next one up, and at least between two below. */
const APART_UP = 40;
const APART_ACROSS = 50;
const ink = (color: string) => `#${color}`;

export function chartSvg(reading: ChartReading, { width, height }: Box, shown: Shown): SvgNode {
  const { title, description } = reading.chart;
  const legend = hasLegend(reading.chart) ? legendOf(reading.chart, width - 2 * MARGIN, TEXT) : undefined;
  const foot = height - MARGIN - (legend?.height ?? 0);
  const inside = [
    node("rect", { width, height, fill: ink(CHART_PAPER), stroke: ink(CHART_GRID) }),
    label(cut(title, width - 2 * MARGIN, TITLE), {
      x: width / 2,
      y: MARGIN + TITLE,
      "text-anchor": "middle",
      "font-size": TITLE,
      "font-weight": "bold",
    }),
    ...plotOf(reading, { left: MARGIN, top: MARGIN + TITLE + LINE / 2, right: width - MARGIN, foot }, shown),
    ...(legend ? [node("g", { transform: `translate(${MARGIN} ${foot.toFixed(1)})` }, legend.nodes)] : []),
  ];
  return node(
    "svg",
    {
      role: "img",
      "aria-label": [title, description].filter((text) => text !== "").join(". "),
      viewBox: `0 0 ${width} ${height}`,
      width: "100%",
      height: "100%",
      "font-family": `${FONT}, Helvetica, sans-serif`,
      "font-size": TEXT,
      fill: ink(CHART_INK),
    },
    inside,
  );
}

interface Room {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly foot: number;
}

/** Axes and marks; the axis below and that at the left take the room they need. */
function plotOf(reading: ChartReading, room: Room, shown: Shown): SvgNode[] {
  const { chart } = reading;
  const isLines = chart.kind === "lines";
  const y = upScale(reading, room.foot - room.top);
  const names = isLines
    ? y.ticks.map((tick) => shownOn(chart.vertical, shown)(tick))
    : namesOf(reading, shown);
  const widest = Math.max(0, ...names.map((name) => widthOf(name, TEXT)));
  const limit = isLines ? widest : (room.right - room.left) * WIDEST_NAMES;
  const turned = chart.vertical.title === "" ? 0 : LINE;
  const left = room.left + turned + Math.min(widest, limit) + 2 * TICK;
  const foot = room.foot - LINE - (chart.horizontal.title === "" ? 0 : LINE) - TICK;
  const x = acrossScale(reading, room.right - left, shownOn(chart.horizontal, shown));
  // half a number stands out beyond the last mark
  const right = room.right - widthOf(shownOn(chart.horizontal, shown)(x.max), TEXT) / 2;
  const box = { width: Math.max(1, right - left), height: Math.max(1, foot - room.top) };
  const middle = room.top + box.height / 2;
  const marks = isLines ? lineMarks(reading, x, y, box) : barMarks(reading, x, box);
  const nothing = label("No numbers to draw", {
    x: box.width / 2,
    y: box.height / 2,
    "text-anchor": "middle",
    fill: ink(CHART_QUIET),
  });
  return [
    ...titleAt(chart.horizontal, { x: left + box.width / 2, y: room.foot - TEXT / 3 }),
    ...titleAt(chart.vertical, {
      transform: `translate(${(room.left + TEXT).toFixed(1)} ${middle.toFixed(1)}) rotate(-90)`,
    }),
    node("g", { transform: `translate(${left.toFixed(1)} ${room.top.toFixed(1)})` }, [
      ...below(x, box, !isLines, shownOn(chart.horizontal, shown)),
      ...beside(names, isLines ? y.ticks.map((tick) => 1 - share(y, tick)) : undefined, box, limit),
      // a drawing within the drawing: nothing of it shows beyond its edges
      node(
        "svg",
        { width: box.width, height: box.height, overflow: "hidden" },
        marks.length > 0 ? marks : [nothing],
      ),
      node("path", {
        d: `M0 0V${box.height.toFixed(1)}H${box.width.toFixed(1)}`,
        fill: "none",
        stroke: ink(CHART_QUIET),
      }),
    ]),
  ];
}

function upScale({ chart, series }: ChartReading, height: number): Scale {
  const drawn = chart.series.flatMap((each, index) => (lookOf(each) ? numbersIn(series[index] ?? []) : []));
  return scaleOf(drawn, chart.vertical, { steps: height / APART_UP });
}

/** As many marks as their numbers, seen beside one another, leave room for. */
function acrossScale(reading: ChartReading, width: number, shown: (value: number) => string): Scale {
  const { chart, categories } = reading;
  const isLines = chart.kind === "lines";
  const numbers = isLines ? numbersIn(categories) : barsOf(reading).flatMap(({ from, to }) => [from, to]);
  const inSteps = (apart: number) =>
    scaleOf(numbers, chart.horizontal, { steps: width / apart, fromZero: !isLines });
  const { min, max } = inSteps(APART_ACROSS);
  return inSteps(Math.max(APART_ACROSS, TEXT + widthOf(shown(min), TEXT), TEXT + widthOf(shown(max), TEXT)));
}

const numbersIn = (values: readonly CellValue[]) => values.flatMap((value) => numberIn(value) ?? []);

const shownOn =
  ({ format = "General" }: ChartAxis, shown: Shown) =>
  (value: number) =>
    shown(value, format);

function namesOf({ chart, categories }: ChartReading, shown: Shown): string[] {
  const ofNumber = shownOn(chart.vertical, shown);
  return categories.map((value) => (typeof value === "number" ? ofNumber(value) : String(value ?? "")));
}

const titleAt = ({ title }: ChartAxis, place: SvgNode["attributes"]): SvgNode[] =>
  title === "" ? [] : [label(title, { ...place, "text-anchor": "middle", fill: ink(CHART_QUIET) })];

/** Numbers below, with lines up where bars are to be measured by them. */
function below(
  x: Scale,
  { width, height }: Box,
  lines: boolean,
  shown: (value: number) => string,
): SvgNode[] {
  return x.ticks.flatMap((tick) => {
    const at = share(x, tick) * width;
    const top = lines ? 0 : height;
    return [
      node("line", { x1: at, x2: at, y1: top, y2: height, stroke: ink(CHART_GRID) }),
      node("line", { x1: at, x2: at, y1: height, y2: height + TICK, stroke: ink(CHART_QUIET) }),
      label(shown(tick), {
        x: at,
        y: height + TICK + TEXT,
        "text-anchor": "middle",
        fill: ink(CHART_QUIET),
      }),
    ];
  });
}

/** Numbers at their heights, with lines across; or names, one in the middle of each bar's room. */
function beside(names: readonly string[], heights: readonly number[] | undefined, box: Box, limit: number) {
  const room = box.height / Math.max(1, names.length);
  // where there is no room for every name, every second or third
  const every = heights ? 1 : Math.ceil(TEXT / room);
  return names.flatMap((name, index): SvgNode[] => {
    if (index % every !== 0) return [];
    const at = heights ? heights[index]! * box.height : room * (index + 0.5);
    const attributes = { x: -2 * TICK, y: at + TEXT / 3, "text-anchor": "end", fill: ink(CHART_QUIET) };
    const line = node("line", { x1: 0, x2: box.width, y1: at, y2: at, stroke: ink(CHART_GRID) });
    return [...(heights ? [line] : []), label(cut(name, limit + 1, TEXT), attributes)];
  });
}

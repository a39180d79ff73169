/**
 * The lines and bars of a chart. Cells without a number are left out: a line is broken there, a bar has no length.
 */
import { CHART_BAR_GAP, CHART_LINE_WEIGHT, lookOf } from "../../workbook/chart-looks";
import type { CellValue, ChartSeries } from "../../workbook/data";
import type { ChartReading } from "./chart-cells";
import { numberIn, share, type Scale } from "./chart-scale";
import { node, type SvgNode } from "./svg";

export interface Box {
  readonly width: number;
  readonly height: number;
}

const PIXELS_PER_POINT = 96 / 72;
export const LINE_WIDTH = CHART_LINE_WEIGHT * PIXELS_PER_POINT;
const DASHES = { dashes: "9 5", dots: "2 4" } as const;
const hex = (color: string) => `#${color}`;

/** How a series' line is drawn, in the chart and in its legend. */
export function stroke(series: ChartSeries): SvgNode["attributes"] {
  const look = lookOf(series);
  if (!look) return { stroke: "none" };
  return {
    stroke: hex(look.color),
    "stroke-width": LINE_WIDTH,
    ...(look.dash && { "stroke-dasharray": DASHES[look.dash] }),
  };
}

/** How a series' bars are filled, in the chart and in its legend. */
export function fill(series: ChartSeries): SvgNode["attributes"] {
  const look = lookOf(series);
  if (!look) return { fill: "none" };
  return { fill: hex(look.color), ...(look.edge !== undefined && { stroke: hex(look.edge) }) };
}

type Point = readonly [x: number, y: number];

/** Runs of neighbouring points that have both numbers. */
function runs(categories: readonly CellValue[], values: readonly CellValue[]): Point[][] {
  const all: Point[][] = [];
  let run: Point[] = [];
  values.forEach((value, index) => {
    const [x, y] = [numberIn(categories[index]), numberIn(value)];
    if (x !== undefined && y !== undefined) run.push([x, y]);
    else run = [];
    if (run.length === 1) all.push(run);
  });
  return all;
}

export function lineMarks(
  { chart, categories, series }: ChartReading,
  x: Scale,
  y: Scale,
  box: Box,
): SvgNode[] {
  const at = ([px, py]: Point) => [share(x, px) * box.width, (1 - share(y, py)) * box.height] as const;
  return chart.series.flatMap((each, index) => {
    const look = lookOf(each);
    if (!look) return [];
    return runs(categories, series[index] ?? []).map((run) => {
      const places = run.map(at);
      const [[cx, cy] = [0, 0]] = places;
      // a line of one point would not be seen
      if (run.length === 1) return node("circle", { cx, cy, r: LINE_WIDTH, fill: hex(look.color) });
      const points = places.map((place) => place.map((each) => each.toFixed(1)).join(",")).join(" ");
      return node("polyline", { points, fill: "none", ...stroke(each) });
    });
  });
}

/** A bar from one number to another, beside or behind the others of its category. */
interface Bar {
  readonly series: number;
  readonly category: number;
  readonly from: number;
  readonly to: number;
}

export function barsOf({ chart, categories, series }: ChartReading): Bar[] {
  const stacked = chart.kind === "stackedBars";
  return categories.flatMap((_, category) => {
    const reached = { up: 0, down: 0 };
    return chart.series.flatMap((_each, index): Bar[] => {
      const length = numberIn(series[index]?.[category]);
      if (length === undefined) return [];
      if (!stacked) return [{ series: index, category, from: 0, to: length }];
      const side = length < 0 ? "down" : "up";
      const from = reached[side];
      reached[side] += length;
      return [{ series: index, category, from, to: reached[side] }];
    });
  });
}

export function barMarks(reading: ChartReading, x: Scale, box: Box): SvgNode[] {
  const { chart, categories } = reading;
  const beside = chart.kind === "stackedBars" ? 1 : chart.series.length;
  const band = box.height / Math.max(1, categories.length);
  const breadth = band / (beside + CHART_BAR_GAP);
  const within = (value: number) => Math.min(1, Math.max(0, share(x, value))) * box.width;
  return barsOf(reading).flatMap(({ series, category, from, to }) => {
    const each = chart.series[series];
    const [left, right] = [within(Math.min(from, to)), within(Math.max(from, to))];
    if (!each || !lookOf(each) || right <= left) return [];
    const place = chart.kind === "stackedBars" ? 0 : series;
    const top = band * category + (breadth * CHART_BAR_GAP) / 2 + breadth * place;
    return [node("rect", { x: left, y: top, width: right - left, height: breadth, ...fill(each) })];
  });
}

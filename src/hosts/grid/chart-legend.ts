/**
 * The legend under a chart: each drawn series with a piece of its line or a patch of its shade, in as many rows as it
 * takes.
 */
import { lookOf } from "../../workbook/chart-looks";
import type { ChartData, ChartSeries } from "../../workbook/data";
import { fill, stroke } from "./chart-marks";
import { cut, label, widthOf } from "./chart-text";
import { node, type SvgNode } from "./svg";

const LINE_SAMPLE = 28;
const PATCH = 11;
const GAP = 5;
const APART = 16;

export interface Legend {
  readonly nodes: readonly SvgNode[];
  readonly height: number;
}

interface Entry {
  readonly series: ChartSeries;
  readonly text: string;
  readonly width: number;
}

export function legendOf({ kind, series }: ChartData, width: number, size: number): Legend {
  const sample = kind === "lines" ? LINE_SAMPLE : PATCH;
  const line = size * 1.5;
  const entries = series
    .filter((each) => lookOf(each))
    .map((each): Entry => {
      const text = cut(each.title, width - sample - GAP, size);
      return { series: each, text, width: sample + GAP + widthOf(text, size) };
    });
  const rows = inRows(entries, width);
  const nodes = rows.flatMap((row, index) => {
    const taken = row.reduce((sum, each) => sum + each.width, 0) + APART * (row.length - 1);
    const middle = line * (index + 0.5);
    let x = (width - taken) / 2;
    return row.flatMap((entry) => {
      const left = x;
      x += entry.width + APART;
      return [
        kind === "lines"
          ? node("line", { x1: left, x2: left + sample, y1: middle, y2: middle, ...stroke(entry.series) })
          : node("rect", {
              x: left,
              y: middle - sample / 2,
              width: sample,
              height: sample,
              ...fill(entry.series),
            }),
        label(entry.text, { x: left + sample + GAP, y: middle + size / 3 }),
      ];
    });
  });
  return { nodes, height: rows.length * line };
}

function inRows(entries: readonly Entry[], width: number): Entry[][] {
  const rows: Entry[][] = [];
  let taken = 0;
  for (const entry of entries) {
    const row = rows.at(-1);
    if (row && taken + APART + entry.width <= width) {
      row.push(entry);
      taken += APART + entry.width;
    } else {
      rows.push([entry]);
      taken = entry.width;
    }
  }
  return rows;
}

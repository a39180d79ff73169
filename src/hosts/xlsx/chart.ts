/**
 * Charts as the file stores them: the program's own, drawn from the cells whenever it opens the file.
 */
import type { SheetChart } from "hucre/xlsx";
import {
  CHART_BAR_GAP,
  CHART_GRID,
  CHART_INK,
  CHART_LINE_WEIGHT,
  CHART_PAPER,
  CHART_QUIET,
  CHART_TEXT_SIZE,
  CHART_TITLE_SIZE,
  hasLegend,
  legendName,
  lookOf,
  type SeriesLook,
} from "../../workbook/chart-looks";
import { areaAddress, type ChartAxis, type ChartData, type ChartSeries } from "../../workbook/data";
import { FONT } from "../../workbook/styles";
import { legalText, storedText } from "./text";

type FileSeries = SheetChart["series"][number];
type FileAxis = NonNullable<NonNullable<SheetChart["axes"]>["y"]>;

const DASHES = { dashes: "dash", dots: "sysDot" } as const;
const UPWARDS = -90;

/** `own`: the sheet that it lies on. */
export function fileChart(chart: ChartData, own: string): SheetChart {
  const { row, column, lastRow, lastColumn } = chart.place;
  return {
    ...(chart.kind === "lines" ? linesOf(chart) : barsOf(chart)),
    title: legalText(chart.title),
    altText: legalText(chart.description),
    series: chart.series.map((series) => fileSeries(chart, series, own)),
    anchor: { from: { row, col: column }, to: { row: lastRow + 1, col: lastColumn + 1 } },
    ...looks,
    legend: hasLegend(chart) && "bottom",
  };
}

const looks = {
  titleFontSize: CHART_TITLE_SIZE,
  titleFontFamily: FONT,
  titleColor: CHART_INK,
  titleBold: true,
  legendFontSize: CHART_TEXT_SIZE,
  legendFontFamily: FONT,
  legendFontColor: CHART_INK,
  chartSpaceFillColor: CHART_PAPER,
  chartSpaceBorderColor: CHART_GRID,
} as const;

function linesOf({ horizontal, vertical }: ChartData) {
  // labels stay at the edges where numbers fall below 0
  const x = { ...numbersAxis(horizontal), tickLblPos: "low" } as const;
  const y = { ...numbersAxis(vertical, UPWARDS), tickLblPos: "low", gridlines: { major: true } } as const;
  return { type: "scatter", axes: { x, y } } as const;
}

function barsOf({ kind, horizontal, vertical }: ChartData) {
  // the library's x is the axis of the categories; read downwards, it would leave the values' axis on top
  const words = fileAxis(vertical, UPWARDS);
  const x = { ...words, reverse: true, tickLblPos: "low", majorTickMark: "none" } as const;
  const y = { ...numbersAxis(horizontal), crosses: "max", gridlines: { major: true } } as const;
  const stacked = kind === "stackedBars";
  return {
    type: "bar",
    barGrouping: stacked ? "stacked" : "clustered",
    overlap: stacked ? 100 : 0,
    gapWidth: CHART_BAR_GAP * 100,
    axes: { x, y },
  } as const;
}

const numbersAxis = (axis: ChartAxis, turned?: number) => ({
  ...fileAxis(axis, turned),
  scale: { min: axis.min, max: axis.max },
});

function fileAxis({ title, format = "General" }: ChartAxis, axisTitleRotation?: number): FileAxis {
  return {
    title: legalText(title),
    axisTitleRotation,
    axisTitleFontSize: CHART_TEXT_SIZE,
    axisTitleFontFamily: FONT,
    axisTitleColor: CHART_QUIET,
    labelFontSize: CHART_TEXT_SIZE,
    labelFontFamily: FONT,
    labelColor: CHART_QUIET,
    numberFormat: { formatCode: legalText(format) },
    // unsaid, both would be crosses
    majorTickMark: "out",
    minorTickMark: "none",
  };
}

/** The look of bars is put in afterwards: the library knows no bar without a fill and none with another edge. */
function fileSeries({ kind, categories }: ChartData, series: ChartSeries, own: string): FileSeries {
  const cells = {
    name: storedText(legendName(series)),
    values: legalText(areaAddress(series.values, own)),
    categories: legalText(areaAddress(categories, own)),
  };
  if (kind !== "lines") return cells;
  const look = lookOf(series);
  return {
    ...cells,
    ...(look && { color: look.color, stroke: strokeOf(look) }),
    marker: { symbol: "none" },
  };
}

const strokeOf = ({ dash }: SeriesLook) => ({ width: CHART_LINE_WEIGHT, dash: dash && DASHES[dash] });

/**
 * Excel's own charts, drawn from the cells. Excel offers no description for them to be read out, so the title stands
 * alone there.
 */
import {
  CHART_BAR_GAP,
  CHART_GRID,
  CHART_INK,
  CHART_LINE_WEIGHT,
  CHART_TEXT_SIZE,
  CHART_TITLE_SIZE,
  hasLegend,
  legendName,
  lookOf,
  type SeriesLook,
} from "../../workbook/chart-looks";
import {
  cellAddress,
  type Area,
  type ChartAxis,
  type ChartData,
  type ChartSeries,
  type SheetData,
} from "../../workbook/data";
import { FONT } from "../../workbook/styles";
import { rangeAt, rectangleAddress } from "./areas";
import { costOf, SHEET_COST, textBytes, type Pieces } from "./sizes";

const TYPES = {
  lines: "XYScatterLinesNoMarkers",
  bars: "BarClustered",
  stackedBars: "BarStacked",
} as const;
const DASHES = { dashes: "Dash", dots: "RoundDot" } as const;
const hex = (color: string) => `#${color}`;

/** Measured: most settings are not made for every kind. Words come in addition. */
const [CHART, SERIES] = [5_450, 1_800];

function chartCost({ title, series, categories, horizontal, vertical }: ChartData): number {
  const words = textBytes([title, horizontal, vertical, series.map((each) => each.title)]);
  // another sheet is fetched by its name for each of its areas
  const areas = [...series.map(({ values }) => values), ...series.map(() => categories), series[0]?.values];
  const elsewhere = areas.flatMap((area) => area?.sheet ?? []).map((sheet) => costOf(1, 0, sheet));
  return SHEET_COST + CHART + SERIES * series.length + words + elsewhere.reduce((sum, each) => sum + each, 0);
}

export function* addCharts(sheet: Excel.Worksheet, { charts }: SheetData): Pieces {
  for (const [index, chart] of charts.entries()) {
    yield chartCost(chart);
    addChart(sheet, chart, `Chart ${index + 1}`);
  }
}

function addChart(sheet: Excel.Worksheet, data: ChartData, name: string): void {
  const [first, ...others] = data.series;
  if (!first) return;
  // one column or row makes one series, whatever Excel takes its cells for; the others are added by name
  const { values } = first;
  const by = values.column === values.lastColumn ? "Columns" : "Rows";
  const chart = sheet.charts.add(TYPES[data.kind], areaOf(sheet, values), by);
  chart.name = name;
  const { row, column, lastRow, lastColumn } = data.place;
  chart.setPosition(cellAddress(row, column), cellAddress(lastRow, lastColumn));
  chart.format.font.set({ name: FONT, size: CHART_TEXT_SIZE, color: hex(CHART_INK) });

  const series = chart.series.getItemAt(0);
  series.name = legendName(first);
  if (data.kind !== "lines") series.gapWidth = CHART_BAR_GAP * 100;
  if (data.kind === "stackedBars") series.overlap = 100;
  setSeries(sheet, series, first, data);
  for (const each of others) setSeries(sheet, chart.series.add(legendName(each)), each, data);

  chart.title.text = data.title;
  chart.title.format.font.set({ size: CHART_TITLE_SIZE, bold: true });
  chart.legend.visible = hasLegend(data);
  if (hasLegend(data)) chart.legend.position = "Bottom";
  setAxes(chart.axes, data);
}

function setSeries(
  sheet: Excel.Worksheet,
  series: Excel.ChartSeries,
  data: ChartSeries,
  { kind, categories }: ChartData,
): void {
  series.setValues(areaOf(sheet, data.values));
  series.setXAxisValues(areaOf(sheet, categories));
  const look = lookOf(data);
  if (kind === "lines") {
    setLine(series.format.line, look);
    return;
  }
  if (look) series.format.fill.setSolidColor(hex(look.color));
  else series.format.fill.clear();
  if (look?.edge === undefined) series.format.line.clear();
  else series.format.line.color = hex(look.edge);
}

function setLine(line: Excel.ChartLineFormat, look: SeriesLook | undefined): void {
  if (!look) {
    line.clear();
    return;
  }
  const lineStyle = look.dash ? DASHES[look.dash] : "Continuous";
  line.set({ color: hex(look.color), weight: CHART_LINE_WEIGHT, lineStyle });
}

function setAxes({ categoryAxis, valueAxis }: Excel.ChartAxes, { kind, horizontal, vertical }: ChartData) {
  // labels stay at the edge where numbers fall below 0
  categoryAxis.tickLabelPosition = "Low";
  if (kind === "lines") {
    setAxis(categoryAxis, horizontal);
    setAxis(valueAxis, vertical);
    valueAxis.tickLabelPosition = "Low";
    categoryAxis.majorGridlines.visible = false;
  } else {
    setTitle(categoryAxis, vertical);
    setAxis(valueAxis, horizontal);
    // every bar is named, though room be scarce
    categoryAxis.tickLabelSpacing = 1;
    categoryAxis.reversePlotOrder = true;
    // read downwards, the categories would take the values' axis to the top
    categoryAxis.position = "Maximum";
  }
  valueAxis.majorGridlines.visible = true;
  valueAxis.majorGridlines.format.line.color = hex(CHART_GRID);
}

function setAxis(axis: Excel.ChartAxis, data: ChartAxis): void {
  setTitle(axis, data);
  if (data.format !== undefined) axis.numberFormat = data.format;
  if (data.min !== undefined) axis.minimum = data.min;
  if (data.max !== undefined) axis.maximum = data.max;
}

function setTitle({ title }: Excel.ChartAxis, { title: text }: ChartAxis): void {
  if (text === "") title.visible = false;
  else title.text = text;
}

function areaOf(sheet: Excel.Worksheet, area: Area): Excel.Range {
  const of = area.sheet === undefined ? sheet : sheet.context.workbook.worksheets.getItem(area.sheet);
  return rangeAt(of, rectangleAddress(area));
}

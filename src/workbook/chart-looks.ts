/**
 * How charts look, once for every host. Series differ by dash and by shade, so that they are told apart in greyscale.
 */
import type { ChartData, ChartSeries } from "./data";

export interface SeriesLook {
  /** RRGGBB. */
  readonly color: string;
  /** Of a line; none is a whole one. */
  readonly dash?: "dashes" | "dots";
  /** Round a bar, where its own shade would hardly stand out from the paper. */
  readonly edge?: string;
}

export const CHART_INK = "1F1F1F";
export const CHART_QUIET = "595959";
export const CHART_GRID = "D9D9D9";
export const CHART_PAPER = "FFFFFF";

/** Points. */
export const CHART_TITLE_SIZE = 11;
export const CHART_TEXT_SIZE = 9;
export const CHART_LINE_WEIGHT = 2;
/** Between two bars, as a share of a bar's breadth. */
export const CHART_BAR_GAP = 0.5;

export const seriesLooks: Readonly<Record<Exclude<ChartSeries["look"], "gap">, SeriesLook>> = {
  solid: { color: CHART_INK },
  dashed: { color: CHART_QUIET, dash: "dashes" },
  dotted: { color: CHART_QUIET, dash: "dots" },
  dark: { color: CHART_QUIET },
  light: { color: "BFBFBF", edge: CHART_QUIET },
};

/** Nothing for what takes room but is not drawn. */
export const lookOf = ({ look }: ChartSeries): SeriesLook | undefined =>
  look === "gap" ? undefined : seriesLooks[look];

/** A single series is named by the title. */
export const hasLegend = ({ series }: ChartData): boolean => series.filter((each) => lookOf(each)).length > 1;

/**
 * What the legend says. Programs disagree on which number a series of lying bars has there, so a gap's entry is not
 * taken out: without fill and with a blank for a name nothing of it is seen.
 */
export const legendName = (series: ChartSeries): string => (lookOf(series) ? series.title : " ");

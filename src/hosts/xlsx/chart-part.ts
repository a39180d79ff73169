/**
 * What the library takes no option for in a chart's part: light lines across, bars without a fill or with an edge,
 * a name for every bar.
 */
import { CHART_GRID, lookOf } from "../../workbook/chart-looks";
import type { ChartData, ChartSeries, SheetData } from "../../workbook/data";

const inked = (color: string) => `<a:solidFill><a:srgbClr val="${color}"/></a:solidFill>`;
const thin = (color: string) => `<a:ln w="9525">${inked(color)}</a:ln>`;
const LIGHT_LINES = `<c:majorGridlines><c:spPr>${thin(CHART_GRID)}</c:spPr></c:majorGridlines>`;
const NO_EDGE = "<a:ln><a:noFill/></a:ln>";

/** Where a series' look belongs: after its number, its order and its name. */
const HEADS = /<c:ser><c:idx val="(\d+)"\/><c:order val="\d+"\/>(?:<c:tx><c:v>[^<]*<\/c:v><\/c:tx>)?/g;

function lookXml(series: ChartSeries): string {
  const look = lookOf(series);
  return (look ? inked(look.color) : "<a:noFill/>") + (look?.edge === undefined ? NO_EDGE : thin(look.edge));
}

const withLooks =
  ({ kind, series }: ChartData) =>
  (xml: string) =>
    xml
      .replace(/<c:majorGridlines\/>|<c:majorGridlines><\/c:majorGridlines>/g, LIGHT_LINES)
      // unsaid, names are left out where room is scarce
      .replace("<c:noMultiLvlLbl", '<c:tickLblSkip val="1"/>$&')
      .replace(HEADS, (head, index: string) => {
        const each = series[Number(index)]!;
        // the library itself draws lines
        return kind === "lines" && lookOf(each) ? head : `${head}<c:spPr>${lookXml(each)}</c:spPr>`;
      });

/** The edits by part; charts are numbered from 1 through all sheets. */
export function chartEdits(sheets: readonly SheetData[]): Record<string, (xml: string) => string> {
  const charts = sheets.flatMap((sheet) => sheet.charts);
  return Object.fromEntries(
    charts.map((chart, index) => [`xl/charts/chart${index + 1}.xml`, withLooks(chart)]),
  );
}

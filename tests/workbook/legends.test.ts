/**
 * Which charts have a legend and what it says, and that series are told apart without colour.
 */
import { hasLegend, legendName, lookOf, seriesLooks } from "../../src/workbook/chart-looks";
import type { ChartData, ChartSeries } from "../../src/workbook/data";

const area = { row: 0, column: 0, lastRow: 1, lastColumn: 0 };
const seriesOf = (look: ChartSeries["look"]): ChartSeries => ({ title: `of ${look}`, values: area, look });
const chart = (...looks: readonly ChartSeries["look"][]): ChartData => ({
  ...{ kind: "stackedBars", title: "t", description: "d", categories: area, place: area },
  ...{ horizontal: { title: "h" }, vertical: { title: "v" } },
  series: looks.map(seriesOf),
});

test.each<[string, ChartSeries["look"][], boolean]>([
  ["two series", ["solid", "dashed"], true],
  ["one, which the title names", ["dark"], false],
  ["one behind a gap, which is not seen", ["gap", "dark"], false],
  ["two behind a gap", ["gap", "dark", "light"], true],
  ["none", [], false],
])("a legend for %s", (_name, looks, wanted) => expect(hasLegend(chart(...looks))).toBe(wanted));

test("a gap has no look, and a blank in the legend, which some programs would not take empty", () => {
  expect(lookOf(seriesOf("gap"))).toBeUndefined();
  expect(legendName(seriesOf("gap"))).toBe(" ");
  expect(legendName(seriesOf("light"))).toBe("of light");
});

test("lines differ by dash, bars by shade; a bar nearly as light as paper has an edge", () => {
  expect(lookOf(seriesOf("light"))).toBe(seriesLooks.light);
  const { solid, dashed, dotted, dark, light } = seriesLooks;
  expect([solid.dash, dashed.dash, dotted.dash]).toEqual([undefined, "dashes", "dots"]);
  expect(dark.color).not.toBe(light.color);
  expect(light.edge).toBe(dark.color);
});

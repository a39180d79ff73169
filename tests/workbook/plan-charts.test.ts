/**
 * The charts of a plan are drawn from the cells that hold what they say.
 */
import { DEFAULT_SPREAD, expectedPressure, pressureRange } from "../../src/cellar/carbonation";
import { wineOf } from "../../src/cellar/batch/plan-tirage";
import type { ChartData } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import { valuesIn } from "../support/sheet-cells";
import { situations } from "../support/situations";

const batches = situations();
const sheetOf = (index: number) => planSheet(batches[index]!.inputs, batches[index]!.plan, []);

const chartsOf = (index: number) => {
  const sheet = sheetOf(index);
  const [pressure, money] = sheet.charts as [ChartData, ChartData];
  return { sheet, pressure, money };
};

test("pressure against temperature: expected, low, high and the rating, 0 to 30 °C", () => {
  batches.forEach(({ inputs, plan }, index) => {
    const { sheet, pressure } = chartsOf(index);
    const celsius = valuesIn(sheet, pressure.categories).map(Number);
    expect(celsius).toEqual([0, 5, 10, 15, 20, 25, 30]);
    const fill = { ...wineOf(inputs), dose: plan.tirage.dose };
    const ranges = celsius.map((each) => pressureRange(fill, each, DEFAULT_SPREAD));
    const rating = inputs.tirage.glassRating_bar ?? 0;
    expect(pressure.series.map(({ title, values }) => [title, valuesIn(sheet, values)])).toEqual([
      ["Expected", celsius.map((each) => expectedPressure(fill, each))],
      ["Low", ranges.map(({ low }) => low)],
      ["High", ranges.map(({ high }) => high)],
      ["Glass maker's rating (0: none given)", celsius.map(() => rating)],
    ]);
    expect([pressure.kind, pressure.horizontal.min, pressure.horizontal.max, pressure.vertical.min]).toEqual([
      ...["lines", 0, 30, 0],
    ]);
    for (const { values } of pressure.series)
      for (const cell of sheet.cells.filter(({ row }) => row === values.row).slice(1))
        expect(cell.formula).toBeDefined();
  });
  // with a rating and without
  const ratings = batches.map(({ inputs }) => inputs.tirage.glassRating_bar);
  expect([ratings.includes(null), ratings.some((each) => each !== null)]).toEqual([true, true]);
});

test("where the money goes: every part of the cost with its name, and together they are the total", () => {
  batches.forEach(({ plan: { costs } }, index) => {
    const { sheet, money } = chartsOf(index);
    const [series] = money.series;
    expect([money.kind, money.series.length, money.horizontal.min]).toEqual(["bars", 1, 0]);
    const labels = valuesIn(sheet, money.categories);
    const amounts = valuesIn(sheet, series!.values).map(Number);
    expect(amounts).toHaveLength(labels.length);
    expect([labels[0], amounts[0]]).toEqual(["Base wine", costs.baseWine]);
    expect(new Set(labels).size).toBe(labels.length);
    const sum = amounts.reduce((all, each) => all + each, 0);
    expect(Math.abs(sum - costs.total)).toBeLessThan(1e-9 * Math.max(1, costs.total));
  });
});

test("they lie beside the tables, over no cell that holds anything, and not over each other", () => {
  const { sheet, pressure, money } = chartsOf(0);
  for (const { place } of [pressure, money]) {
    const covered = sheet.cells.filter(
      ({ row, column, value }) =>
        row >= place.row &&
        row <= place.lastRow &&
        column >= place.column &&
        column <= place.lastColumn &&
        value !== "" &&
        value !== null,
    );
    expect(covered).toEqual([]);
    expect(place.lastRow - place.row).toBeGreaterThanOrEqual(8);
    expect([place.column, place.lastColumn]).toEqual([5, 10]);
    expect(sheet.columnWidths.length).toBeGreaterThan(place.lastColumn);
  }
  for (const { description } of [pressure, money]) expect(description).toMatch(/^[A-Z].{20,}\.$/);
  const apart = pressure.place.lastRow < money.place.row || money.place.lastRow < pressure.place.row;
  expect(apart).toBe(true);
});

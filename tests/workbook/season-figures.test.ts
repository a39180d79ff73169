/**
 * Every figure of a season's totals and orders is in its sheet, by its name, as a formula with the module's result.
 */
import { orderLines, orderOf } from "../../src/cellar/season/orders";
import { seasonTotals } from "../../src/cellar/season/season";
import { seasonBook } from "../../src/workbook/book";
import { sampleBatches } from "../support/samples";
import { cellNamed } from "../support/sheet-cells";

const batches = sampleBatches();
const season = seasonBook(batches)[0]!;
const expectFigure = (name: string, wanted: unknown) => {
  const { value, formula } = cellNamed(season, name) ?? {};
  expect([name, value, formula !== undefined]).toEqual([name, wanted, true]);
};

test("totals", () => {
  const totals = seasonTotals(batches);
  expectFigure("season_total_volume_hL", totals.volumeHl);
  expectFigure("season_total_sugar_kg", totals.sugarKg);
  expectFigure("season_total_bottles", totals.filled);
  expectFigure("season_total_saleable", totals.saleable);
  expectFigure("season_total_cost", totals.cost);
  expectFigure("season_total_perBottle", totals.perBottle);
  expectFigure("season_total_worst", totals.worst);
  expectFigure("season_currency", totals.currency);
});

test("orders, line by line", () => {
  const lines = orderLines(batches.map(({ inputs }) => inputs.batch.bottle_mL));
  expect(lines.length).toBeGreaterThan(10);
  for (const line of lines) {
    const order = orderOf(line, batches);
    const name = (what: string) =>
      ["season_order", line.material, ...(line.sizeMl === null ? [] : [line.sizeMl]), what].join("_");
    for (const key of ["needed", "pack", "packs", "packsAlone", "saved", "cost", "first"] as const)
      expectFigure(name(key), order[key]);
  }
});

test("each batch has a line with its name, its day and its worst check", () =>
  batches.forEach(({ inputs, plan }, index) => {
    expectFigure(`season_${index + 1}_name`, inputs.batch.name);
    expectFigure(`season_${index + 1}_cellar_bar`, plan.tirage.pressures.cellar.expected);
    expectFigure(`season_${index + 1}_hottest_bar`, plan.tirage.pressures.hottest.high);
    expectFigure(`season_${index + 1}_perBottle`, plan.costs.perBottle);
    expectFigure(`season_${index + 1}_currency`, inputs.batch.currency);
  }));

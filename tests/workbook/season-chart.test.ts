/**
 * The bars of a season, from tirage to release: which cells they are drawn from, how far they go and where they lie;
 * and what of the sheet is printed.
 */
import { serialFromIso } from "../../src/cellar/ageing";
import { seasonSheet } from "../../src/workbook/season/sheet";
import { sampleBatches } from "../support/samples";
import { linkedTo, placeOf, rowSaying } from "../support/season-cells";
import { valuesIn } from "../support/sheet-cells";

const plans = sampleBatches().map(linkedTo);
const sheet = seasonSheet(plans, []);
const dates = plans.map(({ plan }) => plan.dates);

/** As many batches as asked for, all of them the first but for their number. */
const many = (count: number) =>
  seasonSheet(
    Array.from({ length: count }, (_, index) => {
      const [{ inputs, ...rest }] = plans as [(typeof plans)[number]];
      return {
        ...rest,
        inputs: { ...inputs, batch: { ...inputs.batch, name: `Oxlip Hill lot ${index + 1}` } },
      };
    }),
    [],
  );

test("a bar for each batch: from its tirage so many days on the lees, then at rest until its release", () => {
  expect(sheet.charts).toHaveLength(1);
  const [{ kind, categories, series }] = sheet.charts as [(typeof sheet.charts)[number]];
  expect(kind).toBe("stackedBars");
  expect(valuesIn(sheet, categories)).toEqual(plans.map(({ inputs }) => inputs.batch.name));
  expect(series.map(({ values }) => valuesIn(sheet, values))).toEqual([
    dates.map(({ tirage }) => tirage),
    dates.map(({ tirage, disgorging }) => disgorging - tirage),
    dates.map(({ disgorging, release }) => release - disgorging),
  ]);
  // what lies before the tirage is not drawn, and the two parts are told apart
  const [before, ...parts] = series.map(({ look }) => look);
  expect(before).toBe("gap");
  expect(parts).not.toContain("gap");
  expect(new Set(parts).size).toBe(2);
});

test("the axis goes from the first day of the first month to a month beyond the last release", () => {
  const { horizontal } = sheet.charts[0]!;
  // the first of the three is filled on 31 March 2026
  const first = plans.map(({ inputs }) => inputs.batch.tirageDate).sort()[0];
  expect([first, horizontal.min]).toEqual(["2026-03-31", serialFromIso("2026-03-01")]);
  expect(horizontal.max).toBe(Math.max(...dates.map(({ release }) => release)) + 31);
});

test.each([
  [40, 40],
  [41, 40],
])("of %d batches the first %d at most are drawn, and it is said that there are more", (count, drawn) => {
  const season = many(count);
  const [{ categories, series, title }] = season.charts as [(typeof season.charts)[number]];
  const names = Array.from({ length: drawn }, (_, index) => `Oxlip Hill lot ${index + 1}`);
  expect(valuesIn(season, categories)).toEqual(names);
  expect(series.map(({ values }) => valuesIn(season, values).length)).toEqual([drawn, drawn, drawn]);
  expect(title.includes(`first ${drawn} batches`)).toBe(count > drawn);
});

test.each([1, 3, 40, 41])(
  "the chart of %d batches lies over blank cells, with a row for each bar",
  (count) => {
    const season = many(count);
    const { place } = season.charts[0]!;
    expect(valuesIn(season, place).filter((value) => value !== null && value !== "")).toEqual([]);
    expect(place.lastRow - place.row + 1).toBeGreaterThan(Math.min(count, 40));
    // below the table of the batches, above the calendar
    expect(place.row).toBeGreaterThan(placeOf(season, "season_total_cost").row);
    expect(place.lastRow).toBeLessThan(rowSaying(season, "Work month by month"));
    expect(place.lastColumn).toBeGreaterThan(place.column);
  },
);

test("printed are the tables as far as the order, all their columns, and not the workings", () => {
  const { row, column, lastRow, lastColumn } = sheet.printArea!;
  expect([row, column]).toEqual([0, 0]);
  const orders = sheet.names.filter(({ name }) => name.startsWith("season_order_"));
  const printed = sheet.names.filter(({ name }) => /^season_(\d+|total|month|months|order)_/.test(name));
  expect(orders.length).toBeGreaterThan(0);
  expect(lastRow).toBeGreaterThan(Math.max(...printed.map((each) => each.row)));
  expect(lastRow).toBeLessThan(rowSaying(sheet, "How the calendar comes about"));
  expect(lastColumn).toBeGreaterThanOrEqual(Math.max(...printed.map((each) => each.column)));
  expect(sheet.first).toBe(true);
});

/**
 * The calendar of a season, month by month, held against the calculation module; what is added up and what is not; and
 * which plan each line is read from.
 */
import { seasonMonths } from "../../src/cellar/season/calendar";
import { seasonSheet } from "../../src/workbook/season/sheet";
import { sampleBatches } from "../support/samples";
import {
  lineOf,
  linkedTo,
  namedCell,
  placeOf,
  seasonOf,
  valueOf,
  workedBatch,
} from "../support/season-cells";

const batches = [...sampleBatches(), workedBatch()];
const sheet = seasonOf(batches);
const WORK = ["tirageHl", "filled", "riddling", "disgorging", "released", "hours"] as const;
const MONEY = ["toPay", "interest"] as const;

describe("the calendar", () => {
  const months = seasonMonths(batches);

  test("has a line for each month, by the month's number", () => {
    expect(months.length).toBeGreaterThan(12);
    months.forEach((month, index) => {
      for (const key of [...WORK, ...MONEY, "tiedUp"] as const)
        expect([index, key, valueOf(sheet, `season_month_${index + 1}_${key}`)]).toEqual([
          index,
          key,
          month[key],
        ]);
      const { row } = placeOf(sheet, `season_month_${index + 1}_filled`);
      expect(lineOf(sheet, row, 1)).toEqual([month.date]);
    });
    expect(sheet.names.some(({ name }) => name.startsWith(`season_month_${months.length + 1}_`))).toBe(false);
  });

  test("adds the months up, but not the money that is tied up in one and in the next", () => {
    for (const key of [...WORK, ...MONEY])
      expect(valueOf(sheet, `season_months_${key}`)).toBeCloseTo(
        months.reduce((sum, month) => sum + month[key], 0),
        6,
      );
    expect(valueOf(sheet, "season_months_filled")).toBe(
      batches.reduce((sum, { plan }) => sum + plan.tirage.bottles, 0),
    );
    expect(sheet.names.map(({ name }) => name)).not.toContain("season_months_tiedUp");
  });

  test("in two currencies has the work and no money", () => {
    const two = [batches[0]!, workedBatch({ batch: { currency: "CHF" } })];
    const season = seasonOf(two);
    seasonMonths(two).forEach((month, index) => {
      const at = (key: string) => valueOf(season, `season_month_${index + 1}_${key}`);
      expect(WORK.map(at)).toEqual(WORK.map((key) => month[key]));
      expect([...MONEY, "tiedUp"].map(at)).toEqual(["", "", ""]);
    });
    expect(MONEY.map((key) => valueOf(season, `season_months_${key}`))).toEqual(["", ""]);
    expect(valueOf(season, "season_notShown")).toBe("");
    expect(valueOf(season, "season_months_hours")).toBeGreaterThan(0);
  });

  // without interest and storage only the finishing, 40 h at 20, and the duty, 13 400 · 0.1, are paid at the release
  test.each([
    [119, 0, 0],
    [120, 1, 40 * 20 + 13_400 * 0.1],
  ])("of %d months leaves out %d batches' release and what it costs", (all, beyond, missing) => {
    const season = seasonOf([
      workedBatch({
        lees: { lees_months: all - 3, rest_months: 3 },
        costs: { interest_pct: 0, storage_perBottleMonth: 0 },
      }),
    ]);
    expect(valueOf(season, "season_beyond")).toBe(beyond);
    expect(valueOf(season, "season_notShown")).toBeCloseTo(missing, 6);
  });
});

describe("cells of the plans", () => {
  test("of the tenth batch are read from the tenth plan", () => {
    const plans = Array.from({ length: 11 }, (_, index) => ({
      ...linkedTo(batches[0]!),
      sheet: `Plan ${index + 1}`,
    }));
    const season = seasonSheet(plans, []);
    expect(namedCell(season, "season_10_bottles").formula).toMatch(/^'Plan 10'!/);
  });

  test("that a plan lacks are told with the plan's sheet and the cell's name", () => {
    const linked = linkedTo(batches[0]!);
    const places = new Map([...linked.places].filter(([name]) => name !== "plan_release"));
    expect(() => seasonSheet([{ ...linked, places }], [])).toThrow(
      new RegExp(`${linked.sheet}.*no cell named plan_release`),
    );
  });
});

/**
 * Every sheet of a season in the grid's engine: recalculated and held against the calculation module in every cell.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import type { SheetData } from "../../src/workbook/data";
import { seasonBook } from "../../src/workbook/book";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { differences, rawValues, withoutResults } from "../support/recalculated";
import { inputsOf, sampleFiles, sampleInputs, sampleJson } from "../support/samples";

let grid: HeadlessGrid;
let host: GridHost;
beforeEach(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
});
afterEach(() => grid.dispose());

async function recalculated(sheets: readonly SheetData[]): Promise<string[]> {
  const done = grid.settled();
  await host.write({ sheets: sheets.map(withoutResults) });
  await done;
  return sheets.flatMap((sheet) => differences(sheet, rawValues(grid, sheet.name)));
}

const batch = (inputs: ReturnType<typeof inputsOf>) => ({ inputs, plan: planBatch(inputs) });

test("the three sample batches and their season", async () => {
  const sheets = seasonBook(sampleFiles.map((file) => batch(sampleInputs(file))));
  expect(sheets.map(({ name }) => name.split(" ")[0])).toEqual([
    "Season",
    ...sampleFiles.flatMap(() => ["Plan", "What-if", "Register"]),
    "Notes",
  ]);
  const formulas = sheets.flatMap(({ cells }) => cells.filter(({ formula }) => formula !== undefined));
  expect(formulas.length).toBeGreaterThan(3000);
  expect(await recalculated(sheets)).toEqual([]);
});

type Json = ReturnType<typeof sampleJson>;
const changed = (file: string, change: (batch: Json) => void) => {
  const json = sampleJson(file);
  change(json);
  return batch(inputsOf(json));
};

test("what was found out on the way: readings of every state, actual figures, hours by the rate, stock held back", async () => {
  const found = changed("oxlip-hill-brut.json", (json) => {
    json.readings = {
      r1: { date: "2026-05-01", pressure_bar: 1.2, at_C: 12 },
      r2: { date: "2026-05-20", pressure_bar: 1.21, at_C: 12 },
      r3: { date: "2026-06-10", pressure_bar: 3.4, at_C: 12.5 },
      r4: { date: "", pressure_bar: 5.15, at_C: 12 },
      r5: { date: "2026-09-01", pressure_bar: 5.3, at_C: 27 },
      r6: { date: "2026-09-20", pressure_bar: 6.9, at_C: 12 },
    };
    json.riddling = { bottlesPerHour: 5200, turnsPerDay: 2, days: 30, places: 504 };
    json.costs!.riddling_hours = null;
    json.costs!.heldBack_bottles = 120;
    json.actual = {
      bottlesFilled: 7900,
      bottlesBroken: 60,
      bottlesDisgorged: 7840,
      bottlesFinished: 7800,
      tirageSugar_kg: 149.5,
      pressure_bar: 4.1,
      pressureAt_C: 11,
      sugar_gL: 8.8,
      alcohol_vol: 11.9,
      cost: 41_000,
    };
  });
  const states = Object.values(found.plan.readings).map(({ state }) => state);
  expect(states).toEqual(["still working", "stuck", "still working", "finished", "stuck", "too high"]);
  expect(await recalculated(seasonBook([found]))).toEqual([]);
});

test("a season in two currencies, with packs that differ", async () => {
  const one = changed("oxlip-hill-brut.json", (json) => {
    json.batch!.currency = "CHF";
    json.materials!.corks = { spare_pct: 0, pack: 700, price: 0.3 };
  });
  const sheets = seasonBook([one, batch(sampleInputs("oxlip-hill-rose.json"))]);
  const totals = sheets[0]!.cells.filter(({ value }) => value === "several currencies");
  expect(totals).toHaveLength(1);
  expect(await recalculated(sheets)).toEqual([]);
});

describe("what is changed after the season was written", () => {
  const FILES = ["oxlip-hill-brut.json", "oxlip-hill-rose.json"];
  let sheets: readonly SheetData[];
  beforeEach(async () => {
    sheets = seasonBook(FILES.map((file) => batch(sampleInputs(file))));
    const done = grid.settled();
    await host.write({ sheets });
    await done;
  });
  const PLAN = "Plan · Oxlip Hill Brut 2025";
  async function type(name: string, value: string | number | null): Promise<void> {
    const { row, column } = sheets
      .find((sheet) => sheet.name === PLAN)!
      .names.find((each) => each.name === name)!;
    const done = grid.settled();
    const cell = grid.api.getActiveWorkbook()!.getSheetByName(PLAN)!.getRange(row, column);
    if (value === null) cell.clearContent();
    else cell.setValue(value);
    await done;
  }
  async function shown(sheet: string, name: string): Promise<unknown> {
    const found = (await host.sheetsNaming(name)).find((each) => each.name.startsWith(sheet))!;
    return found.cells.get(name)!.value;
  }

  test("a plan with nothing left to sell is a stop, in the plan and in the season", async () => {
    await type("costs_heldBack_bottles", 9000);
    expect(await shown("Plan", "plan_check_forSale")).toBe("stop");
    expect(await shown("Season", "season_total_worst")).toBe("stop");
  });

  test("a plan that is gone is a stop in the season", async () => {
    const book = grid.api.getActiveWorkbook()!;
    const done = grid.settled();
    book.deleteSheet(book.getSheetByName(PLAN)!);
    grid.api.getFormula().executeCalculation();
    await done;
    expect(await shown("Season", "season_total_worst")).toBe("stop");
  });

  test("a bottle size that has no line in the orders is counted", async () => {
    expect(await shown("Season", "season_unlistedSizes")).toBe(0);
    await type("batch_bottle_mL", 1500);
    expect(await shown("Season", "season_unlistedSizes")).toBe(1);
    await type("batch_bottle_mL", 375);
    expect(await shown("Season", "season_unlistedSizes")).toBe(0);
  });

  test("months and money still hold all of it, or say what they do not", async () => {
    await type("lees_lees_months", 20);
    expect(await shown("Season", "season_beyond")).toBe(0);
    expect(Math.abs(Number(await shown("Season", "season_notShown")))).toBeLessThan(0.1);
    await type("lees_lees_months", 60);
    expect(await shown("Season", "season_beyond")).toBe(1);
    expect(Number(await shown("Season", "season_notShown"))).toBeGreaterThan(1000);
  });

  test("a currency of its own takes the sums away", async () => {
    await type("batch_currency", "CHF");
    expect(await shown("Season", "season_currency")).toBe("several currencies");
    expect(await shown("Season", "season_total_cost")).toBe("");
  });

  test("a pressure on one line and its temperature on another are no reading, and are to be mended", async () => {
    await type("readings_r1_pressure_bar", 4.2);
    await type("readings_r2_at_C", 12);
    expect(await shown("Plan", "plan_check_readingsInputs")).toBe("stop");
  });

  test("the size that is as planned is said to be so, whichever line it stands in", async () => {
    const name = "whatif_size_5_pct";
    const whatIf = sheets.find((sheet) => sheet.name.startsWith("What-if · Oxlip Hill Brut"))!;
    const { row, column } = whatIf.names.find((each) => each.name === name)!;
    const sheet = grid.api.getActiveWorkbook()!.getSheetByName(whatIf.name)!;
    expect(sheet.getRange(row, 0).getRawValue()).toBe("As planned");
    const done = grid.settled();
    sheet.getRange(row, column).setValue(130);
    await done;
    expect(sheet.getRange(row, 0).getRawValue()).toBe("");
  });
});

test("the portable season is the module's too in this engine", async () => {
  const batches = sampleFiles.map((file) => batch(sampleInputs(file)));
  const portable = seasonBook(batches, "portable");
  const done = grid.settled();
  await host.write({ sheets: portable.map(withoutResults) });
  await done;
  expect(seasonBook(batches).flatMap((sheet) => differences(sheet, rawValues(grid, sheet.name)))).toEqual([]);
});

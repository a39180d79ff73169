/**
 * What the pane does in the workbook, in the grid's engine: a batch written, read back from its sheet alone, changed,
 * and gathered in a season.
 */
import type { BatchInputs } from "../../src/cellar/batch/fields";
import { planBatch } from "../../src/cellar/batch/plan";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import {
  compareWith,
  plansIn,
  readPlan,
  updatePlan,
  writeBatch,
  writeSeason,
} from "../../src/taskpane/workbook-actions";
import { planSheet } from "../../src/workbook/plan/sheet";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { inputsOf, sampleFiles, sampleInputs } from "../support/samples";

let grid: HeadlessGrid;
let host: GridHost;
beforeEach(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
});
afterEach(() => grid.dispose());

async function write(inputs: BatchInputs): Promise<string> {
  const done = grid.settled();
  const { said } = await writeBatch(host, inputs, planBatch(inputs));
  await done;
  return said;
}
const cellsOf = async (sheet: string) =>
  (await host.sheetsNaming("plan_worst")).find(({ name }) => name === sheet)!.cells;
async function type(sheet: string, name: string, value: string | number | null): Promise<void> {
  const { row, column } = (await cellsOf(sheet)).get(name)!;
  const done = grid.settled();
  const cell = grid.api.getActiveWorkbook()!.getSheetByName(sheet)!.getRange(row, column);
  if (value === null) cell.clearContent();
  else cell.setValue(value);
  await done;
}
const PLAN = "Plan · Oxlip Hill Brut 2025";
const brut = () => sampleInputs("oxlip-hill-brut.json");

test.each(sampleFiles)("%s: what is read back from the sheet is what was written", async (file) => {
  const inputs = sampleInputs(file);
  await write(inputs);
  const [sheet] = await plansIn(host);
  expect(inputsOf((await readPlan(host, sheet!.name)).batch)).toEqual(inputs);
  expect((await compareWith(host, sheet!.name, inputs)).changes).toEqual([]);
});

test("a batch brings its sheets, the notes only once", async () => {
  expect(await write(brut())).toContain(`sheet “${PLAN}”`);
  await write(sampleInputs("oxlip-hill-rose.json"));
  const names = await host.sheetNames();
  expect(names.filter((name) => name.startsWith("Notes"))).toEqual(["Notes"]);
  expect(names.filter((name) => name.startsWith("Register"))).toHaveLength(2);
  // the same batch again: nothing is written over
  await write(brut());
  expect(await host.sheetNames()).toContain(`${PLAN} (2)`);
});

test("names that look like formulas, numbers or markup come back as they were typed", async () => {
  const names = ["=1+1", "@x", "+7", "-A1", "2025", "<b>Brut</b>", "Crémant “été”", "'quoted"];
  const inputs = names.map((name) => ({ ...brut(), batch: { ...brut().batch, name, lot: name } }));
  const taken: string[] = [];
  const sheets = inputs.map((each) => {
    const sheet = planSheet(each, planBatch(each), taken);
    taken.push(sheet.name);
    return sheet;
  });
  await host.write({ sheets });
  for (const [index, { name }] of sheets.entries()) {
    const { batch } = inputsOf((await readPlan(host, name)).batch);
    expect([batch.name, batch.lot]).toEqual([names[index], names[index]]);
  }
});

describe("bringing a plan up to date", () => {
  const wanted = (): BatchInputs => ({
    ...brut(),
    baseWine: { ...brut().baseWine, volume_hL: 55, totalSO2_mgL: null },
    batch: { ...brut().batch, tirageDate: "2026-05-02" },
    readings: { ...brut().readings, r1: { date: "2026-06-01", pressure_bar: 2.5, at_C: 12 } },
  });

  test("shows what would change, changes that and nothing else", async () => {
    await write(brut());
    const before = await cellsOf(PLAN);
    const { changes } = await compareWith(host, PLAN, wanted());
    expect(changes.map(({ said }) => said)).toEqual([
      "Batch: Tirage date: 2026-04-14 → 2026-05-02",
      "Base wine: 60 → 55 hL",
      "Base wine: Total SO2: 62 → blank mg/L",
      "Pressure readings: r1, Day of the reading: blank → 2026-06-01",
      "Pressure readings: r1, Excess pressure read: blank → 2.5 bar",
      "Pressure readings: r1, Temperature of the bottle: blank → 12 °C",
    ]);
    const done = grid.settled();
    expect(await updatePlan(host, PLAN, wanted(), changes)).toContain("Changed 6 inputs");
    await done;
    expect(inputsOf((await readPlan(host, PLAN)).batch)).toEqual(wanted());
    const after = await cellsOf(PLAN);
    const sugar = after.get("plan_tirageSugar_kg")!.value as number;
    expect(sugar / planBatch(wanted()).tirage.sugarKg).toBeCloseTo(1, 9);
    const touched = [...after].filter(([name, { value }]) => before.get(name)!.value !== value);
    const inputsTouched = touched.filter(([name]) => !name.startsWith("plan_")).map(([name]) => name);
    expect(inputsTouched.sort()).toEqual([
      "baseWine_totalSO2_mgL",
      "baseWine_volume_hL",
      "batch_tirageDate",
      "readings_r1_at_C",
      "readings_r1_date",
      "readings_r1_pressure_bar",
    ]);
  });

  test("is refused where the sheet has changed since it was shown", async () => {
    await write(brut());
    const { changes } = await compareWith(host, PLAN, wanted());
    await type(PLAN, "baseWine_volume_hL", 58);
    await expect(updatePlan(host, PLAN, wanted(), changes)).rejects.toThrow(/has changed meanwhile/);
    expect((await cellsOf(PLAN)).get("baseWine_volume_hL")!.value).toBe(58);
  });

  test("tells of a formula that would go", async () => {
    await write(brut());
    await type(PLAN, "baseWine_volume_hL", "=30+29");
    const { changes } = await compareWith(host, PLAN, brut());
    expect(changes).toMatchObject([{ from: 59, to: 60, calculated: true }]);
  });

  test("of a sheet that is gone says so", async () => {
    await write(brut());
    grid.api.getActiveWorkbook()!.deleteSheet(grid.api.getActiveWorkbook()!.getSheetByName(PLAN)!);
    await expect(readPlan(host, PLAN)).rejects.toThrow(`There is no plan “${PLAN}” any more`);
  });
});

describe("the season", () => {
  test("gathers the plans that are there and follows them", async () => {
    for (const file of sampleFiles) await write(sampleInputs(file));
    const done = grid.settled();
    expect(await writeSeason(host)).toContain("sheet “Season”, from 3 plans");
    await done;
    expect((await host.sheetNames())[0]).toBe("Season");
    await type(PLAN, "baseWine_volume_hL", 70);
    const [season] = await host.sheetsNaming("season_total_volume_hL");
    expect(season!.cells.get("season_total_volume_hL")!.value).toBe(70 + 7.5 + 18);
    const changed = planBatch({ ...brut(), baseWine: { ...brut().baseWine, volume_hL: 70 } });
    expect(season!.cells.get("season_1_bottles")!.value).toBe(changed.tirage.bottles);
  });

  test("is not written where a plan is to be mended, and names plan and field", async () => {
    await write(brut());
    await type(PLAN, "baseWine_alcohol_vol", 85);
    const before = await host.sheetNames();
    await expect(writeSeason(host)).rejects.toThrow(
      `“${PLAN}”: baseWine.alcohol_vol is 85; give 5 to 16 % vol`,
    );
    expect(await host.sheetNames()).toEqual(before);
  });

  test("needs a plan", async () => {
    await expect(writeSeason(host)).rejects.toThrow("There is no plan in the workbook yet");
  });
});

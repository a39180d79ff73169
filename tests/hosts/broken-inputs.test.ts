/**
 * What people do to a sheet after it was written: cells cleared, texts pasted over numbers, words mistyped. No check
 * that stands on such a cell may end as "fine", and the sheet's worst verdict must show it.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import type { SheetData } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { inputsOf, sampleJson } from "../support/samples";

let grid: HeadlessGrid;
let host: GridHost;
let sheet: SheetData;

/** A batch that is fine all through, with a glass rating close to its pressure. */
beforeAll(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
  const batch = sampleJson("oxlip-hill-brut.json");
  batch.tirage!.glassRating_bar = 9;
  batch.dosage!.stock_L = 90;
  const inputs = inputsOf(batch);
  const plan = planBatch(inputs);
  expect(plan.worst).toBe("fine");
  sheet = planSheet(inputs, plan, []);
  const done = grid.settled();
  await host.write({ sheets: [sheet] });
  await done;
});
afterAll(() => grid.dispose());

const placeOf = (name: string) => {
  const found = sheet.names.find((each) => each.name === name);
  if (!found) throw new Error(`no cell is named ${name}`);
  return found;
};
const cellAt = (name: string) => {
  const { row, column } = placeOf(name);
  return grid.api.getActiveWorkbook()!.getSheetByName(sheet.name)!.getRange(row, column);
};
const shown = (name: string) => cellAt(name).getRawValue();

type Given = string | number;

/** Changes cells, gives what the sheet then says, and puts them back. */
async function after<T>(changes: Readonly<Record<string, Given>>, look: () => T): Promise<T> {
  const before = Object.keys(changes).map((name) => [name, { ...cellAt(name).getCellData() }] as const);
  const changed = grid.settled();
  for (const [name, value] of Object.entries(changes)) {
    if (value === "") cellAt(name).clearContent();
    else
      cellAt(name).setValue(
        typeof value === "string" ? { v: value, t: 1, f: null } : { v: value, t: 2, f: null },
      );
  }
  await changed;
  const seen = look();
  const restored = grid.settled();
  for (const [name, data] of before)
    cellAt(name).setValue({ v: data?.v ?? null, t: data?.t ?? null, f: data?.f ?? null });
  await restored;
  return seen;
}

const verdicts = (check: string) => () => [shown(`plan_check_${check}`), shown("plan_worst")];

test("untouched, every check is fine", () => expect(shown("plan_worst")).toBe("fine"));

describe("a cleared, pasted or mistyped cell is never fine", () => {
  test.each<[string, Readonly<Record<string, Given>>, string]>([
    ["a rating with its unit typed in", { tirage_glassRating_bar: "8 bar" }, "hottest"],
    ["a rating with a decimal comma as text", { tirage_glassRating_bar: "8,0" }, "hottest"],
    [
      "the hottest temperature cleared, with a low rating",
      { tirage_hottest_C: "", tirage_glassRating_bar: 8 },
      "hottest",
    ],
    [
      "the hottest day typed below a warm cellar",
      { tirage_hottest_C: 2, tirage_cellar_C: 25, tirage_glassRating_bar: 8 },
      "hottest",
    ],
    ["rules cleared, with too much SO2", { batch_rules: "", baseWine_totalSO2_mgL: 400 }, "totalSo2"],
    ["rules mistyped, with too much SO2", { batch_rules: "EUR", baseWine_totalSO2_mgL: 400 }, "totalSo2"],
    ["rules mistyped and the bottle size", { batch_rules: "EUR", batch_bottle_mL: 700 }, "bottleSize"],
    ["a stock typed with its unit", { dosage_stock_L: "90 L" }, "stock"],
    ["the kind of dosage cleared", { dosage_kind: "" }, "dosageInputs"],
    ["the kind of dosage mistyped", { dosage_kind: "sugar with wine" }, "dosageInputs"],
    ["the goal mistyped", { tirage_goal: "presure" }, "tirageInputs"],
    ["the temperature of the pressure cleared", { tirage_pressureAt_C: "" }, "tirageInputs"],
    ["the sugar of the base wine cleared", { baseWine_sugar_gL: "" }, "dryness"],
    ["the reserve cleared", { dosage_reserve_pct: "" }, "dosageInputs"],
    ["a price as text", { materials_bottles_price: "0,62" }, "prices"],
    ["a pack size cleared", { materials_bottles_pack: "" }, "prices"],
    ["a date as text", { batch_tirageDate: "14 April" }, "batchInputs"],
    ["the designation mistyped", { batch_designation: "Champaign" }, "leesMonths"],
    ["months as text", { lees_lees_months: "long" }, "leesMonths"],
    ["the sweetness term mistyped", { dosage_term: "bruut" }, "term"],
    ["a rating that no bottle has", { tirage_glassRating_bar: 900 }, "tirageInputs"],
    ["a pressure gained at disgorging", { disgorging_pressureLost_bar: -3 }, "disgorgingInputs"],
    ["a bath colder than any", { disgorging_neckBath_C: -400 }, "disgorgingInputs"],
    ["half a month", { lees_lees_months: 18.5 }, "leesInputs"],
    ["a rate beyond reason", { tirage_yeast_gHL: 1e9 }, "tirageInputs"],
    ["storage that pays", { costs_storage_perBottleMonth: -1 }, "costsInputs"],
    ["a price below nothing", { materials_bottles_price: -1 }, "materialsInputs"],
    ["a language that is not known", { batch_language: "klingon" }, "batchInputs"],
    ["a date before the calendar is right", { batch_tirageDate: 50 }, "batchInputs"],
    ["the hottest day below the cellar", { tirage_hottest_C: 5 }, "hottest"],
    ["the acidity as text", { baseWine_acidity_gL: "7,2" }, "baseWineInputs"],
  ])("%s", async (_name, changes, check) => {
    const [verdict, worst] = await after(changes, verdicts(check));
    expect(verdict).toBe("stop");
    expect(worst).toBe("stop");
  });

  test.each<[string, Readonly<Record<string, Given>>, string, string]>([
    ["no glass rating", { tirage_glassRating_bar: "" }, "hottest", "look again"],
    ["no SO2", { baseWine_totalSO2_mgL: "" }, "totalSo2", "look again"],
    ["no term", { dosage_term: "" }, "term", "look again"],
    ["no price for the base wine", { costs_baseWine_perL: "" }, "prices", "look again"],
    ["no price for labour", { costs_labour_perHour: "" }, "prices", "look again"],
    [
      "a hot store beyond the model's table",
      { tirage_hottest_C: 33, tirage_glassRating_bar: 20 },
      "modelRange",
      "look again",
    ],
    [
      "a hot store beyond the model",
      { tirage_hottest_C: 44, tirage_glassRating_bar: 30 },
      "modelRange",
      "stop",
    ],
    ["a bath that is hardly cold enough", { disgorging_neckBath_C: -5 }, "neckBath", "look again"],
    ["a bath that does not freeze the wine", { disgorging_neckBath_C: -3 }, "neckBath", "stop"],
    ["a label between the half units", { dosage_label_vol: 11.7 }, "labelAlcohol", "stop"],
    ["a stock too small for the reserve", { dosage_stock_L: 78 }, "stock", "stop"],
    ["a low end below the class", { tirage_pressure_bar: 3.5 }, "pressureClass", "look again"],
    ["hardly any pressure", { tirage_pressure_bar: 1.5 }, "pressureClass", "stop"],
    ["a size not sold in the EU", { batch_bottle_mL: 700 }, "bottleSize", "stop"],
  ])("%s", async (_name, changes, check, expected) => {
    const [verdict, worst] = await after(changes, verdicts(check));
    expect(verdict).toBe(expected);
    expect(worst).not.toBe("fine");
  });
});

test("and put back, every check is fine again", () => expect(shown("plan_worst")).toBe("fine"));

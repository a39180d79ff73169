/**
 * What-if as it is written: each size holds what the batch comes to with so many times the wine, hours and other
 * materials, the cells to be typed in have their bounds, and the grids read
 * the plan through one block of their own sheet.
 */
import { USUAL_SIZES_PCT } from "../../src/cellar/batch/what-if";
import type { BatchInputs } from "../../src/cellar/batch/fields";
import { planBatch } from "../../src/cellar/batch/plan";
import { seasonBook, type Batch } from "../../src/workbook/book";
import type { CellValue } from "../../src/workbook/data";
import { whatIfSheet } from "../../src/workbook/whatif/sheet";
import { calculatedSheets, typedOver } from "../support/calculated-sheets";
import { sampleInputs } from "../support/samples";
import { linkedTo, namedCell, placeOf, rowSaying } from "../support/season-cells";
import { cellAt, ruleNamed } from "../support/sheet-cells";
import { situations } from "../support/situations";

const inputs = sampleInputs("oxlip-hill-rose.json");
const rose: Batch = { inputs, plan: planBatch(inputs) };
const linked = linkedTo(rose);
const sheet = whatIfSheet(linked, []);
test("it is named and headed by the batch, whose name it follows", () => {
  expect(sheet.name).toMatch(/Oxlip Hill Rosé/);
  expect(sheet.name).not.toBe(linked.sheet);
  const { value, formula } = cellAt(sheet, 0, 0)!;
  expect(value).toMatch(/Oxlip Hill Rosé 2025$/);
  const name = linked.places.get("batch_name")!;
  expect(formula).toMatch(new RegExp(`'${linked.sheet}'!B${name.row + 1}\\)$`));
});

/** Wine, hours and other materials so many times as much. */
function grown(times: number): BatchInputs {
  const { baseWine, costs, materials } = inputs;
  return {
    ...inputs,
    baseWine: { ...baseWine, volume_hL: baseWine.volume_hL * times },
    costs: {
      ...costs,
      tirage_hours: costs.tirage_hours * times,
      riddling_hours: costs.riddling_hours === null ? null : costs.riddling_hours * times,
      disgorging_hours: costs.disgorging_hours * times,
      finishing_hours: costs.finishing_hours * times,
    },
    materials: {
      ...materials,
      other1: { ...materials.other1, need: materials.other1.need * times },
      other2: { ...materials.other2, need: materials.other2.need * times },
    },
  };
}

test.each(USUAL_SIZES_PCT.map((size, index) => [size, index + 1]))("at %d %% of the plan", (size, number) => {
  const at = (figure: string) => namedCell(sheet, `whatif_size_${number}_${figure}`).value;
  const { tirage, dosage, costs } = planBatch(grown(size / 100));
  expect(namedCell(sheet, `whatif_size_${number}_pct`).value).toBe(size);
  // 18 hL are planned
  expect(at("baseWine_volume_hL")).toBeCloseTo(0.18 * size, 9);
  expect(at("plan_tirageSugar_kg")).toBeCloseTo(tirage.sugarKg, 9);
  expect(at("plan_tirageLiqueur_L")).toBeCloseTo(tirage.liqueurL, 9);
  expect(at("plan_bottles")).toBe(tirage.bottles);
  expect(at("plan_dosageBatch_L")).toBeCloseTo(dosage.batchL, 9);
  expect(at("plan_cost_total")).toBeCloseTo(costs.total, 9);
  expect(at("plan_perBottle")).toBeCloseTo(costs.perBottle, 9);
});

test("above the workings stands each size that they are for", () => {
  const row = rowSaying(sheet, "Size, % of the plan");
  const heads = USUAL_SIZES_PCT.map((_, index) => cellAt(sheet, row, index + 1)!);
  expect(heads.map(({ value }) => value)).toEqual(USUAL_SIZES_PCT);
  expect(heads.map(({ formula }) => formula)).toEqual(
    USUAL_SIZES_PCT.map((_, index) => `B${placeOf(sheet, `whatif_size_${index + 1}_pct`).row + 1}`),
  );
});

test("a size of which no bottle would be for sale has no cost of one", () => {
  // all but one of the bottles of the plan are held back
  const short = whatIfSheet(linkedTo(situations()[7]!), []);
  const perBottle = USUAL_SIZES_PCT.map(
    (_, index) => namedCell(short, `whatif_size_${index + 1}_plan_perBottle`).value,
  );
  expect(perBottle.map((value) => value !== null)).toEqual(USUAL_SIZES_PCT.map((size) => size >= 100));
});

describe("what is to be typed in", () => {
  test.each([
    ["whatif_size_1_pct", { kind: "decimal", min: 1, max: 1000, allowBlank: false }],
    ["whatif_size_9_pct", { kind: "decimal", min: 1, max: 1000, allowBlank: false }],
    ["whatif_labour_pct", { kind: "decimal", min: 0, max: 100, allowBlank: false }],
    ["whatif_doseStep_gL", { kind: "decimal", max: 10, allowBlank: true }],
  ])("%s has its bounds", (name, bounds) => expect(ruleNamed(sheet, name)).toMatchObject(bounds));

  test("is every cell with a rule, and no other", () => {
    const places = (cells: readonly { row: number; column: number }[]) =>
      cells.map(({ row, column }) => `${row} ${column}`).sort();
    const inputCells = sheet.cells.filter(({ style }) => style === "input");
    expect(inputCells.length).toBeGreaterThan(USUAL_SIZES_PCT.length);
    expect(places(sheet.validations)).toEqual(places(inputCells));
    expect(inputCells.filter(({ formula }) => formula !== undefined)).toEqual([]);
  });
});

test("the grids name cells of their own sheet; the plan is read once, in the block below", () => {
  const block = rowSaying(sheet, "Taken from the plan");
  const reading = sheet.cells.filter(({ row, formula }) => row > 0 && formula?.includes("!"));
  expect(reading.filter(({ row }) => row < block)).toEqual([]);
  expect(reading.length).toBeGreaterThan(20);
  // one cell each
  const read = reading.map(({ formula }) => /'!([A-Z]+\d+)/.exec(formula!)![1]);
  expect(new Set(read).size).toBe(read.length);
  expect(cellAt(sheet, block + 1, 1)?.formula).toContain("!");
});

test("which size is the plan's own is said wherever it is typed", () => {
  const sheets = seasonBook([rose], "portable");
  const whatIf = sheets[2]!;
  const typing = { whatif_size_1_pct: 100, whatif_size_5_pct: 80, whatif_size_6_pct: null };
  const shown = calculatedSheets(
    sheets.map((each) => (each === whatIf ? typedOver(whatIf, whatIf.name, typing) : each)),
  );
  const said = (number: number): CellValue =>
    shown(whatIf.name, placeOf(whatIf, `whatif_size_${number}_pct`).row, 0) || null;
  expect([1, 2, 5, 6].map(said)).toEqual(["As planned", null, null, null]);
  expect(USUAL_SIZES_PCT[4]).toBe(100);
  expect(namedCell(whatIf, "whatif_size_5_pct").value).toBe(100);
  const { row } = placeOf(whatIf, "whatif_size_5_pct");
  expect(cellAt(whatIf, row, 0)!.value).toBe("As planned");
  // and it is at the head of its workings
  expect(shown(whatIf.name, rowSaying(whatIf, "Size, % of the plan"), 5)).toBe(80);
});

/**
 * Figures of a plan that have no names: what stands at the top, the turns of riddling, each cost by the bottle and as a
 * share, and the units of money.
 */
import { planSheet } from "../../src/workbook/plan/sheet";
import { situations } from "../support/situations";
import { cellAt, placeNamed } from "../support/sheet-cells";

const { inputs, plan } = situations()[1]!;
const sheet = planSheet(inputs, plan, []);
const rowOf = (name: string) => placeNamed(sheet, name)!.row;

test("at the top stand the figures that are asked for first, read from below", () => {
  const { tirage, dosage, costs, dates } = plan;
  const first = rowOf("plan_worst") + 1;
  const wanted = [
    ["Sugar to weigh for the tirage", tirage.sugarKg, "kg"],
    ["Bottles to have ready", tirage.bottles, "bottles"],
    ["Excess pressure at cellar temperature", tirage.pressures.cellar.expected, "bar"],
    ["Excess pressure on the hottest day, high", tirage.pressures.hottest.high, "bar"],
    ["Dosage a bottle", dosage.eachMl, "mL"],
    ["Driest sweetness term permitted", dosage.terms[0], ""],
    ["Planned disgorging", dates.disgorging, ""],
    ["Cost of a saleable bottle", costs.perBottle, "EUR"],
  ];
  const found = wanted.map((_, index) =>
    [0, 1, 2].map((column) => cellAt(sheet, first + index, column)!.value),
  );
  expect(found).toEqual(wanted);
  // each is the very cell below
  wanted.forEach((_, index) => expect(cellAt(sheet, first + index, 1)!.formula).toMatch(/^[BE]\d+$/u));
});

test("every turn of riddling has its day, its eighths and the rack's angle, in two halves side by side", () => {
  const { schedule } = plan.riddling;
  expect(schedule).toHaveLength(14);
  const heads = sheet.cells.filter(({ value }) => value === "Eighths");
  expect(heads.map(({ column }) => column)).toEqual([2, 6]);
  const first = heads[0]!.row + 1;
  schedule.forEach(({ number, date, eighths, rackDegrees }, index) => {
    const [row, column] = [first + (index % 7), index < 7 ? 0 : 4];
    const cells = [0, 1, 2, 3].map((offset) => cellAt(sheet, row, column + offset)!);
    expect(cells.map(({ value }) => value)).toEqual([number, date, eighths, rackDegrees]);
    expect(cells.map(({ formula }) => formula !== undefined)).toEqual([false, true, true, true]);
  });
  expect(cellAt(sheet, first + 7, 0)?.value).not.toBe(8);
});

test("each cost by the bottle and as a share of all, in the currency of the plan", () => {
  const { costs } = plan;
  const parts = ["baseWine", "tirageMaterials", "finishingMaterials", "storage", "duty", "total"] as const;
  for (const part of parts) {
    const row = rowOf(`plan_cost_${part}`);
    const [perBottle, share] = [cellAt(sheet, row, 3)!, cellAt(sheet, row, 4)!];
    expect([part, cellAt(sheet, row, 2)!.value]).toEqual([part, "EUR"]);
    expect([part, perBottle.value]).toEqual([part, costs[part] / costs.saleableBottles]);
    expect([part, share.value]).toEqual([part, costs[part] / costs.total]);
    expect([perBottle, share].every(({ formula }) => formula !== undefined)).toBe(true);
  }
  const unitOf = (name: string) => cellAt(sheet, rowOf(name), 2)!.value;
  expect(unitOf("costs_baseWine_perL")).toBe("EUR a litre");
  expect(unitOf("costs_duty_perL")).toBe("EUR a litre");
  expect(unitOf("costs_labour_perHour")).toBe("EUR an hour");
  expect(unitOf("costs_duty_perBottle")).toBe("EUR a bottle");
  expect(unitOf("costs_storage_perBottleMonth")).toBe("EUR a bottle, month");
});

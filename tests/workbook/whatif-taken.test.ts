/**
 * What the grids of What-if take from the plan: a blank that means something stays blank, a blank amount counts as 0,
 * and each line says which figure it is.
 */
import { optional } from "../../src/cellar/batch/field-kinds";
import { domains } from "../../src/cellar/domains";
import type { SheetData } from "../../src/workbook/data";
import { cell, iff, isBlank, mousse, operation, type Expression } from "../../src/workbook/formula";
import { addressIn, type LinkedPlan } from "../../src/workbook/linked-plan";
import type { PlanCell } from "../../src/workbook/whatif/recast";
import { whatIfSheet } from "../../src/workbook/whatif/sheet";
import { withTaken } from "../../src/workbook/whatif/taken";
import { linkedTo, rowSaying, workedBatch } from "../support/season-cells";
import { cellAt } from "../support/sheet-cells";
import { situations } from "../support/situations";

/** The line that reads this cell of the plan. */
function takenLine(sheet: SheetData, linked: LinkedPlan, name: string) {
  const address = addressIn(linked, name)!;
  const found = sheet.cells.find(
    ({ row, formula }) => row > 0 && (formula === address || formula === `IF(${address}="", "", ${address})`),
  );
  if (!found) throw new Error(`nothing reads ${name}`);
  const { row, value, formula } = found;
  const [label, unit] = [0, 2].map((column) => cellAt(sheet, row, column)?.value);
  return { value, keepsBlank: formula !== address, label, unit };
}

describe("taken from a plan in which much is left out", () => {
  const linked = linkedTo(workedBatch());
  const sheet = whatIfSheet(linked, []);
  const line = (name: string) => takenLine(sheet, linked, name);

  // the bottle size, as much as is needed, sugar itself, hours as typed
  test.each(["disgorging_filled_mL", "dosage_stock_L", "tirage_liqueur_gL", "riddling_bottlesPerHour"])(
    "a blank %s stays blank",
    (name) => expect(line(name)).toMatchObject({ value: "", keepsBlank: true }),
  );

  test.each(["tirage_yeast_gHL", "tirage_nutrient_gHL", "materials_corks_price"])(
    "a blank %s is an amount of 0",
    (name) => expect(line(name)).toMatchObject({ value: 0, keepsBlank: false }),
  );

  test.each([
    ["baseWine_alcohol_vol", 10],
    ["lees_rest_months", 3],
    ["costs_storage_perBottleMonth", 0.01],
  ])("%s is never blank, and read as it stands", (name, value) =>
    expect(line(name)).toMatchObject({ value, keepsBlank: false }),
  );

  test("the three figures of a material are told apart", () => {
    expect(line("materials_corks_spare_pct").label).toBe("Corks: spare, %");
    expect(line("materials_corks_pack").label).toBe("Corks: pack size");
    expect(line("materials_corks_price").label).toBe("Corks: price for 1");
    expect(line("materials_other2_price").label).toBe("Other 2: price for 1");
    expect(line("disgorging_filled_mL")).toMatchObject({ label: "Filled at tirage", unit: "mL" });
  });
});

describe("workings of the sizes", () => {
  const batch = situations()[1]!;
  const sheet = whatIfSheet(linkedTo(batch), []);
  // half, and the fifth size, which is the plan's own
  const line = (words: string) =>
    [1, 5].map((column) => cellAt(sheet, rowSaying(sheet, words), column)!.value);

  test("say which figure they are, with its unit, as the plan has it at its own size", () => {
    const { tirage, costs } = batch.plan;
    expect(line("Base wine, hL")[1]).toBe(batch.inputs.baseWine.volume_hL);
    expect(line("Bottles filled, bottles")[1]).toBe(tirage.bottles);
    // one of the user's own goes by its place: its name is typed, and may be typed over
    expect(line("Other 1")[1]).toBe(1300);
    expect(line("Other 1: cost")[1]).toBe(costs.lines.other1.cost);
    const { bottles } = costs.lines;
    expect([bottles.packs, bottles.cost]).toEqual([line("Bottles: packs")[1], line("Bottles: cost")[1]]);
    expect(line("Bottles, pieces")[1]).toBe(bottles.need);
  });

  test("hours that are left to be worked out are blank at every size, those typed grow with it", () => {
    expect(batch.inputs.costs.riddling_hours).toBe(null);
    expect(line("Hours at riddling, h")).toEqual(["", ""]);
    expect(line("Hours at tirage, h")).toEqual([5, 10]);
  });

  test("hours that are blank count as 0 at every size, as they do in the plan", () => {
    const bare = whatIfSheet(linkedTo(workedBatch({ costs: { tirage_hours: null } })), []);
    const row = rowSaying(bare, "Hours at tirage, h");
    expect([1, 5].map((column) => cellAt(bare, row, column)!.value)).toEqual([0, 0]);
    expect(cellAt(bare, row, 1)!.formula).not.toContain('=""');
  });
});

describe("a blank cell of the plan, by what a formula does with it", () => {
  const planCell: PlanCell = {
    name: "given",
    spec: { value: null, style: "input", name: "given", field: optional("Given", domains.doseGL) },
    row: 3,
    column: 1,
    label: "Given",
    unit: "g/L",
  };
  const taken = (formula: Expression) => {
    const rows = [{ cells: [{ value: 0, formula, style: "result" as const }] }];
    const { block } = withTaken(rows, new Map([[planCell.name, planCell]]));
    return block[0]!.cells[1]!.value;
  };
  const given = cell("given");

  test.each(["+", "-", "*", "/", "^"] as const)("beside %s it is 0", (sign) => {
    expect(taken(operation(given, sign, 2))).toBe(0);
    expect(taken(operation(2, sign, given))).toBe(0);
    // also within a function, ours or another
    expect(taken(mousse("COST.PACKS", operation(given, sign, 2), 5, 0))).toBe(0);
    expect(taken(iff(true, operation(given, sign, 2), 0))).toBe(0);
  });

  test("handed on to a function, or asked whether it is blank, it is blank", () => {
    expect(taken(given)).toBe("");
    expect(taken(mousse("COST.PACKS", given, 5, 0))).toBe("");
    expect(taken(iff(isBlank(given), 1, operation(given, "*", 2)))).toBe("");
  });

  test("that the plan does not have is an error of ours", () =>
    expect(() => taken(operation(cell("nowhere"), "+", given))).toThrow(/the plan lacks a cell/));
});

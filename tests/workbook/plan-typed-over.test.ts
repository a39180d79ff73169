/**
 * One portable plan, and other batches typed into its input cells: a spreadsheet engine calculates every cell, and
 * each must be what the calculation module plans for that batch. Limits of the checks are met on both sides.
 */
import { placedFields } from "../../src/cellar/batch/field-kinds";
import { fields } from "../../src/cellar/batch/fields";
import type { Batch } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import {
  calculatedSheets,
  differing,
  portablePlan,
  typedOver,
  type Typing,
} from "../support/calculated-sheets";
import { situations } from "../support/situations";

/** What stands in the input cells of a sheet. */
function inputsOn({ cells, names }: SheetData): Typing {
  const values = new Map(cells.map(({ row, column, value }) => [`${row} ${column}`, value]));
  const places = new Map(names.map(({ name, row, column }) => [name, `${row} ${column}`]));
  return Object.fromEntries(placedFields(fields).map(({ name }) => [name, values.get(places.get(name)!)!]));
}

/** What differs when batches are typed into a plan that was written for another; no more than can be read. */
function differences(batches: readonly Batch[]): string[] {
  const { plan, notes } = portablePlan(situations()[1]!);
  const own = batches.map(({ inputs, plan: planned }) => planSheet(inputs, planned, []));
  const typed = own.map((sheet, index) => typedOver(plan, `Plan ${index}`, inputsOn(sheet)));
  const shown = calculatedSheets([...typed, notes]);
  return own.flatMap((sheet, index) => differing(sheet, shown, `Plan ${index}`)).slice(0, 10);
}

// the quick one first: mutation testing ends with the first that fails
test("a batch at the limits, as it was written", () => expect(differences([situations()[1]!])).toEqual([]));

test("whatever batch is typed into a plan, every cell becomes that of its own plan", () =>
  expect(differences(situations())).toEqual([]));

test("the situations reach every verdict of the checks that have several", () => {
  const seen = new Map<string, Set<string>>();
  for (const { plan } of situations())
    for (const [key, { verdict }] of Object.entries(plan.checks))
      seen.set(key, (seen.get(key) ?? new Set()).add(verdict));
  const verdicts = (key: string) => [...seen.get(key)!].sort();
  for (const key of ["filled", "modelRange", "pressureClass", "neckBath", "term", "totalSo2", "hottest"])
    expect([key, verdicts(key)]).toEqual([key, ["fine", "look again", "stop"]]);
  for (const key of ["dryness", "baseAlcohol", "yeast", "termMargin"])
    expect([key, verdicts(key)]).toEqual([key, ["fine", "look again"]]);
  for (const key of ["leesMonths", "totalMonths", "room", "stock", "labelAlcohol", "bottleSize"])
    expect([key, verdicts(key)]).toEqual([key, ["fine", "stop"]]);
});

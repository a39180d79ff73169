/**
 * A portable plan that is fine all through, and what becomes of it when its cells are typed over.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import type { CellValue } from "../../src/workbook/data";
import { calculatedSheets, portablePlan, shownAs, typedOver, type Typing } from "./calculated-sheets";
import { inputsOf, sampleJson } from "./samples";

export interface TypedPlan {
  /** What a named cell shows. */
  readonly cell: (name: string) => CellValue;
  /** What a cell of another column shows in its row. */
  readonly beside: (name: string, column: number) => CellValue;
}

/** A batch that is fine all through. */
function fineSheets() {
  const batch = sampleJson("oxlip-hill-brut.json");
  batch.tirage!.glassRating_bar = 9;
  batch.dosage!.stock_L = 90;
  const inputs = inputsOf(batch);
  const { plan, notes } = portablePlan({ inputs, plan: planBatch(inputs) });
  // words beside the cells take time and nothing calculates with them
  const cells = plan.cells.filter(
    ({ formula, style, value }) => formula !== undefined || style === "input" || typeof value === "number",
  );
  return { plan: { ...plan, cells }, notes };
}

/** Everything that is typed in turn, each into the plan as it was. */
export function typedPlans(typings: readonly Typing[]): readonly TypedPlan[] {
  const { plan, notes } = fineSheets();
  const sheets = typings.map((typing, index) => typedOver(plan, `Plan ${index}`, typing));
  const shown = calculatedSheets([...sheets, notes]);
  const rows = new Map(plan.names.map(({ name, row }) => [name, row]));
  return sheets.map(({ name: sheet }) => ({
    cell: (name) => shownAs(plan, shown, sheet, name),
    beside: (name, column) => shown(sheet, rows.get(name)!, column),
  }));
}

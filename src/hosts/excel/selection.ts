/**
 * The selected cell: what stands in it, what it calls, and a formula put into it.
 */
import type { CellFormula, SelectedCell } from "../host";
import { rangeAt, untracked } from "./areas";
import { holdsFormula } from "./contents";
import { valuesOf } from "./references";

export const selectedCell = (): Promise<SelectedCell> =>
  Excel.run(async (context) => {
    const { sheet, address, range } = await active(context);
    return { sheet, address, content: String(range.formulas[0]![0]) };
  });

/** Nothing is put in where the cell has changed since it was looked at. */
export const typeFormula = ({ sheet, address, content }: SelectedCell, formula: string): Promise<void> =>
  Excel.run(async (context) => {
    const worksheet = context.workbook.worksheets.getItemOrNullObject(sheet);
    const range = rangeAt(worksheet, address).load("formulas");
    await context.sync();
    if (worksheet.isNullObject) throw new Error(`There is no sheet named "${sheet}" any more.`);
    if (String(range.formulas[0]![0]) !== content) {
      throw new Error(`${address} of "${sheet}" has changed meanwhile, so nothing was put in: try again.`);
    }
    rangeAt(worksheet, address).formulas = [[formula]];
    await context.sync();
  });

/** Tells of each cell that is selected; of those between, when someone moves fast, only the last. */
export function watchSelection(tell: (cell: CellFormula) => void): void {
  let latest = 0;
  const look = async () => {
    const mine = ++latest;
    const cell = await Excel.run(formulaSelected);
    if (mine === latest) tell(cell);
  };
  // a selection that cannot be read is no news
  const quietly = () => look().catch(() => undefined);
  void Excel.run(async ({ workbook }) => {
    workbook.onSelectionChanged.add(quietly);
    await workbook.context.sync();
  }).then(quietly, () => undefined);
}

async function formulaSelected(context: Excel.RequestContext): Promise<CellFormula> {
  const { sheet, address, range } = await active(context);
  const formula: unknown = range.formulas[0]![0];
  return {
    address,
    formula: holdsFormula(formula, range.values[0]![0]) ? String(formula) : "",
    value: range.values[0]![0] as CellFormula["value"],
    failed: range.valueTypes[0]![0] === "Error",
    valuesOf: (references) => valuesOf(sheet, references),
  };
}

async function active(context: Excel.RequestContext) {
  const range = untracked(context.workbook.getActiveCell()).load("address,formulas,values,valueTypes");
  const worksheet = range.worksheet.load("name");
  await context.sync();
  // "'Plan · Brut'!B7"
  return { sheet: worksheet.name, address: range.address.replace(/^.*!/, ""), range };
}

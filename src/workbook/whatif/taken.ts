/**
 * The cells of the plan that the grids read, once each in a block of their own. The grids' formulas then name cells of
 * their own sheet: shorter to read, and the same in every batch.
 */
import { iff, isBlank, type Expression, type Operator } from "../formula";
import type { CellSpec, Row } from "../layout";
import { text } from "../plan/rows";
import type { PlanCell } from "./recast";
import { renamed } from "./recast";

const ARITHMETIC: readonly Operator[] = ["+", "-", "*", "/", "^"];
const takenName = (name: string) => `taken ${name}`;

/** The rows with the plan's cells taken from the block, and the block. */
export function withTaken(
  rows: readonly Row[],
  planCells: ReadonlyMap<string, PlanCell>,
): { readonly rows: Row[]; readonly block: Row[] } {
  const taken = new Set<string>();
  const uses: Uses = { summed: new Set(), tested: new Set() };
  const own = new Set(rows.flatMap(({ cells }) => cells.flatMap((spec) => spec?.name ?? spec?.key ?? [])));
  const take = (name: string) => {
    if (own.has(name)) return name;
    taken.add(name);
    return takenName(name);
  };
  const rewritten = rows.map((row) => ({
    ...row,
    cells: row.cells.map((spec) => {
      if (!spec?.formula) return spec;
      noteUses(spec.formula, uses);
      return { ...spec, formula: renamed(spec.formula, take) };
    }),
  }));
  const block = [...planCells.values()]
    .filter(({ name }) => taken.has(name))
    // where a formula asks whether it is blank, that is what counts; sums stand behind such a question
    .map((each) => takenRow(each, uses.tested.has(each.name) || !uses.summed.has(each.name)));
  if (block.length !== taken.size) throw new Error("the plan lacks a cell that the grids read");
  return { rows: rewritten, block };
}

interface Uses {
  /** Beside a sign of arithmetic, where a blank counts as 0. */
  readonly summed: Set<string>;
  /** Compared, with blank text for one. */
  readonly tested: Set<string>;
}

function noteUses(expression: Expression, uses: Uses): void {
  if (expression.kind === "operation") {
    const into = ARITHMETIC.includes(expression.operator) ? uses.summed : uses.tested;
    for (const side of [expression.left, expression.right]) {
      if (side.kind === "cell") into.add(side.name);
      noteUses(side, uses);
    }
  } else if (expression.kind === "mousse" || expression.kind === "builtin") {
    for (const arg of expression.args) noteUses(arg, uses);
  }
}

/** A reference to a blank cell is 0, and would say that a choice was made. */
function takenRow({ name, spec, label, unit }: PlanCell, blankMatters: boolean): Row {
  const there: Expression = { kind: "cell", name };
  const mayBeBlank = spec.field !== undefined && spec.value === null;
  const keepsBlank = spec.field !== undefined && isOptional(spec) && blankMatters;
  const value = mayBeBlank ? (keepsBlank ? "" : 0) : spec.value;
  const cell: CellSpec = {
    key: takenName(name),
    value,
    style: "result",
    formula: keepsBlank ? iff(isBlank(there), "", there) : there,
    format: spec.format ?? "General",
  };
  return { cells: [text(labelOf(name, label), "label"), cell, text(unit, "unit")] };
}

/** A material's row holds several figures under one label. */
const OF_MATERIAL: Readonly<Record<string, string>> = {
  spare_pct: "spare, %",
  pack: "pack size",
  price: "price for 1",
};
function labelOf(name: string, label: string): string {
  const words = OF_MATERIAL[/^materials_\w+?_(spare_pct|pack|price)$/.exec(name)?.[1] ?? ""];
  return words === undefined ? label : `${label}: ${words}`;
}

const isOptional = ({ field }: CellSpec) => field?.kind === "optional" || field?.kind === "text";

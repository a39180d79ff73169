/**
 * The plan's own formulas once more with some inputs changed. Nothing is worked out in a second way: a cell that
 * depends on a changed input is written again under another name, any other is read from the plan.
 */
import { OTHER_KEYS } from "../../cellar/batch/materials";
import type { Expression } from "../formula";
import type { CellSpec, Row } from "../layout";

export interface PlanCell {
  readonly name: string;
  readonly spec: CellSpec;
  /** Its place in the plan. */
  readonly row: number;
  readonly column: number;
  /** What the plan's row says in its first column, but for a name that the user types, and the unit beside the value. */
  readonly label: string;
  readonly unit: string;
}

/** A material of the user's own is known by its place: its name may be typed over, or missing. */
const OTHERS = new Map(OTHER_KEYS.map((key, index) => [`materials_${key}_name`, `Other ${index + 1}`]));

export function namedCells(rows: readonly Row[]): ReadonlyMap<string, PlanCell> {
  const found = new Map<string, PlanCell>();
  rows.forEach(({ cells }, row) =>
    cells.forEach((spec, column) => {
      const name = spec?.name ?? spec?.key;
      if (!spec || name === undefined) return;
      const said = (at: number) => OTHERS.get(cells[at]?.name ?? "") ?? String(cells[at]?.value ?? "");
      found.set(name, { name, spec, row, column, label: said(0), unit: column === 1 ? said(2) : "" });
    }),
  );
  return found;
}

/** The cells that some results need and that change with the changed inputs, column by column of the plan. */
export function varyingCells(
  cells: ReadonlyMap<string, PlanCell>,
  results: readonly string[],
  changed: ReadonlySet<string>,
): PlanCell[] {
  const varies = new Map<string, boolean>();
  const visit = (name: string): boolean => {
    if (changed.has(name)) return true;
    const known = varies.get(name);
    if (known !== undefined) return known;
    varies.set(name, false);
    const formula = cells.get(name)?.spec.formula;
    // every one is visited, also where the first already settles it
    const answers = formula ? namesIn(formula, cells).map(visit) : [];
    const answer = answers.includes(true);
    varies.set(name, answer);
    return answer;
  };
  results.forEach(visit);
  return [...varies]
    .flatMap(([name, does]) => (does ? [cells.get(name)!] : []))
    .sort((a, b) => a.column - b.column || a.row - b.row);
}

/** Every cell that a formula reads, ranges cell by cell. */
function namesIn(expression: Expression, cells: ReadonlyMap<string, PlanCell>): string[] {
  switch (expression.kind) {
    case "cell":
      return [expression.name];
    case "range": {
      const [first, last] = [cells.get(expression.first), cells.get(expression.last)];
      if (!first || !last) throw new Error(`no cells ${expression.first} to ${expression.last}`);
      return [...cells.values()]
        .filter(({ row, column }) => column === first.column && row >= first.row && row <= last.row)
        .map(({ name }) => name);
    }
    case "mousse":
    case "builtin":
      return expression.args.flatMap((arg) => namesIn(arg, cells));
    case "operation":
      return [...namesIn(expression.left, cells), ...namesIn(expression.right, cells)];
    default:
      return [];
  }
}

/** The same formula over other cells. */
export function renamed(expression: Expression, to: (name: string) => string): Expression {
  switch (expression.kind) {
    case "cell":
      return { kind: "cell", name: to(expression.name) };
    case "range":
      return { kind: "range", first: to(expression.first), last: to(expression.last) };
    case "mousse":
    case "builtin":
      return { ...expression, args: expression.args.map((arg) => renamed(arg, to)) };
    case "operation":
      return {
        ...expression,
        left: renamed(expression.left, to),
        right: renamed(expression.right, to),
      };
    default:
      return expression;
  }
}

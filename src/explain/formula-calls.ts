/**
 * The calls of our functions in a formula, with the values that they are given: what is needed to explain a cell
 * where nobody has seen the calls being made.
 */
import { serialFromDate } from "../cellar/ageing";
import { NAMESPACE } from "./call";
import { nodesOf, readFormula, type Node } from "./formula-tree";

type Cells = readonly (readonly unknown[])[];

export type FoundCall =
  | { readonly id: string; readonly args: readonly unknown[] }
  /** Why its arguments are not known here. */
  | { readonly id: string; readonly unknown: string };

/** What has to be looked up in the sheet before a formula's calls are known; the same text once. */
export function referencesIn(formula: string): string[] {
  const tree = readFormula(formula);
  const nodes = tree ? nodesOf(tree) : [];
  return [...new Set(nodes.flatMap((node) => (node.kind === "reference" ? [node.text] : [])))];
}

/**
 * `valueOf`: the cells of a reference. `call`: the result of one of our functions, for a call within a call; undefined
 * where it refuses.
 */
export function callsIn(
  formula: string,
  valueOf: (reference: string) => Cells | undefined,
  call: (id: string, args: readonly unknown[]) => unknown,
): FoundCall[] {
  const tree = readFormula(formula);
  if (!tree) return [];
  const evaluate = evaluator(valueOf, call);
  return nodesOf(tree).flatMap((node): FoundCall[] => {
    const id = node.kind === "call" ? ownId(node.name) : undefined;
    if (node.kind !== "call" || id === undefined) return [];
    try {
      return [{ id, args: node.args.map(evaluate) }];
    } catch (error) {
      if (error instanceof NotKnown) return [{ id, unknown: error.message }];
      throw error;
    }
  });
}

const ownId = (name: string) => (name.startsWith(NAMESPACE) ? name.slice(NAMESPACE.length) : undefined);

class NotKnown extends Error {}

const isBlank = (value: unknown) => value === null || value === "";

function evaluator(
  valueOf: (reference: string) => Cells | undefined,
  call: (id: string, args: readonly unknown[]) => unknown,
): (node: Node) => unknown {
  const evaluate = (node: Node): unknown => {
    switch (node.kind) {
      case "value":
        return node.value;
      case "reference": {
        const cells = valueOf(node.text);
        if (!cells) throw new NotKnown(`${node.text} shows an error, or is no range of cells`);
        return cells.length === 1 && cells[0]!.length === 1 ? cells[0]![0] : cells;
      }
      case "negative":
        return -numberIn(evaluate(node.of));
      case "percent":
        return numberIn(evaluate(node.of)) / 100;
      case "array":
        return node.rows.map((row) => row.map(evaluate));
      case "operation":
        return operated(node.operator, evaluate(node.left), evaluate(node.right));
      case "call":
        return called(node);
      case "other":
        throw new NotKnown(`${node.text} is not read here`);
    }
  };

  function called({ name, args }: Extract<Node, { kind: "call" }>): unknown {
    const id = ownId(name);
    if (id !== undefined) {
      const result = call(id, args.map(evaluate));
      if (result === undefined) throw new NotKnown(`${name}, within it, refuses`);
      return result;
    }
    if (name === "IF") {
      const [condition, then, otherwise] = args;
      const taken = evaluate(condition!) ? then : otherwise;
      return taken === undefined ? false : evaluate(taken);
    }
    const known = BUILT_IN[name];
    if (!known) throw new NotKnown(`${name} is worked out by the spreadsheet: give it a cell of its own`);
    return known(args.map(evaluate));
  }
  return evaluate;
}

const numbersIn = (values: readonly unknown[]) =>
  values.flat(2).filter((value): value is number => typeof value === "number");

/** What our sheets put round arguments, and what is simple besides. */
const BUILT_IN: Readonly<Record<string, (args: readonly unknown[]) => unknown>> = {
  DATE: ([year, month, day]) => serialFromDate(numberIn(year), numberIn(month), numberIn(day)),
  ISNUMBER: ([value]) => typeof value === "number",
  ISBLANK: ([value]) => value === null,
  NA: () => {
    throw new NotKnown("an input is missing, so the cell has no answer");
  },
  AND: (values) => values.flat(2).every(Boolean),
  OR: (values) => values.flat(2).some(Boolean),
  NOT: ([value]) => !value,
  SUM: (values) => numbersIn(values).reduce((sum, value) => sum + value, 0),
  MIN: (values) => Math.min(...numbersIn(values)),
  MAX: (values) => Math.max(...numbersIn(values)),
  INT: ([value]) => Math.floor(numberIn(value)),
  ABS: ([value]) => Math.abs(numberIn(value)),
};

function numberIn(value: unknown): number {
  if (isBlank(value)) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (typeof value === "number") return value;
  throw new NotKnown("a text stands where a number is reckoned with");
}

function operated(operator: string, left: unknown, right: unknown): unknown {
  switch (operator) {
    case "=":
      return compared(left, right) === 0;
    case "<>":
      return compared(left, right) !== 0;
    case "<":
      return compared(left, right) < 0;
    case "<=":
      return compared(left, right) <= 0;
    case ">":
      return compared(left, right) > 0;
    case ">=":
      return compared(left, right) >= 0;
    case "&":
      return textIn(left) + textIn(right);
  }
  const [a, b] = [numberIn(left), numberIn(right)];
  const result = { "+": a + b, "-": a - b, "*": a * b, "/": a / b, "^": a ** b }[operator];
  if (result === undefined || !Number.isFinite(result)) throw new NotKnown("a division by 0, or the like");
  return result;
}

function textIn(value: unknown): string {
  if (value === null) return "";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "number" || typeof value === "string") return String(value);
  throw new NotKnown("a whole range is joined to a text");
}

/** Numbers go before texts, texts before TRUE and FALSE; capitals do not count; a blank is like its neighbour. */
function compared(left: unknown, right: unknown): number {
  if (Array.isArray(left) || Array.isArray(right)) throw new NotKnown("a whole range is compared");
  const like = (value: unknown, other: unknown) =>
    value !== null ? value : typeof other === "string" ? "" : typeof other === "boolean" ? false : 0;
  const [a, b] = [like(left, right), like(right, left)];
  if (rank(a) !== rank(b)) return rank(a) - rank(b);
  if (typeof a === "string") return a.localeCompare(b as string, undefined, { sensitivity: "accent" });
  return Number(a) - Number(b);
}

const rank = (value: unknown) => ["number", "string", "boolean"].indexOf(typeof value);

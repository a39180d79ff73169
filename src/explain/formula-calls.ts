/**
 * The calls of our functions in a formula, with the values that they are given: what is needed to explain a cell
 * where nobody has seen the calls being made.
 */
import { serialFromDate } from "../cellar/ageing";
import { NAMESPACE } from "./call";
import { nodesOf, readFormula, type Node } from "./formula-tree";
import type { Explanation } from "./types";

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
  return nodesOf(tree, (branches) => takenOf(branches, evaluate)).flatMap((node): FoundCall[] => {
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

/** The branch of an IF that counts; all of them where that is not known. */
function takenOf(
  [condition, ...branches]: readonly Node[],
  evaluate: (node: Node) => unknown,
): readonly Node[] {
  if (!condition) return branches;
  try {
    const taken = branches[isTrue(evaluate(condition)) ? 0 : 1];
    return [condition, ...(taken ? [taken] : [])];
  } catch (error) {
    if (error instanceof NotKnown) return [condition, ...branches];
    throw error;
  }
}

/** Whether a cell shows something else than the working of its one call: then that is not its working. */
export function isOtherResult(
  { formula, value }: { readonly formula: string; readonly value: unknown },
  explained: readonly Explanation[],
): boolean {
  const tree = readFormula(formula);
  const [only, ...more] = explained;
  if (tree?.kind !== "call" || ownId(tree.name) === undefined || more.length > 0) return false;
  if (only?.kind !== "working" || typeof only.result !== "number" || typeof value !== "number") return false;
  return Math.abs(only.result - value) > CLOSE * Math.max(Math.abs(only.result), Math.abs(value));
}

const CLOSE = 1e-9;

const ownId = (name: string) => (name.startsWith(NAMESPACE) ? name.slice(NAMESPACE.length) : undefined);

class NotKnown extends Error {}

function evaluator(
  valueOf: (reference: string) => Cells | undefined,
  call: (id: string, args: readonly unknown[]) => unknown,
): (node: Node) => unknown {
  const evaluate = (node: Node): unknown => {
    switch (node.kind) {
      case "value":
        return typeof node.value === "number" ? numberIn(node.value) : node.value;
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
        throw new NotKnown(`${node.text} is not read here: give it a cell of its own`);
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
      if (condition === undefined) throw new NotKnown("IF has no condition");
      const taken = isTrue(evaluate(condition)) ? then : otherwise;
      return taken === undefined ? false : evaluate(taken);
    }
    const known = BUILT_IN[name];
    if (!known) throw new NotKnown(`${name} is worked out by the spreadsheet: give it a cell of its own`);
    return known(args.map(evaluate));
  }
  return evaluate;
}

/** A blank is no, a number other than 0 is yes; a text is neither. */
function isTrue(value: unknown): boolean {
  if (value === null) return false;
  if (typeof value === "boolean" || typeof value === "number") return Boolean(value);
  throw new NotKnown("a text or a range stands where yes or no is asked");
}

/** Of ranges, only numbers count. */
const numbersIn = (values: readonly unknown[]) =>
  values.flatMap((value): number[] => {
    if (Array.isArray(value)) return (value as unknown[]).flat().filter((each) => typeof each === "number");
    return value === null ? [] : [numberIn(value)];
  });
const conditionsIn = (values: readonly unknown[]) =>
  values
    .flatMap((value) => (Array.isArray(value) ? (value as unknown[]).flat() : [value]))
    .filter((value) => value !== null)
    .map(isTrue);

/** One by one, as a whole column is more than a call takes arguments; of none at all it is 0. */
const farthest = (values: readonly unknown[], of: (one: number, other: number) => number) => {
  const [first = 0, ...rest] = numbersIn(values);
  return rest.reduce(of, first);
};

/** What our sheets put round arguments, and what is simple besides. */
const BUILT_IN: Readonly<Record<string, (args: readonly unknown[]) => unknown>> = {
  DATE: ([year, month, day]) => serialFromDate(numberIn(year), numberIn(month), numberIn(day)),
  ISNUMBER: ([value]) => typeof value === "number",
  ISBLANK: ([value]) => value === null,
  NA: () => {
    throw new NotKnown("an input is missing, so the cell has no answer");
  },
  AND: (values) => conditionsIn(values).every(Boolean),
  OR: (values) => conditionsIn(values).some(Boolean),
  NOT: ([value]) => !isTrue(value),
  SUM: (values) => numbersIn(values).reduce((sum, value) => sum + value, 0),
  MIN: (values) => farthest(values, (one, other) => Math.min(one, other)),
  MAX: (values) => farthest(values, (one, other) => Math.max(one, other)),
  INT: ([value]) => Math.floor(numberIn(value)),
  ABS: ([value]) => Math.abs(numberIn(value)),
};

function numberIn(value: unknown): number {
  if (value === null) return 0;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (typeof value === "number" && Number.isFinite(value)) return value;
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

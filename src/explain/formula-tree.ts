/**
 * A formula as a spreadsheet gives it, read into a tree: numbers, texts, references, calls and what joins them.
 */
export type Node =
  | { readonly kind: "value"; readonly value: number | string | boolean | null }
  | { readonly kind: "reference"; readonly text: string }
  | { readonly kind: "call"; readonly name: string; readonly args: readonly Node[] }
  | { readonly kind: "operation"; readonly operator: string; readonly left: Node; readonly right: Node }
  | { readonly kind: "negative" | "percent"; readonly of: Node }
  | { readonly kind: "array"; readonly rows: readonly (readonly Node[])[] }
  | { readonly kind: "other"; readonly text: string };

/** "#REF!", "Table[[#This Row],[Dose]]", "A:C", "B2#": read as one piece that is not looked into. */
const ERROR = String.raw`#[A-Z0-9\/]+[!?]?`;
const TABLE = String.raw`[\p{L}_][\p{L}\p{N}_.]*(?:\[(?:[^\[\]]|\[[^\[\]]*\])*\])|\[(?:[^\[\]]|\[[^\[\]]*\])*\]`;
const LINES = String.raw`\$?[A-Z]{1,3}:\$?[A-Z]{1,3}(?![\p{L}\p{N}_.(])|\$?\d+:\$?\d+`;
const CELL = String.raw`\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?(?![\p{L}\p{N}_.(])`;
const SHEET = String.raw`(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!`;
const TOKEN = new RegExp(
  String.raw`\s*(?:(?<text>"(?:[^"]|"")*")|(?<other>(?:'(?:[^']|'')*\[[^']*'!|(?:${SHEET})?)(?:${ERROR}|${TABLE}|${LINES}|${CELL}#)|'(?:[^']|'')+'![\p{L}_][\p{L}\p{N}_.]*(?!\())|(?<reference>(?:${SHEET})?${CELL})|(?<number>(?:\d+\.?\d*|\.\d+)(?:E[+-]?\d+)?)|(?<word>[\p{L}_\\][\p{L}\p{N}_.]*)|(?<sign><=|>=|<>|[-+*/^&=<>%(),;{}@])|(?<odd>\S))`,
  "iuy",
);

interface Token {
  readonly kind: string;
  readonly text: string;
}

const BINDING: Readonly<Record<string, number>> = {
  "=": 1,
  "<>": 1,
  "<": 1,
  "<=": 1,
  ">": 1,
  ">=": 1,
  "&": 2,
  "+": 3,
  "-": 3,
  "*": 4,
  "/": 4,
  "^": 5,
};
/** A sign before a number binds closer than a power: -2^2 is 4 in a spreadsheet. */
const SIGN_BINDING = 6;

/** Excel takes no longer formula, and no deeper one; neither ends in a stack that is too small. */
const [LONGEST, DEEPEST] = [8192, 256];

/** Undefined where it is no formula that this reads; structured references and the like are nodes of kind "other". */
export function readFormula(formula: string): Node | undefined {
  if (formula.length > LONGEST) return undefined;
  const tokens = tokensOf(formula.replace(/^=/u, ""));
  let at = 0;
  let depth = 0;
  const sign = (text: string) => {
    const is = tokens[at]?.kind === "sign" && tokens[at]!.text === text;
    if (is) at++;
    return is;
  };

  function list(end: string): Node[] {
    if (sign(end)) return [];
    const nodes: Node[] = [];
    for (;;) {
      const isBlank = [",", end].includes(tokens[at]?.text ?? "") && tokens[at]?.kind === "sign";
      nodes.push(isBlank ? { kind: "value", value: null } : expression(0));
      if (sign(end)) return nodes;
      if (!sign(",")) throw new SyntaxError(`no ${end}`);
    }
  }

  function primary(): Node {
    if (sign("-")) return { kind: "negative", of: expression(SIGN_BINDING) };
    if (sign("+")) return expression(SIGN_BINDING);
    if (sign("@")) return single(expression(SIGN_BINDING));
    if (sign("(")) {
      const inner = expression(0);
      if (!sign(")")) throw new SyntaxError("no )");
      return inner;
    }
    if (sign("{")) return array();
    const token = tokens[at++];
    switch (token?.kind) {
      case "text":
        return { kind: "value", value: token.text.slice(1, -1).replaceAll('""', '"') };
      case "number":
        return { kind: "value", value: Number(token.text) };
      case "reference":
        return { kind: "reference", text: token.text };
      case "word": {
        const name = token.text.toUpperCase();
        if (sign("(")) return { kind: "call", name, args: list(")") };
        if (name === "TRUE" || name === "FALSE") return { kind: "value", value: name === "TRUE" };
        return { kind: "reference", text: token.text };
      }
      case "other":
      case "odd":
        return { kind: "other", text: token.text };
      default:
        throw new SyntaxError("a value is missing");
    }
  }

  function array(): Node {
    const rows: Node[][] = [[]];
    while (!sign("}")) {
      if (sign(";")) rows.push([]);
      else if (!sign(",")) rows.at(-1)!.push(expression(0));
    }
    return { kind: "array", rows };
  }

  function expression(least: number): Node {
    if (++depth > DEEPEST) throw new SyntaxError("too deep");
    const node = joined(least);
    depth--;
    return node;
  }

  function joined(least: number): Node {
    let left = primary();
    for (;;) {
      if (sign("%")) {
        left = { kind: "percent", of: left };
        continue;
      }
      const token = tokens[at];
      const binding = token?.kind === "sign" ? BINDING[token.text] : undefined;
      if (token === undefined || binding === undefined || binding <= least) return left;
      at++;
      left = { kind: "operation", operator: token.text, left, right: expression(binding) };
    }
  }

  try {
    const tree = expression(0);
    return at === tokens.length ? tree : undefined;
  } catch (error) {
    if (error instanceof SyntaxError) return undefined;
    throw error;
  }
}

function tokensOf(formula: string): Token[] {
  const tokens: Token[] = [];
  const text = formula.trimEnd();
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const groups = TOKEN.exec(text)?.groups ?? {};
    const found = Object.entries(groups).find(([, part]) => part !== undefined);
    if (!found) break;
    tokens.push({ kind: found[0], text: found[1] });
  }
  return tokens;
}

/** "@" takes one cell of a range, by where the formula stands; before anything else it changes nothing. */
const single = (node: Node): Node =>
  node.kind === "reference" && node.text.includes(":") ? { kind: "other", text: `@${node.text}` } : node;

/** Every node of a tree, the outer ones first. `taken`: which arguments of an IF are looked into. */
export function nodesOf(
  node: Node,
  taken: (args: readonly Node[]) => readonly Node[] = (args) => args,
): Node[] {
  const all = (nodes: readonly Node[]) => nodes.flatMap((each) => nodesOf(each, taken));
  switch (node.kind) {
    case "call":
      return [node, ...all(node.name === "IF" ? taken(node.args) : node.args)];
    case "operation":
      return [node, ...all([node.left, node.right])];
    case "negative":
    case "percent":
      return [node, ...all([node.of])];
    case "array":
      return [node, ...all(node.rows.flat())];
    default:
      return [node];
  }
}

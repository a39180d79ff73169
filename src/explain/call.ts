/**
 * A call as text, and back: what a cell says, or an example in a doc comment.
 */
import { serialFromDate } from "../cellar/ageing";
import { isBlank } from "../cellar/cells";

export const NAMESPACE = "MOUSSE.";

/** "MOUSSE.TIRAGE.SUGAR(50, 24)"; blanks at the end are left out. */
export function callText(id: string, args: readonly unknown[]): string {
  const words = args.map(argumentText);
  while (words.at(-1) === "") words.pop();
  return `${NAMESPACE}${id}(${words.join(", ")})`;
}

function argumentText(value: unknown): string {
  if (isBlank(value)) return "";
  if (typeof value === "number") return String(value);
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  if (!Array.isArray(value)) return "?";
  const rows = value.map((row: unknown) =>
    Array.isArray(row) ? row.map(argumentText).join(", ") : argumentText(row),
  );
  return `{${rows.join("; ")}}`;
}

export interface Call {
  readonly id: string;
  readonly args: readonly unknown[];
}

const TOKEN =
  /\s*(?:(?<text>"(?:[^"]|"")*")|(?<number>-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)|(?<word>[a-z][a-z0-9.]*)|(?<sign>[(),;{}=]))/iuy;

/**
 * A call of plain values, read: numbers, texts, TRUE, FALSE, DATE(…), {1; 2}. Undefined where it is anything else:
 * a formula with addresses has first to be given the cells' values.
 */
export function readCall(text: string): Call | undefined {
  const tokens = tokensOf(text);
  if (tokens === undefined) return undefined;
  let at = 0;
  let depth = 0;
  const take = (sign: string) => tokens[at] === sign && ++at > 0;
  take("=");

  const list = (end: string, separators: string): unknown[] | undefined => {
    const values: unknown[] = [];
    if (take(end)) return values;
    if (++depth > DEEPEST) return undefined;
    for (;;) {
      const value = valueAt();
      if (value === FAILED) return undefined;
      values.push(value);
      if (take(end)) {
        depth--;
        return values;
      }
      if (!separators.includes(tokens[at] ?? "none")) return undefined;
      at++;
    }
  };
  const valueAt = (): unknown => {
    const token = tokens[at];
    // nothing between two commas is a blank
    if (token === undefined || token === "," || token === ")")
      return token === undefined ? FAILED : undefined;
    at++;
    if (token.startsWith('"')) return token.slice(1, -1).replaceAll('""', '"');
    if (/^-?[\d.]/u.test(token)) return Number(token);
    if (token === "{") {
      const cells = list("}", ",;");
      return cells === undefined ? FAILED : cells.map((cell) => [cell]);
    }
    const word = token.toUpperCase();
    if (word === "TRUE" || word === "FALSE") return word === "TRUE";
    if (word !== "DATE" || !take("(")) return FAILED;
    const [year, month, day] = list(")", ",") ?? [];
    return [year, month, day].every((part) => typeof part === "number")
      ? serialFromDate(year as number, month as number, day as number)
      : FAILED;
  };

  const name = tokens[at++]?.toUpperCase();
  if (name === undefined || !/^[A-Z][A-Z0-9.]*$/u.test(name) || !take("(")) return undefined;
  const args = list(")", ",");
  if (args === undefined || at !== tokens.length) return undefined;
  return { id: name.startsWith(NAMESPACE) ? name.slice(NAMESPACE.length) : name, args };
}

const FAILED = Symbol("not a plain value");
/** Brackets within brackets. */
const DEEPEST = 64;

function tokensOf(text: string): string[] | undefined {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  const trimmed = text.trimEnd();
  while (TOKEN.lastIndex < trimmed.length) {
    const match = TOKEN.exec(trimmed);
    if (match === null) return undefined;
    tokens.push(match[0].trim());
  }
  return tokens;
}

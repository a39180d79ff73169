/**
 * A whole call as text: put together from its arguments, and taken apart again where it is a documented example.
 */
import { NAMESPACE } from "../explain/call";
import { kindOf, typedArgument, type Argument } from "./function-argument";

/** "=MOUSSE.TIRAGE.VOLUME(50, 24, , 2)": left out at the end is left away, left out before that stays empty. */
export function callFormula(id: string, args: readonly string[]): string {
  const given = [...args];
  while (given.at(-1) === "") given.pop();
  return `=${NAMESPACE}${id}(${given.join(", ")})`;
}

/** What is to be typed for each argument to have this formula's call of the function. */
export function typedFor(id: string, parameters: readonly Argument[], formula: string): string[] {
  const start = formula.indexOf(`${NAMESPACE}${id}(`) + NAMESPACE.length + id.length + 1;
  const parts = argumentsFrom(formula.slice(start));
  return parameters.map((argument, index) => asTyped(argument, parts[index] ?? ""));
}

/** The arguments up to the bracket that closes the call; commas in texts, lists and inner calls do not part them. */
function argumentsFrom(text: string): string[] {
  const parts: string[] = [];
  let depth = 0;
  let part = "";
  for (const [token] of text.matchAll(/"(?:[^"]|"")*"|[^"]/gu)) {
    if (token === ")" && depth === 0) break;
    if ("({".includes(token)) depth++;
    if (")}".includes(token)) depth--;
    if (token === "," && depth === 0) {
      parts.push(part.trim());
      part = "";
    } else part += token;
  }
  return [...parts, part.trim()];
}

function asTyped(argument: Argument, part: string): string {
  const date = /^DATE\((\d+), (\d+), (\d+)\)$/u.exec(part);
  if (date)
    return date
      .slice(1)
      .map((digits) => digits.padStart(2, "0"))
      .join("-");
  if (kindOf(argument) === "range") return part.replace(/^\{(.*)\}$/u, "$1");
  // a word without its quotation marks, where it is understood without them
  const word = /^"([^"]*)"$/u.exec(part)?.[1];
  if (word === undefined) return part;
  const typed = typedArgument(argument, word);
  return "formula" in typed && typed.formula === part ? word : part;
}

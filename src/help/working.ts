/**
 * The working of a function's example, as HTML: a table of the steps, then the constants with their sources. On a
 * narrow screen the rows are stacked, so the tables carry their roles themselves.
 */
import { readCall } from "../explain/call";
import { explain } from "../explain/explain";
import { shown } from "../explain/numbers";
import { citedText } from "../explain/sources";
import type { Constant, Step, Working } from "../explain/types";
import { escape } from "./html";

/** The working of "TIRAGE.SUGAR(50, 24)"; of a long table the example shows one cell, INDEX(…, 1, 1). */
export function exampleWorking(call: string): Working {
  const [, ofTable = call] = /^INDEX\((.+\)), \d+, \d+\)$/u.exec(call) ?? [];
  const read = readCall(ofTable);
  if (!read) throw new Error(`the example ${call} is no call of plain values`);
  const explanation = explain(read.id, read.args);
  if (explanation.kind !== "working")
    throw new Error(`the example ${call} is refused: ${explanation.sentence}`);
  return explanation;
}

const cell = (html: string, kind = "") => `<td role="cell"${kind && ` class="${kind}"`}>${html}</td>`;
const code = (text: string) => `<code>${escape(text)}</code>`;
const quantity = (value: string, unit: string) => escape(unit === "" ? value : `${value}\u00a0${unit}`);

/** A look-up has no numbers to put in, and then no column for them. */
function stepRow(
  { what, symbol, equation, numbers, shown: result, unit }: Step,
  withNumbers: boolean,
): string {
  const called = equation === undefined && symbol !== undefined ? ` (${code(symbol)})` : "";
  const worked =
    equation === undefined || numbers === undefined ? "" : `${code(equation)}<br />=&nbsp;${code(numbers)}`;
  return `<tr role="row">${cell(escape(what) + called)}${withNumbers ? cell(worked, "numbers") : ""}${cell(quantity(result, unit), "result")}</tr>`;
}

function constantRow({ symbol, value, unit, what, source }: Constant): string {
  return `<tr role="row">${cell(code(symbol))}${cell(quantity(shown(value), unit), "result")}${cell(escape(`${what}: ${citedText(source)}`))}</tr>`;
}

const table = (
  label: string,
  columns: readonly string[],
  rows: readonly string[],
) => `      <table class="stacked" role="table" aria-label="${escape(label)}">
        <thead role="rowgroup"><tr role="row">${columns.map((column) => `<th scope="col" role="columnheader">${column}</th>`).join("")}</tr></thead>
        <tbody role="rowgroup">
${rows.map((row) => `          ${row}`).join("\n")}
        </tbody>
      </table>`;

export function workingSection({ steps, constants, sources }: Working): string {
  const withNumbers = steps.some(({ numbers }) => numbers !== undefined);
  return [
    "      <h2>The example, step by step</h2>",
    table(
      "Steps",
      ["Step", ...(withNumbers ? ["With numbers"] : []), "Result"],
      steps.map((step) => stepRow(step, withNumbers)),
    ),
    ...(constants.length === 0
      ? []
      : [
          "      <h2>Constants used</h2>",
          table("Constants", ["Symbol", "Value", "What, and its source"], constants.map(constantRow)),
        ]),
    `      <p class="note">Rests on: ${escape(sources.map(citedText).join("; "))}. Numbers are rounded for reading; the cell calculates in full.</p>`,
  ].join("\n");
}

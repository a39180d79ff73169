/**
 * The working of a function's example, as HTML in the page's language: a table of the steps, then the constants with
 * their sources. On a narrow screen the rows are stacked, so the tables carry their roles themselves.
 */
import { readCall } from "../explain/call";
import { explain } from "../explain/explain";
import { shown } from "../explain/numbers";
import { citedText } from "../explain/sources";
import type { Constant, Step, Working } from "../explain/types";
import type { Translate } from "../words/translate";
import { code, escape } from "./html";

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
const quantity = (value: string, unit: string) => escape(unit === "" ? value : `${value}\u00a0${unit}`);

/** A look-up has no numbers to put in, and then no column for them. What was given stands as it was typed. */
function stepRow(
  { what, symbol, equation, numbers, shown: result, unit, argument }: Step,
  withNumbers: boolean,
  say: Translate,
): string {
  const called = equation === undefined && symbol !== undefined ? ` (${code(symbol)})` : "";
  const worked =
    equation === undefined || numbers === undefined ? "" : `${code(equation)}<br />=&nbsp;${code(numbers)}`;
  const came = quantity(argument === "given" ? result : say(result), say(unit));
  return `<tr role="row">${cell(escape(say(what)) + called)}${withNumbers ? cell(worked, "numbers") : ""}${cell(came, "result")}</tr>`;
}

function constantRow({ symbol, value, unit, what, source }: Constant, say: Translate): string {
  const amount = quantity(shown(value), say(unit));
  return `<tr role="row">${cell(code(symbol))}${cell(amount, "result")}${cell(`${escape(say(what))}<br />${escape(say(citedText(source)))}`)}</tr>`;
}

export const table = (
  label: string,
  columns: readonly string[],
  rows: readonly string[],
) => `      <table class="stacked" role="table" aria-label="${escape(label)}">
        <thead role="rowgroup"><tr role="row">${columns.map((column) => `<th scope="col" role="columnheader">${escape(column)}</th>`).join("")}</tr></thead>
        <tbody role="rowgroup">
${rows.map((row) => `          ${row}`).join("\n")}
        </tbody>
      </table>`;

export function workingSection({ steps, constants, sources }: Working, say: Translate): string {
  const withNumbers = steps.some(({ numbers }) => numbers !== undefined);
  const heading = (text: string) => `      <h2>${escape(say(text))}</h2>`;
  return [
    heading("The example, step by step"),
    table(
      say("Steps"),
      [say("Step"), ...(withNumbers ? [say("With numbers")] : []), say("Result")],
      steps.map((step) => stepRow(step, withNumbers, say)),
    ),
    ...(constants.length === 0
      ? []
      : [
          heading("Constants used"),
          table(
            say("Constants"),
            [say("Symbol"), say("Value"), say("What, and its source")],
            constants.map((constant) => constantRow(constant, say)),
          ),
        ]),
    `      <p class="note">${escape(say("Rests on:"))}</p>`,
    `      <ul class="note">${sources.map((source) => `<li>${escape(say(citedText(source)))}</li>`).join("")}</ul>`,
    `      <p class="note">${escape(say("Numbers are rounded for reading; the cell calculates in full."))}</p>`,
  ].join("\n");
}

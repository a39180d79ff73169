/**
 * What is said of a selected cell, in a script of its own: what it calculates, step by step, or why it refuses.
 */
import { explain } from "../explain/explain";
import { callsIn, isOtherResult, referencesIn } from "../explain/formula-calls";
import { readOut } from "../explain/read-out";
import type { CellCalls, CellFormula } from "../hosts/host";
import { element } from "./dom";

const CIRCLE =
  "This formula, or one that it reads from, needs its own result, so there is nothing to calculate from. Put a value in place of one of those formulas, or undo.";
const OTHER_RESULT =
  "The cell shows another result: Excel may have given the function 0 for a blank cell, or has not calculated it anew.";

/** Nothing where no function of ours is called. */
export async function workingOf(cell: CellCalls | CellFormula): Promise<HTMLElement[]> {
  if ("circular" in cell && cell.circular) return [element("p", {}, CIRCLE)];
  const calls = "calls" in cell ? cell.calls : await found(cell);
  if (calls.length === 0) return [];
  const explained = calls.flatMap((call) => ("args" in call ? [explain(call.id, call.args)] : []));
  // a branch that is not taken may refuse without anybody being concerned
  const concerned = explained.filter(({ kind }) => cell.failed || kind === "working");
  return [
    ...concerned.flatMap((each) => {
      const [call = "", ...lines] = readOut(each);
      return [
        element("p", { class: "call" }, call),
        element("ol", {}, ...lines.map((line) => element("li", {}, line))),
      ];
    }),
    ...calls.flatMap((call) =>
      "unknown" in call
        ? [element("p", {}, `${call.id}: its working is not shown, as ${call.unknown}.`)]
        : [],
    ),
    ...("formula" in cell && isOtherResult(cell, explained) ? [element("p", {}, OTHER_RESULT)] : []),
  ];
}

/** The calls of a formula, with what stands in the cells that it names. */
async function found({ formula, valuesOf }: CellFormula) {
  const references = referencesIn(formula);
  const values = await valuesOf(references);
  const at = new Map(references.map((reference, index) => [reference, values[index]]));
  return callsIn(
    formula,
    (reference) => at.get(reference),
    (id, args) => {
      const explained = explain(id, args);
      return explained.kind === "working" ? explained.result : undefined;
    },
  );
}

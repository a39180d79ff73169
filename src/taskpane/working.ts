/**
 * The working of the selected cell: what it calculates, step by step, or why it refuses.
 */
import type { CellCalls, CellFormula, Host } from "../hosts/host";
import { element } from "./dom";

export interface Working {
  readonly element: HTMLElement;
  follow(host: Host): void;
}

export function workingSection(): Working {
  const title = element("summary", {}, "Working of the selected cell");
  const body = element("div");
  const section = element("details", { class: "working", hidden: true }, title, body);

  async function show(cell: CellCalls | CellFormula): Promise<void> {
    const { address, failed } = cell;
    // only whoever asks for the working loads it
    const { explain, readOut, callsIn, referencesIn } = await import("./explanations");
    const calls = "calls" in cell ? cell.calls : await found(cell, { explain, callsIn, referencesIn });
    section.hidden = calls.length === 0;
    if (section.hidden) return;
    const explained = calls.flatMap((call) => ("args" in call ? [explain(call.id, call.args)] : []));
    // a branch that is not taken may refuse without anybody being concerned
    const concerned = explained.filter(({ kind }) => failed || kind === "working");
    title.textContent = failed ? `Why ${address} refuses` : `Working of ${address}`;
    section.open = section.open || failed;
    body.replaceChildren(
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
    );
  }

  return {
    element: section,
    follow: (host) => host.watchSelection?.((cell) => void shown(cell)),
  };

  /** A formula without a call of ours needs nothing loaded. */
  async function shown(cell: CellCalls | CellFormula): Promise<void> {
    const concerns = "calls" in cell ? cell.calls.length > 0 : /MOUSSE\./i.test(cell.formula);
    if (concerns) await show(cell);
    else section.hidden = true;
  }
}

type Explanations = typeof import("./explanations");

/** The calls of a formula, with what stands in the cells that it names. */
async function found(
  { formula, valuesOf }: CellFormula,
  { explain, callsIn, referencesIn }: Pick<Explanations, "explain" | "callsIn" | "referencesIn">,
) {
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

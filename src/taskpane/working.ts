/**
 * The working of the selected cell: what it calculates, step by step, or why it refuses.
 */
import type { CellCalls, CellFormula, Host } from "../hosts/host";
import { NAMESPACE } from "../explain/call";
import { element } from "./dom";

export interface Working {
  readonly element: HTMLElement;
  follow(host: Host): void;
}

export function workingSection(): Working {
  const title = element("summary", {}, "Working of the selected cell");
  const body = element("div");
  const section = element("details", { class: "working", hidden: true }, title, body);

  /** Counts the cells that were told of: what comes too late is not shown. */
  let latest = 0;

  async function show(cell: CellCalls | CellFormula, mine: number): Promise<void> {
    const { address, failed } = cell;
    // only whoever asks for the working loads it
    const { explain, readOut, callsIn, referencesIn, isOtherResult } = await import("./explanations");
    const calls = "calls" in cell ? cell.calls : await found(cell, { explain, callsIn, referencesIn });
    if (mine !== latest) return;
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
      ...("formula" in cell && isOtherResult(cell, explained) ? [element("p", {}, OTHER_RESULT)] : []),
    );
  }

  return {
    element: section,
    follow: (host) => host.watchSelection?.(shown),
  };

  /** A formula without a call of ours needs nothing loaded. */
  function shown(cell: CellCalls | CellFormula): void {
    const mine = ++latest;
    const concerns = "calls" in cell ? cell.calls.length > 0 : callsUs(cell.formula);
    if (!concerns) section.hidden = true;
    else
      show(cell, mine).catch(() => {
        // no working is better than that of another cell
        if (mine === latest) section.hidden = true;
      });
  }
}

const callsUs = (formula: string) => formula.toUpperCase().includes(NAMESPACE);

const OTHER_RESULT =
  "The cell shows another result: Excel may have given the function 0 for a blank cell, or has not calculated it anew.";

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

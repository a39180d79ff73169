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
    // only whoever asks for the working loads it
    const { workingOf } = await import("./explanations");
    const working = await workingOf(cell);
    if (mine !== latest) return;
    const refuses = cell.failed || isCircular(cell);
    section.hidden = working.length === 0;
    if (section.hidden) return;
    title.textContent = refuses ? `Why ${cell.address} refuses` : `Working of ${cell.address}`;
    section.open = section.open || refuses;
    body.replaceChildren(...working);
  }

  return {
    element: section,
    follow: (host) => host.watchSelection?.(shown),
  };

  /** A formula without a call of ours needs nothing loaded. */
  function shown(cell: CellCalls | CellFormula): void {
    const mine = ++latest;
    const concerns = "calls" in cell ? isCircular(cell) || cell.calls.length > 0 : callsUs(cell.formula);
    if (!concerns) section.hidden = true;
    else
      show(cell, mine).catch(() => {
        // no working is better than that of another cell
        if (mine === latest) section.hidden = true;
      });
  }
}

const callsUs = (formula: string) => formula.toUpperCase().includes(NAMESPACE);
const isCircular = (cell: CellCalls | CellFormula) => "circular" in cell && cell.circular === true;

/**
 * The working of the selected cell: what it calculates, step by step, or why it refuses.
 */
import type { CellCalls, Host } from "../hosts/host";
import { element } from "./dom";

export interface Working {
  readonly element: HTMLElement;
  follow(host: Host): void;
}

export function workingSection(): Working {
  const title = element("summary", {}, "Working of the selected cell");
  const body = element("div");
  const section = element("details", { class: "working", hidden: true }, title, body);

  async function show({ address, calls, failed }: CellCalls): Promise<void> {
    section.hidden = calls.length === 0;
    if (section.hidden) return;
    // only whoever asks for the working loads it
    const { explain, readOut } = await import("./explanations");
    const explained = calls.map(({ id, args }) => explain(id, args));
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
    );
  }

  return {
    element: section,
    follow: (host) => host.watchSelection?.((cell) => void show(cell)),
  };
}

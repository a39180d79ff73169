/**
 * The section of the pane from which a function is put into a cell. The list is loaded when it is first opened.
 */
import type { Host } from "../hosts/host";
import { button, element } from "./dom";
import type { FunctionChoice } from "./function-choice";
import "./function-list.css";

export interface FunctionSection {
  readonly element: HTMLElement;
  follow(host: Host): void;
  /** Opens the section and goes to its search. */
  open(): void;
}

export function functionSection(): FunctionSection {
  let host: Host | null = null;
  let loading: Promise<FunctionChoice> | undefined;
  const body = element("div", { class: "functions-body" });
  const section = element("details", { class: "functions" }, element("summary", {}, "Functions"), body);

  async function load(): Promise<FunctionChoice> {
    const { functionChoice } = await import("./function-choice");
    const choice = await functionChoice(() => host);
    body.replaceChildren(choice.element);
    return choice;
  }

  /** The list, or why it is not there, with a way to try again. */
  async function shown(): Promise<FunctionChoice | undefined> {
    if (loading === undefined) body.replaceChildren(element("p", { role: "status" }, "Loading …"));
    try {
      return await (loading ??= load());
    } catch (error) {
      loading = undefined;
      const again = button("Try again");
      again.addEventListener("click", () => void shown().then((choice) => choice?.search()));
      const why = error instanceof Error ? error.message : String(error);
      body.replaceChildren(element("p", { role: "alert" }, `The functions were not loaded. ${why} `, again));
      return undefined;
    }
  }

  section.addEventListener("toggle", () => void (section.open && shown()));
  return {
    element: section,
    follow(found) {
      host = found;
      void loading?.then((choice) => choice.hostFound());
    },
    open() {
      section.open = true;
      void shown().then((choice) => choice?.search());
    },
  };
}

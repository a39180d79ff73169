/**
 * The plans that are in the workbook: to be read into the form, brought up to date, or gathered in a season.
 */
import type { InputChange } from "../workbook/plan/read";
import { element } from "./dom";

export interface PlansSection {
  readonly element: HTMLElement;
  readonly read: HTMLButtonElement;
  readonly season: HTMLButtonElement;
  readonly again: HTMLButtonElement;
  /** The plan chosen in the list, if there is any. */
  chosen(): string | undefined;
  show(names: readonly string[]): void;
}

export function plansSection(): PlansSection {
  const list = element("select", { id: "plans", "aria-describedby": "plans-none" });
  const none = element("p", { id: "plans-none", class: "note" }, "None yet.");
  const read = element("button", { type: "button" }, "Read into the form");
  const season = element("button", { type: "button" }, "Write the season");
  const again = element("button", { type: "button" }, "Look again");
  const body = element(
    "div",
    { class: "field" },
    element("label", { for: list.id }, "Plan"),
    list,
    none,
    element("div", { class: "actions" }, read, season, again),
  );
  const section = element(
    "details",
    { class: "plans", hidden: true },
    element("summary", {}, "Plans in the workbook"),
    body,
  );
  return {
    element: section,
    read,
    season,
    again,
    chosen: () => (list.value === "" ? undefined : list.value),
    show(names) {
      const before = list.value;
      list.replaceChildren(...names.map((name) => element("option", { value: name }, name)));
      if (names.includes(before)) list.value = before;
      const isEmpty = names.length === 0;
      section.hidden = false;
      list.hidden = isEmpty;
      none.hidden = !isEmpty;
      read.disabled = season.disabled = isEmpty;
    },
  };
}

/** What an update would change, line by line. */
export function changeList(changes: readonly InputChange[]): HTMLElement {
  return element(
    "ul",
    { class: "changes" },
    ...changes.map(({ said, calculated }) =>
      element("li", {}, calculated ? `${said} (a formula stands there and would go)` : said),
    ),
  );
}

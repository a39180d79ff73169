/**
 * The plans that are in the workbook: to be read into the form, brought up to date, or gathered in a season.
 */
import type { InputChange } from "../workbook/plan/read";
import { button, element } from "./dom";

export interface PlansSection {
  readonly element: HTMLElement;
  readonly read: HTMLButtonElement;
  readonly season: HTMLButtonElement;
  readonly again: HTMLButtonElement;
  /** The plan chosen in the list, if there is any. */
  chosen(): string | undefined;
  show(names: readonly string[]): void;
  /** Opens the section and goes to it. */
  open(): void;
}

export function plansSection(): PlansSection {
  const list = element("select", { id: "plans", "aria-describedby": "plans-none" });
  const none = element("p", { id: "plans-none", class: "note" }, "None yet.");
  const read = element("button", { type: "button" }, "Read into the form");
  const season = element("button", { type: "button" }, "Write the season");
  const again = element("button", { type: "button" }, "Refresh the list");
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
    open() {
      section.open = true;
      section.scrollIntoView({ block: "nearest" });
      (season.disabled ? again : season).focus();
    },
    chosen: () => (list.value === "" ? undefined : list.value),
    show(names) {
      const before = list.value;
      list.replaceChildren(...names.map((name) => element("option", { value: name, translate: "no" }, name)));
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
function changeList(changes: readonly InputChange[]): HTMLElement {
  return element(
    "ul",
    { class: "changes" },
    ...changes.map(({ said, calculated }) =>
      element("li", {}, calculated ? `${said} (a formula stands there and would go)` : said),
    ),
  );
}

/** What an update would change, with the button that changes it and the one that does not. */
export function updateOffer(
  name: string,
  changes: readonly InputChange[],
  change: () => void,
  leave: () => void,
): HTMLElement[] {
  const yes = button(changes.length === 1 ? "Change 1 input" : `Change ${changes.length} inputs`);
  const no = button("Leave it");
  yes.addEventListener("click", change);
  no.addEventListener("click", leave);
  return [
    element("p", {}, `This would change in “${name}”, inputs only:`),
    changeList(changes),
    element("div", { class: "actions" }, yes, no),
  ];
}

/** Which plan of a file to take, or that it has none. */
export function planChoices<Plan extends { readonly name: string }>(
  fileName: string,
  plans: readonly Plan[],
  take: (plan: Plan) => void,
): (Node | string)[] {
  if (plans.length === 0) {
    return [`${fileName} holds no plan: none of its sheets has a plan's names. The form is as it was.`];
  }
  const choices = plans.map((plan) => {
    const choice = button(plan.name);
    choice.addEventListener("click", () => take(plan));
    return choice;
  });
  return [
    `${fileName} holds ${plans.length} plans. Which one? `,
    element("div", { class: "actions" }, ...choices),
  ];
}

/**
 * The figures of a setting on the page: beside the form's, with what the checks make of it.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import { element } from "../dom";
import type { Finding } from "../findings";
import type { Units } from "../units";
import { checksMoved, linesOf } from "./figures";

const heads = (...labels: string[]) =>
  element("tr", {}, element("td"), ...labels.map((label) => element("th", { scope: "col" }, label)));

export interface Results {
  readonly element: HTMLElement;
  show(inputs: BatchInputs, own: BatchPlan, now: BatchPlan, units: Units): void;
  /** No figures, but why there are none: nothing out of date is left to be read. */
  refuse(reasons: readonly string[], look: "problem" | "note"): void;
}

export function results(): Results {
  const body = element("tbody");
  const table = element(
    "table",
    { class: "compared" },
    element("caption", {}, "This setting beside the form"),
    element("thead", {}, heads("Form", "Setting", "Difference")),
    body,
  );
  const notes = element("div", { class: "moved" });
  return {
    element: element("div", {}, table, notes),
    show(inputs, own, now, units) {
      table.hidden = false;
      body.replaceChildren(
        ...linesOf(inputs, own, now, units).map(({ label, own: before, now: after, change }) =>
          element(
            "tr",
            { class: change === "same" ? "same" : undefined },
            element("th", { scope: "row" }, label),
            element("td", {}, before),
            element("td", { class: "now" }, after),
            element("td", {}, change),
          ),
        ),
      );
      const { worse, better } = checksMoved(own, now, units);
      notes.replaceChildren(
        ...findingNotes("Checks that are worse than in the form:", worse),
        ...findingNotes("Checks of the form that are better in this setting:", better),
        ...missingPrices(now),
      );
    },
    refuse(reasons, look) {
      table.hidden = true;
      body.replaceChildren();
      notes.replaceChildren(...reasons.map((reason) => element("p", { class: look }, reason)));
    },
  };
}

function findingNotes(heading: string, found: readonly Finding[]): HTMLElement[] {
  if (found.length === 0) return [];
  const items = found.map(({ verdict, what }) =>
    element("li", {}, element("strong", {}, `${verdict}: `), what),
  );
  return [element("p", { class: "note" }, heading), element("ul", { class: "findings" }, ...items)];
}

function missingPrices({ costs: { unpriced } }: BatchPlan): HTMLElement[] {
  if (unpriced === 0) return [];
  const said =
    unpriced === 1
      ? "1 price or number of hours is missing, so the costs are too low."
      : `${unpriced} prices or numbers of hours are missing, so the costs are too low.`;
  return [element("p", { class: "note" }, said)];
}

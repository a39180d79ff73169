/**
 * The few results to see while typing, and whether anything is out of bounds: one line, and more for who opens it.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import { element } from "./dom";
import { findings, verdictSentence, type Finding } from "./findings";
import { mendingSentence, type Planned } from "./planned";
import { keyFigures, type Figure } from "./steps";
import type { Units } from "./units";

export interface Preview {
  readonly element: HTMLElement;
  /** `elsewhere`: problems that no box of the form shows. */
  show(planned: Planned, elsewhere: readonly Problem[]): void;
}

export function previewSection(units: Units): Preview {
  const verdict = element("summary", { class: "verdict" });
  const body = element("div");
  const section = element("details", { class: "glance" }, verdict, body);
  return {
    element: element(
      "section",
      { class: "preview", "aria-label": "Figures of the form", "aria-live": "polite" },
      section,
    ),
    show(planned, elsewhere) {
      const problems = elsewhere.map((each) => element("p", { class: "problem" }, problemSentence(each)));
      if ("plan" in planned) {
        const found = findings(planned.plan, units);
        verdict.textContent = verdictSentence(found);
        section.dataset.worst = planned.plan.worst;
        body.replaceChildren(...figuresAndFindings(planned.inputs, planned.plan, units, found), ...problems);
      } else {
        verdict.textContent = mendingSentence(planned.problems);
        section.dataset.worst = "mend";
        body.replaceChildren(...problems);
      }
    },
  };
}

function figuresAndFindings(
  inputs: BatchInputs,
  plan: BatchPlan,
  units: Units,
  found: readonly Finding[],
): HTMLElement[] {
  const table = figureTable(keyFigures(inputs, plan, units));
  table.prepend(element("caption", {}, "Figures of this form; a sheet once written goes its own way."));
  return found.length === 0 ? [table] : [table, findingList(found)];
}

export function figureTable(figures: readonly Figure[]): HTMLElement {
  const rows = figures.map(({ label, value, unit }) =>
    element(
      "tr",
      {},
      element("th", { scope: "row" }, label),
      element("td", {}, value),
      element("td", { class: "unit" }, unit),
    ),
  );
  return element("table", { class: "figures" }, element("tbody", {}, ...rows));
}

export const findingList = (found: readonly Finding[]): HTMLElement =>
  element(
    "ul",
    { class: "findings" },
    ...found.map(({ verdict, what }) =>
      element(
        "li",
        { class: verdict === "stop" ? "stop" : "again" },
        element("strong", {}, `${verdict}: `),
        what,
      ),
    ),
  );

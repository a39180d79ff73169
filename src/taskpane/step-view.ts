/**
 * One step of the form: its boxes, the few figures that it comes to, its drawing, and the one warning that matters.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import { element } from "./dom";
import { findings } from "./findings";
import { figureTable, findingList } from "./preview";
import type { Step } from "./steps";
import type { Units } from "./units";

export interface StepView {
  readonly element: HTMLDetailsElement;
  /** Fields to mend are counted in the head of the step. */
  mend(count: number): void;
  /** Null where there is no plan at present. */
  show(inputs: BatchInputs | null, plan: BatchPlan | null): void;
}

export function stepView(
  step: Step,
  ordinal: number,
  units: Units,
  content: readonly HTMLElement[],
): StepView {
  const count = element("span", { class: "count" });
  const gist = element("span", { class: "gist" });
  const outcome = element("div", { class: "outcome", "aria-live": "off" });
  const picture = element("div", { class: "picture" });
  const title = element("span", { class: "title" }, `${ordinal}  ${step.title}`);
  const section = element(
    "details",
    { class: "step", id: `step-${step.key}` },
    element("summary", {}, title, gist, count),
    ...content,
    outcome,
    picture,
  );
  let latest: readonly [BatchInputs, BatchPlan] | null = null;

  /** Drawings are loaded when the first step with one is opened. */
  async function draw(): Promise<void> {
    if (step.drawing === undefined || !section.open) return;
    const loaded = await import("./drawings").catch(() => undefined);
    if (!loaded) {
      picture.replaceChildren("The drawing was not loaded; close the step and open it again.");
      return;
    }
    const { drawings } = loaded;
    if (latest === null) picture.replaceChildren();
    else picture.replaceChildren(drawings[step.drawing](...latest, units));
  }
  section.addEventListener("toggle", () => void draw());

  return {
    element: section,
    mend(problems) {
      count.textContent = problems === 0 ? "" : `${problems} to mend`;
    },
    show(inputs, plan) {
      latest = inputs && plan && [inputs, plan];
      if (!latest) {
        delete section.dataset.worst;
        gist.textContent = "";
        outcome.replaceChildren();
        picture.replaceChildren();
        return;
      }
      const figures = step.figures(...latest, units);
      const [first] = figures;
      const [worst] = findings(latest[1], units, step.checks);
      gist.textContent = first ? `${first.value} ${first.unit}`.trim() : "";
      section.dataset.worst = worst?.verdict ?? "fine";
      outcome.replaceChildren(figureTable(figures), ...(worst ? [findingList([worst])] : []));
      void draw();
    },
  };
}

/**
 * The dosage bench: what goes into each glass of a trial, and what each choice would mean for the batch.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { TiragePlan } from "../../cellar/batch/plan-tirage";
import { atSweetness, atZeroDosage, attemptPlan, benchRow } from "../../cellar/batch/what-if";
import { isWithin, rangeText } from "../../cellar/domains";
import { button, element } from "../dom";
import { shownNumber } from "../typed-numbers";
import type { Units } from "../units";
import { whenAtRest } from "../variants/frames";
import { NumberBox } from "../variants/number-box";
import { Card, type Outcome } from "./card";
import { glassBox } from "./glass";
import { MOST_TRIALS, Trials, targetDomain, type Trial } from "./trials";
import { glassText, termsText } from "./words";

export interface BenchSection {
  readonly element: HTMLElement;
  /** The form's inputs as they are now; null while it cannot be planned. */
  follow(inputs: BatchInputs | null): void;
}

const NO_FORM = "The form has fields to mend. Trials are worked out once it can be planned.";
const NO_LIQUEUR = "The form adds no dosage. Choose a liqueur there to try other sweetness.";
const FULL = `${MOST_TRIALS} trials are in the list already. Remove one before you add another.`;
const CAUTION =
  "Glasses lose CO2, and wine tastes sweeter just after dosage than months later (common practice, no source): taste at once, and again after a rest.";

const nameOf = ({ targetGL }: Trial) =>
  targetGL === null ? "New trial" : `Trial at ${shownNumber(targetGL)} g/L`;

interface Row {
  readonly card: Card;
  readonly box: NumberBox;
}

/** Everything of the bench is in mL, L, g/L and % vol, which have no other unit to choose. */
export function benchSection(_units: Units, take: (sweetness_gL: number) => void): BenchSection {
  let form: { readonly inputs: BatchInputs; readonly tirage: TiragePlan } | null = null;
  const trials = new Trials();
  const rows = new Map<number, Row>();

  const status = element("p", { class: "said", role: "status" });
  const say = (text: string) => (status.textContent = text);
  const sayAtRest = whenAtRest(say);

  const glass = glassBox(showAll);
  const zero = new Card({
    id: "bench-zero",
    head: [element("strong", {}, "Zero dosage")],
    noted: () => undefined,
    // the wine's own sugar is all that is wanted then, and no liqueur is needed for it
    use: () => form && take(form.inputs.dosage.residual_gL),
  });
  zero.call("Zero dosage");
  const list = element("ol", { class: "trials", "aria-label": "Trials" });
  const add = button("Add a trial");
  const usual = button("The usual trials again");
  const noForm = element("p", { class: "note" }, NO_FORM);
  const noLiqueur = element("p", { class: "note", hidden: true }, NO_LIQUEUR);
  const changing = element("div", { class: "actions" }, add, usual);
  const body = element(
    "div",
    { hidden: true },
    element("p", { class: "caution" }, CAUTION),
    glass.element,
    noLiqueur,
    list,
    changing,
    status,
  );

  function rowOf(trial: Trial): Row {
    const found = rows.get(trial.id);
    if (found) return found;
    const { id } = trial;
    const now = () => trials.list.find((each) => each.id === id)!;
    const box = new NumberBox(
      `bench-trial-${id}`,
      () => ({
        label: "Sweetness",
        allowed: rangeText(targetDomain),
        isAllowed: (value) => isWithin(targetDomain, value),
      }),
      (value) => {
        trials.setTarget(id, value ?? null);
        showAll();
        sayAtRest(spoken(now()));
      },
    );
    const card = new Card({
      id: `bench-trial-${id}`,
      head: [
        element("label", { for: box.input.id, class: "visually-hidden" }, "Sweetness to try, g/L"),
        box.input,
        element("span", { class: "unit" }, "g/L"),
        box.message,
      ],
      noted: (note) => trials.setNote(id, note),
      use: () => {
        const { targetGL } = now();
        if (targetGL === null) return;
        take(targetGL);
        // the button goes, as the form holds it now
        box.input.focus();
      },
      remove: () => {
        trials.remove(id);
        showAll();
        say("The trial is removed.");
        add.focus();
      },
    });
    const row = { card, box };
    rows.set(id, row);
    return row;
  }

  const worked = (inputs: BatchInputs): Outcome | undefined =>
    form === null || glass.volumeMl === undefined ? undefined : benchRow(inputs, form.tirage, glass.volumeMl);
  const outcomeOf = ({ targetGL }: Trial) =>
    form === null || targetGL === null ? undefined : worked(atSweetness(form.inputs, targetGL));

  function spoken(trial: Trial): string {
    const outcome = outcomeOf(trial);
    return outcome && "dosage" in outcome
      ? `${nameOf(trial)}: ${glassText(outcome)} into the glass; ${termsText(outcome)}.`
      : "";
  }

  function showAll(): void {
    noForm.hidden = form !== null;
    body.hidden = form === null;
    if (form === null) return;
    const { inputs } = form;
    const isDosed = inputs.dosage.kind !== "none";
    noLiqueur.hidden = isDosed;
    changing.hidden = !isDosed;
    zero.show(inputs, worked(atZeroDosage(inputs)), isDosed ? "" : "as in the form");
    zero.offer(isDosed, false);
    const shown = isDosed ? trials.list : [];
    const cards = shown.map((trial) => {
      const { card, box } = rowOf(trial);
      const isWanted = trials.isWanted(trial);
      if (trial.targetGL !== null) box.show(trial.targetGL);
      card.call(nameOf(trial));
      card.show(inputs, outcomeOf(trial), isWanted ? "as in the form" : "");
      card.offer(!isWanted, !isWanted);
      return card.element;
    });
    for (const id of rows.keys()) if (!trials.list.some((each) => each.id === id)) rows.delete(id);
    arrange(list, [zero.element, ...cards]);
  }

  add.addEventListener("click", () => {
    const trial = trials.add();
    if (trial === undefined) return void say(FULL);
    showAll();
    say("");
    rowOf(trial).box.input.focus();
  });
  usual.addEventListener("click", () => {
    if (form === null) return;
    trials.restart(form.inputs);
    showAll();
    say("The usual trials are in the list again; those with notes stayed.");
  });

  return {
    element: element("section", { class: "bench", "aria-label": "Dosage bench" }, noForm, body),
    follow(inputs) {
      const tried = inputs && attemptPlan(inputs);
      form = inputs && tried && "plan" in tried ? { inputs, tirage: tried.plan.tirage } : null;
      if (form !== null) trials.follow(form.inputs);
      showAll();
    },
  };
}

/** Puts the children in order, and moves none that stands right: what has the keyboard keeps it. */
function arrange(parent: HTMLElement, children: readonly HTMLElement[]): void {
  for (const child of [...parent.children]) if (!children.includes(child as HTMLElement)) child.remove();
  children.forEach((child, index) => {
    const there = parent.children[index] ?? null;
    if (there !== child) parent.insertBefore(child, there);
  });
}

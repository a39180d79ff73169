/**
 * One trial on the page: its sweetness, what goes into the glass and what follows for the batch, and a note.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { Problem } from "../../cellar/batch/problem";
import type { BenchRow } from "../../cellar/batch/what-if";
import { button, element } from "../dom";
import { factsOf, glassText, refusalInWords } from "./words";

export type Outcome = BenchRow | { readonly problems: readonly Problem[] };

interface Parts {
  readonly id: string;
  readonly head: readonly Node[];
  readonly noted: (note: string) => void;
  readonly use: () => void;
  readonly remove?: () => void;
}

export class Card {
  readonly element: HTMLLIElement;
  readonly #mark = element("span", { class: "mark" });
  readonly #glass = element("p", { class: "glass" });
  readonly #facts = element("dl");
  readonly #problems = element("div");
  readonly #use: HTMLButtonElement;
  readonly #remove: HTMLButtonElement | undefined;

  constructor({ id, head, noted, use, remove }: Parts) {
    const note = element("input", { id: `${id}-note`, type: "text", autocomplete: "off", maxlength: "300" });
    note.addEventListener("input", () => noted(note.value.trim()));
    this.#use = button("Use this sweetness");
    this.#use.addEventListener("click", use);
    this.#remove = remove && button("Remove");
    this.#remove?.addEventListener("click", () => remove?.());
    this.element = element(
      "li",
      { class: "trial" },
      element("div", { class: "head" }, ...head, this.#mark),
      this.#problems,
      this.#glass,
      this.#facts,
      element("div", { class: "noting" }, element("label", { for: note.id }, "Tasting notes"), note),
      element("div", { class: "actions" }, this.#use, ...(this.#remove ? [this.#remove] : [])),
    );
  }

  /** What the trial is called where its number is not seen beside the button. */
  call(name: string): void {
    this.element.setAttribute("aria-label", name);
    this.#use.setAttribute("aria-label", `Use this sweetness: ${name}`);
    this.#remove?.setAttribute("aria-label", `Remove: ${name}`);
  }

  /** Figures, or why there are none; `undefined` while there is nothing to work out. */
  show(inputs: BatchInputs, outcome: Outcome | undefined, mark: string): void {
    const row = outcome && "dosage" in outcome ? outcome : undefined;
    const problems = outcome && "problems" in outcome ? outcome.problems : [];
    this.#mark.textContent = mark;
    this.#glass.hidden = this.#facts.hidden = row === undefined;
    this.#glass.replaceChildren(
      ...(row ? [element("span", {}, "Into the glass"), element("strong", {}, glassText(row))] : []),
    );
    this.#facts.replaceChildren(
      ...(row ? factsOf(inputs, row) : []).map(({ label, value, isHindrance }) =>
        element(
          "div",
          { class: isHindrance ? "hindrance" : undefined },
          element("dt", {}, label),
          element("dd", {}, value),
        ),
      ),
    );
    this.#problems.replaceChildren(
      ...problems.map((problem) => element("p", { class: "problem" }, refusalInWords(problem))),
    );
    this.#use.disabled = row === undefined;
  }

  /** Whether it can be used and removed; the form's own sweetness is neither. */
  offer(canUse: boolean, canRemove: boolean): void {
    this.#use.hidden = !canUse;
    if (this.#remove) this.#remove.hidden = !canRemove;
    this.#use.parentElement!.hidden = !canUse && !canRemove;
  }
}

/**
 * One box of the form: a field's value, typed or chosen, with its message when it has to be mended.
 */
import type { Field, PlacedField } from "../cellar/batch/field-kinds";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import { element } from "./dom";
import { isAmbiguous, shownNumber, typedNumber } from "./typed-numbers";

const THOUSANDS = ". Write numbers without marks for thousands: 1250, or 1.25";

export class Box {
  readonly input: HTMLInputElement | HTMLSelectElement;
  readonly message: HTMLElement;
  /** The number that was put in, and how it is shown: a long one is shown short, but counts in full until typed over. */
  #filled: { readonly shown: string; readonly exact: number } | undefined;

  constructor(
    readonly placed: PlacedField,
    describedBy = "",
  ) {
    const { field, dotted } = placed;
    this.message = element("p", { id: `${dotted}-message`, class: "problem", hidden: true });
    this.input = controlOf(field, {
      id: dotted,
      name: dotted,
      "aria-describedby": `${describedBy} ${dotted}-message`.trim(),
    });
  }

  /** The value as a batch file would hold it. */
  get given(): unknown {
    const typed = this.input.value;
    if (this.#filled?.shown === typed) return this.#filled.exact;
    return isNumeric(this.placed.field) ? typedNumber(typed) : typed;
  }

  /** Puts in a value of a batch file; where it gives none, what a blank means. */
  fill(given: unknown): void {
    const { field } = this.placed;
    const value = given ?? ("blank" in field ? field.blank : undefined) ?? "";
    const shown =
      typeof value === "number"
        ? shownNumber(value)
        : typeof value === "string"
          ? value
          : JSON.stringify(value);
    if (this.input instanceof HTMLSelectElement) offer(this.input, field, shown);
    this.input.value = shown;
    this.#filled = typeof value === "number" ? { shown: this.input.value, exact: value } : undefined;
  }

  /** Shows what is to be mended, or nothing. */
  show(problem: Problem | undefined): void {
    this.message.hidden = problem === undefined;
    if (problem === undefined) {
      this.input.removeAttribute("aria-invalid");
      return;
    }
    this.input.setAttribute("aria-invalid", "true");
    const sentence = problemSentence({ ...problem, field: this.placed.field.label });
    this.message.textContent =
      isNumeric(this.placed.field) && isAmbiguous(this.input.value) ? sentence + THOUSANDS : sentence;
  }
}

const isNumeric = (field: Field) => field.kind === "number" || field.kind === "optional";

function controlOf(field: Field, common: Record<string, string>): HTMLInputElement | HTMLSelectElement {
  if (field.kind === "choice") {
    return element(
      "select",
      common,
      ...field.options.map((option) => element("option", { value: option }, option)),
    );
  }
  return element("input", {
    ...common,
    type: field.kind === "date" ? "date" : "text",
    autocomplete: "off",
    ...(isNumeric(field) && { inputmode: "decimal" }),
    ...(field.kind === "text" && { maxlength: String(field.maxLength) }),
  });
}

/** A choice that is none of the options is kept and shown, to be refused, never changed for another. */
function offer(select: HTMLSelectElement, field: Field, value: string): void {
  for (const strange of select.querySelectorAll("option.strange")) strange.remove();
  if (field.kind === "choice" && !field.options.includes(value)) {
    select.append(element("option", { value, class: "strange" }, value));
  }
}

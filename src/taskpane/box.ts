/**
 * One box of the form: a field's value, typed or chosen in the person's own unit, with its message when it has to be
 * mended. A value that is ours is marked as such until somebody touches it.
 */
import type { Field, PlacedField } from "../cellar/batch/field-kinds";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import { element } from "./dom";
import { isAmbiguous, shownNumber, typedNumber } from "./typed-numbers";
import { UNITS, quantityOf, type Quantity, type Units } from "./units";

const THOUSANDS = ". Write numbers without marks for thousands: 1250, or 1.25";
const USUAL = "usual value";

export class Box {
  readonly input: HTMLInputElement | HTMLSelectElement;
  readonly message: HTMLElement;
  /** Stands beside the box while its value is ours. */
  readonly usual: HTMLElement;
  readonly unit: HTMLElement;
  readonly #quantity: Quantity | undefined;
  /** The number that was put in, and how it is shown: a long one is shown short, but counts in full until typed over. */
  #filled: { readonly shown: string; readonly exact: number } | undefined;

  constructor(
    readonly placed: PlacedField,
    private readonly units: Units,
    describedBy = "",
  ) {
    const { field, dotted } = placed;
    const unit = "unit" in field ? field.unit : "";
    this.#quantity = quantityOf(dotted, unit);
    this.message = element("p", { id: `${dotted}-message`, class: "problem", hidden: true });
    this.usual = element("span", { id: `${dotted}-usual`, class: "usual", hidden: true }, USUAL);
    this.unit = this.#quantity ? this.#unitChoice(this.#quantity) : element("span", { class: "unit" }, unit);
    this.input = controlOf(field, {
      id: dotted,
      name: dotted,
      "aria-describedby": `${describedBy} ${dotted}-message ${dotted}-usual`.trim(),
    });
    this.input.addEventListener("input", () => (this.usual.hidden = true));
    units.onChange(() => this.#showIn(this.given));
  }

  /** The value as a batch file would hold it. */
  get given(): unknown {
    const typed = this.input.value;
    if (this.#filled?.shown === typed) return this.#filled.exact;
    if (!isNumeric(this.placed.field)) return typed;
    const number = typedNumber(typed);
    return typeof number === "number" && this.#quantity ? this.units.of(this.#quantity).kept(number) : number;
  }

  /** Puts in a value of a batch file; where it gives none, what a blank means. */
  fill(given: unknown): void {
    const { field } = this.placed;
    const usual = "blank" in field ? field.blank : undefined;
    const value = given ?? usual ?? "";
    this.usual.hidden = (given ?? undefined) !== undefined || usual === undefined || usual === "";
    this.#showIn(value);
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
    const ambiguous = isNumeric(this.placed.field) && isAmbiguous(this.input.value);
    this.message.textContent = sentence + (ambiguous ? THOUSANDS : "") + this.#inOwnUnit(problem);
  }

  #showIn(value: unknown): void {
    const quantity = this.#quantity;
    const own = typeof value === "number" && quantity ? this.units.of(quantity).shown(value) : value;
    const shown =
      typeof own === "number" ? shownNumber(own) : typeof own === "string" ? own : JSON.stringify(own ?? "");
    if (this.input instanceof HTMLSelectElement) offer(this.input, this.placed.field, shown);
    this.input.value = shown;
    this.#filled = typeof value === "number" ? { shown: this.input.value, exact: value } : undefined;
    if (quantity) (this.unit as HTMLSelectElement).value = this.units.of(quantity).name;
  }

  #unitChoice(quantity: Quantity): HTMLSelectElement {
    const list = element(
      "select",
      { class: "unit", "aria-label": `Unit of ${this.placed.field.label}` },
      ...UNITS[quantity].map(({ name }) => element("option", { value: name }, name)),
    );
    list.addEventListener("change", () => this.units.choose(quantity, list.value));
    // it changes how the form is shown, not what it holds
    list.addEventListener("input", (event) => event.stopPropagation());
    return list;
  }

  /** What was given and what is allowed, for who sees another unit than the sentence names. */
  #inOwnUnit({ given }: Problem): string {
    const { field } = this.placed;
    if (!this.#quantity || !("domain" in field) || typeof given !== "number") return "";
    const { name, shown } = this.units.of(this.#quantity);
    if (name === UNITS[this.#quantity][0].name) return "";
    const [low, high] = [field.domain.min, field.domain.max].map(shown);
    return low === undefined || high === undefined
      ? ""
      : `. In ${name}: ${shownNumber(low)} to ${shownNumber(high)}`;
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

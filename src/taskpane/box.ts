/**
 * One box of the form: a field's value, typed or chosen in the person's own unit, with its message when it has to be
 * mended. A value that is ours is marked as such until somebody touches it.
 */
import { allowedText, type Field, type PlacedField } from "../cellar/batch/field-kinds";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import { element } from "./dom";
import { WITHOUT_MARKS, isAmbiguous, shownNumber, typedNumber } from "./typed-numbers";
import { UNITS, quantityOf, type Quantity, type Unit, type Units } from "./units";

const USUAL = "usual value";

export class Box {
  readonly input: HTMLInputElement | HTMLSelectElement;
  readonly message: HTMLElement;
  /** Stands beside the box while its value is ours. */
  readonly usual: HTMLElement;
  readonly unit: HTMLElement;
  readonly #quantity: Quantity | undefined;
  /** In which the box shows its number now. */
  #ownUnit: Unit | undefined;
  /**
   * What was put in where the box shows it otherwise: a long number is shown short, in another unit, or a text is no
   * date. It counts in full until typed over.
   */
  #filled: { readonly shown: string; readonly exact: unknown } | undefined;

  constructor(
    readonly placed: PlacedField,
    units: Units,
    describedBy = "",
  ) {
    const { field, dotted } = placed;
    const unit = "unit" in field ? field.unit : "";
    this.#quantity = quantityOf(dotted, unit);
    this.message = element("p", { id: `${dotted}-message`, class: "problem", hidden: true });
    this.usual = element("span", { id: `${dotted}-usual`, class: "usual", hidden: true }, USUAL);
    this.unit = this.#quantity
      ? this.#unitChoice(this.#quantity, units)
      : element("span", { class: "unit" }, unit);
    this.input = controlOf(field, {
      id: dotted,
      name: dotted,
      "aria-describedby": `${describedBy} ${dotted}-message ${dotted}-usual`.trim(),
    });
    this.input.addEventListener("input", () => (this.usual.hidden = true));
    const quantity = this.#quantity;
    if (quantity) {
      this.#ownUnit = units.of(quantity);
      units.onChange(() => {
        // read in the unit that it was typed in, then shown in the other
        const given = this.given;
        this.#ownUnit = units.of(quantity);
        this.#showIn(given);
      });
    }
  }

  /** The value as a batch file would hold it. */
  get given(): unknown {
    const typed = this.input.value;
    if (this.#filled?.shown === typed) return this.#filled.exact;
    if (!isNumeric(this.placed.field)) return typed;
    const number = typedNumber(typed);
    if (typeof number !== "number" || !this.#ownUnit) return number;
    // a number that this unit does not have is refused as it was typed
    return this.#ownUnit.kept(number) ?? typed;
  }

  /** Puts in a value of a batch file; where it gives none, what a blank means. */
  fill(given: unknown): void {
    const { field } = this.placed;
    const usual = "blank" in field ? field.blank : undefined;
    const value = given ?? usual ?? "";
    this.isUsual = (given ?? undefined) === undefined && usual !== undefined && usual !== "";
    this.#showIn(value);
  }

  /** Whether its value is ours. */
  get isUsual(): boolean {
    return !this.usual.hidden;
  }
  set isUsual(is: boolean) {
    this.usual.hidden = !is;
  }

  /** Shows what is to be mended, or nothing. */
  show(problem: Problem | undefined): void {
    this.message.hidden = problem === undefined;
    if (problem === undefined) {
      this.input.removeAttribute("aria-invalid");
      return;
    }
    this.input.setAttribute("aria-invalid", "true");
    const { label } = this.placed.field;
    const sentence = this.#inOwnUnit(problem) ?? problemSentence({ ...problem, field: label });
    const ambiguous = isNumeric(this.placed.field) && isAmbiguous(this.input.value);
    this.message.textContent = sentence + (ambiguous ? `. ${WITHOUT_MARKS}` : "");
  }

  #showIn(value: unknown): void {
    const shown = this.#shownText(value);
    if (this.input instanceof HTMLSelectElement) offer(this.input, this.placed.field, shown);
    this.input.value = shown;
    // a box for a date shows no other text
    const asItIs = this.input.value === value || value === null || value === undefined;
    this.#filled = asItIs ? undefined : { shown: this.input.value, exact: value };
    if (this.#ownUnit) (this.unit as HTMLSelectElement).value = this.#ownUnit.name;
  }

  #shownText(value: unknown): string {
    if (value === null || value === undefined) return "";
    if (typeof value === "string") return value;
    if (typeof value !== "number") return JSON.stringify(value);
    if (!this.#ownUnit || this.#ownUnit === UNITS[this.#quantity!][0]) return shownNumber(value);
    const own = this.#ownUnit.shown(value);
    // a number that this unit does not have is not shown as another
    return own === undefined ? "" : shownNumber(Number(own.toFixed(2)));
  }

  #unitChoice(quantity: Quantity, units: Units): HTMLSelectElement {
    const list = element(
      "select",
      { class: "unit", "aria-label": `Unit of ${this.placed.field.label}` },
      ...UNITS[quantity].map(({ name }) => element("option", { value: name }, name)),
    );
    list.addEventListener("change", () => units.choose(quantity, list.value));
    // it changes how the form is shown, not what it holds
    list.addEventListener("input", (event) => event.stopPropagation());
    return list;
  }

  /** The refusal of a range in the unit that the person sees; nothing where it is another refusal. */
  #inOwnUnit({ remedy }: Problem): string | undefined {
    const { field } = this.placed;
    const unit = this.#ownUnit;
    if (!unit || !("domain" in field) || unit === UNITS[this.#quantity!][0]) return undefined;
    if (remedy !== `give ${allowedText(field)}`) return undefined;
    const [low, high] = [field.domain.min, field.domain.max].map(unit.shown);
    if (low === undefined || high === undefined) return undefined;
    // inwards, so that the ends themselves are taken
    const ends = [Math.ceil(low * 100) / 100, Math.floor(high * 100) / 100].map((end) => shownNumber(end));
    const given = this.input.value.trim() === "" ? "blank" : this.input.value;
    return `${field.label} is ${given}; give ${ends[0]} to ${ends[1]} ${unit.name}`;
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

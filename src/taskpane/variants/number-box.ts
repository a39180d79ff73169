/**
 * A box for a number, with its message when it cannot be taken. What it shows short counts in full until typed over.
 */
import { problemSentence } from "../../cellar/batch/problem";
import { element } from "../dom";
import { WITHOUT_MARKS, isAmbiguous, shownNumber, typedNumber } from "../typed-numbers";

export interface Allowed {
  readonly label: string;
  /** "0 to 60 g/L": what may be given, in the box's unit. */
  readonly allowed: string;
  isAllowed(value: number): boolean;
}

export class NumberBox {
  readonly input: HTMLInputElement;
  readonly message: HTMLElement;
  #shown: string | undefined;

  /** `typed` is told the number, or nothing where what was typed is none; what was only shown is never told. */
  constructor(
    id: string,
    private readonly limits: () => Allowed | undefined,
    typed: (value: number | undefined) => void,
  ) {
    this.message = element("p", { id: `${id}-message`, class: "problem", hidden: true });
    this.input = element("input", {
      id,
      type: "text",
      inputmode: "decimal",
      autocomplete: "off",
      "aria-describedby": this.message.id,
    });
    this.input.addEventListener("input", () => typed(this.#taken()));
  }

  /** Puts a number in, unless the box shows it already: what is being typed is left as it is typed. */
  show(value: number): void {
    const shown = shownNumber(value);
    if (this.#shown === shown && !this.isWrong) return;
    this.#shown = shown;
    this.input.value = shown;
    this.#complain("");
  }

  get isWrong(): boolean {
    return !this.message.hidden;
  }

  #taken(): number | undefined {
    const text = this.input.value;
    const value = typedNumber(text);
    const limits = this.limits();
    if (limits === undefined) return undefined;
    if (typeof value === "number" && limits.isAllowed(value)) {
      this.#shown = shownNumber(value);
      this.#complain("");
      return value;
    }
    const sentence = problemSentence({ field: limits.label, given: value, remedy: `give ${limits.allowed}` });
    this.#complain(isAmbiguous(text) ? `${sentence}. ${WITHOUT_MARKS}` : sentence);
    return undefined;
  }

  #complain(message: string): void {
    this.message.textContent = message;
    this.message.hidden = message === "";
    if (message === "") this.input.removeAttribute("aria-invalid");
    else this.input.setAttribute("aria-invalid", "true");
  }
}

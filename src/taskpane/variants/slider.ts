/**
 * One setting: a slider, with a box beside it for a number that is typed.
 */
import { element } from "../dom";
import { shownNumber } from "../typed-numbers";
import { knobText } from "./changes";
import type { Knob } from "./knobs";
import { NumberBox } from "./number-box";

export class Slider {
  readonly element: HTMLElement;
  readonly #range: HTMLInputElement;
  readonly #box: NumberBox;
  readonly #name = element("label");
  readonly #unit = element("span", { class: "unit" });
  readonly #low = element("span");
  readonly #own = element("span");
  readonly #high = element("span");
  #knob: Knob | undefined;
  /** What was set, in the unit that everything is kept in; undefined: as in the form. */
  #setting: number | undefined;

  constructor(id: string, changed: () => void) {
    this.#box = new NumberBox(
      id,
      () => {
        const knob = this.#knob;
        return knob && { ...knob, isAllowed: (shown) => knob.isAllowed(knob.kept(shown)) };
      },
      (shown) => {
        if (shown !== undefined) this.#set(shown, "typed");
        changed();
      },
    );
    this.#range = element("input", { type: "range", id: `${id}-slider` });
    this.#range.addEventListener("input", () => {
      this.#set(Number(this.#range.value), "slid");
      changed();
    });
    this.#name.htmlFor = id;
    this.element = element(
      "div",
      { class: "knob", hidden: true },
      this.#name,
      element("div", { class: "entry" }, this.#box.input, this.#unit),
      this.#range,
      // the box's range and the form's value are said with it; these only mark the ends for the eye
      element("div", { class: "ends", "aria-hidden": "true" }, this.#low, this.#own, this.#high),
      this.#box.message,
    );
  }

  get setting(): number | undefined {
    return this.#knob === undefined ? undefined : this.#setting;
  }

  /** Whether what stands in the box is no number that can be taken. */
  get isWrong(): boolean {
    return this.#knob !== undefined && this.#box.isWrong;
  }

  /** Takes the form's knob; what was set stays set only while the form's own value stays. */
  follow(knob: Knob | undefined): void {
    const before = this.#knob;
    const isKept = before !== undefined && knob !== undefined && before.own === knob.own;
    const isSameBox = isKept && before.unit === knob.unit && before.label === knob.label;
    if (!isKept) this.#setting = undefined;
    this.#knob = knob;
    this.element.hidden = knob === undefined;
    if (knob === undefined) return;
    this.#name.textContent = knob.label;
    this.#unit.textContent = knob.unit;
    this.#range.setAttribute("aria-label", `${knob.label}, slider`);
    Object.assign(this.#range, { min: String(knob.min), max: String(knob.max), step: String(knob.step) });
    this.#low.textContent = knobText(knob, knob.kept(knob.min));
    this.#high.textContent = knobText(knob, knob.kept(knob.max));
    this.#own.textContent = `form: ${knobText(knob, knob.own)}`;
    // a typed text that is to be mended stays until it is
    if (!isSameBox || !this.#box.isWrong) this.#showBox(knob);
    this.#showRange(knob);
  }

  /** Back to the form's value. */
  reset(): void {
    this.#setting = undefined;
    if (this.#knob === undefined) return;
    this.#showBox(this.#knob);
    this.#showRange(this.#knob);
  }

  #set(shown: number, how: "typed" | "slid"): void {
    const knob = this.#knob;
    if (knob === undefined) return;
    const own = knob.shown(knob.own);
    // a slider brought back to where it stood, or the number that the box showed, means the form's own value in full
    const isOwn = how === "slid" ? shown === onStep(knob, own) : shownNumber(shown) === shownNumber(own);
    this.#setting = isOwn ? undefined : knob.kept(shown);
    if (how === "slid") this.#showBox(knob);
    else this.#showRange(knob);
    this.#say(knob);
  }

  #showBox(knob: Knob): void {
    this.#box.show(knob.shown(this.#setting ?? knob.own));
  }

  #showRange(knob: Knob): void {
    this.#range.value = String(knob.shown(this.#setting ?? knob.own));
    this.#say(knob);
  }

  /** What a typed number beyond the slider's ends really is. */
  #say(knob: Knob): void {
    this.#range.setAttribute("aria-valuetext", knobText(knob, this.#setting ?? knob.own));
  }
}

/** Where a slider puts a value: on its nearest step. */
export function onStep({ min, max, step }: Knob, shown: number): number {
  const nearest = min + Math.round((shown - min) / step) * step;
  return Number(Math.min(max, Math.max(min, nearest)).toPrecision(12));
}

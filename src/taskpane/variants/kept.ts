/**
 * Variants that were kept, side by side. They stay as they were, whatever becomes of the form.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import type { Settings } from "../../cellar/batch/what-if";
import { button, element } from "../dom";
import type { Units } from "../units";
import { changesOf, changesText } from "./changes";
import { linesOf, type Line } from "./figures";

const NAMES = ["A", "B", "C"] as const;
type Name = (typeof NAMES)[number];
export const MOST_KEPT = NAMES.length;

export interface Variant {
  /** The form's inputs that it was made from, what was set otherwise, and what came of it. */
  readonly form: BatchInputs;
  readonly settings: Settings;
  readonly inputs: BatchInputs;
  readonly plan: BatchPlan;
}

export interface Kept {
  readonly element: HTMLElement;
  /** The name that it got; undefined where there is no place left. */
  keep(variant: Variant): Name | undefined;
  /** Shows what is kept, and what the form has become since. */
  show(form: BatchInputs | null, units: Units): void;
}

const isSame = (a: BatchInputs | null, b: BatchInputs) => JSON.stringify(a) === JSON.stringify(b);

export function stateOf({ form, inputs }: Variant, now: BatchInputs | null): string {
  if (isSame(now, inputs)) return "The form holds it.";
  return isSame(now, form) ? "" : "Made from an earlier form.";
}

/** What differs between the forms, a temperature or a currency, stands with each figure. */
export function figureRows(
  columns: readonly (readonly Line[])[],
): { readonly label: string; readonly cells: readonly string[] }[] {
  return (columns[0] ?? []).map((first, index) => {
    const lines = columns.map((each) => each[index]!);
    const alike = lines.every(({ circumstance }) => circumstance === first.circumstance);
    return alike
      ? { label: first.label, cells: lines.map(({ now }) => now) }
      : { label: first.what, cells: lines.map(({ now, circumstance }) => `${now} (${circumstance})`) };
  });
}

const row = (label: string, cells: readonly (Node | string)[]) =>
  element("tr", {}, element("th", { scope: "row" }, label), ...cells.map((cell) => element("td", {}, cell)));

export function kept(
  take: (name: Name, variant: Variant, changes: string) => void,
  removed: (name: Name) => void,
): Kept {
  const variants = new Map<Name, Variant>();
  const box = element("div", {
    class: "side-by-side",
    role: "region",
    tabindex: "0",
    "aria-label": "Variants kept",
    hidden: true,
  });

  function show(form: BatchInputs | null, units: Units): void {
    const shown = NAMES.flatMap((name) => (variants.has(name) ? [{ name, ...variants.get(name)! }] : []));
    box.hidden = shown.length === 0;
    const columns = shown.map((variant) => {
      const { name, settings, inputs, plan } = variant;
      const changes = changesText(changesOf(variant.form, settings, units));
      const put = button("Put into the form", { "aria-label": `Put variant ${name} into the form` });
      put.addEventListener("click", () => take(name, variant, changes));
      const remove = button("Remove", { "aria-label": `Remove variant ${name}` });
      remove.addEventListener("click", () => {
        variants.delete(name);
        show(form, units);
        removed(name);
      });
      // beside itself, since the form may have gone another way
      return {
        name,
        changes,
        state: stateOf(variant, form),
        lines: linesOf(inputs, plan, plan, units),
        put,
        remove,
      };
    });
    const states = columns.some(({ state }) => state !== "")
      ? [
          row(
            "Since then",
            columns.map(({ state }) => state),
          ),
        ]
      : [];
    const focused = box.contains(document.activeElement)
      ? document.activeElement?.getAttribute("aria-label")
      : undefined;
    box.replaceChildren(
      element(
        "table",
        { class: "kept" },
        element("caption", {}, "Variants kept"),
        element(
          "thead",
          {},
          element(
            "tr",
            {},
            element("td"),
            ...columns.map(({ name }) => element("th", { scope: "col" }, `Variant ${name}`)),
          ),
        ),
        element(
          "tbody",
          {},
          row(
            "What is set",
            columns.map(({ changes }) => changes),
          ),
          ...states,
          ...figureRows(columns.map(({ lines }) => lines)).map(({ label, cells }) => row(label, cells)),
          row(
            "What to do",
            columns.map(({ put, remove }) => element("div", { class: "actions" }, put, remove)),
          ),
        ),
      ),
    );
    // made anew, the button that was pressed would lose the keyboard
    const again = [...box.querySelectorAll("button")].find(
      (each) => each.getAttribute("aria-label") === focused,
    );
    again?.focus();
  }

  return {
    element: box,
    keep(variant) {
      const name = NAMES.find((each) => !variants.has(each));
      if (name !== undefined) variants.set(name, variant);
      return name;
    },
    show,
  };
}

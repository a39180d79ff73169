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

/** Whether the form has gone another way since. */
export const isOfEarlier = ({ form, inputs }: Variant, now: BatchInputs | null) =>
  !isSame(now, form) && !isSame(now, inputs);

export function stateOf(variant: Variant, now: BatchInputs | null): string {
  if (isOfEarlier(variant, now)) return "Made from an earlier form.";
  return isSame(now, variant.inputs) ? "The form holds it." : "";
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

export function kept(
  take: (name: Name, variant: Variant, changes: string) => void,
  removed: (name: Name) => void,
): Kept {
  const variants = new Map<Name, Variant>();
  const list = element("ul", { class: "kept-list" });
  const figures = element("div", {
    class: "side-by-side",
    role: "region",
    tabindex: "0",
    "aria-label": "Variants side by side",
  });
  const box = element("div", { class: "kept", hidden: true }, list, figures);

  function show(form: BatchInputs | null, units: Units): void {
    const shown = NAMES.flatMap((name) => (variants.has(name) ? [{ name, ...variants.get(name)! }] : []));
    const buttons = () => [...list.querySelectorAll("button")];
    const focused = buttons().findIndex((each) => each === document.activeElement);
    box.hidden = shown.length === 0;
    list.replaceChildren(...shown.map((variant) => itemOf(variant, form, units)));
    figures.replaceChildren(tableOf(shown, units));
    // made anew, the button that was pressed would lose the keyboard
    buttons()[focused]?.focus();
  }

  function itemOf(variant: Variant & { name: Name }, form: BatchInputs | null, units: Units): HTMLElement {
    const { name } = variant;
    const changes = changesText(changesOf(variant.form, variant.settings, units));
    const put = button(`Put variant ${name} into the form`);
    put.addEventListener("click", () => take(name, variant, changes));
    const remove = button(`Remove variant ${name}`);
    remove.addEventListener("click", () => {
      variants.delete(name);
      show(form, units);
      removed(name);
    });
    return element(
      "li",
      {},
      element("strong", {}, `Variant ${name}`),
      element("p", {}, changes),
      element("p", { class: "note" }, stateOf(variant, form)),
      element("div", { class: "actions" }, put, remove),
    );
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

function tableOf(shown: readonly (Variant & { name: Name })[], units: Units): HTMLTableElement {
  // each beside itself, since the form may have gone another way
  const columns = shown.map(({ inputs, plan }) => linesOf(inputs, plan, plan, units));
  const rows = figureRows(columns).map(({ label, cells }) =>
    element(
      "tr",
      {},
      element("th", { scope: "row" }, label),
      ...cells.map((cell) => element("td", {}, cell)),
    ),
  );
  const heads = shown.map(({ name }) => element("th", { scope: "col" }, `Variant ${name}`));
  return element(
    "table",
    {},
    element("caption", {}, "Variants side by side"),
    element("thead", {}, element("tr", {}, element("td"), ...heads)),
    element("tbody", {}, ...rows),
  );
}

/**
 * In which formulas a sheet is written.
 */
import type { Formulas } from "../workbook/book";
import { element } from "./dom";

const CHOICES: readonly (readonly [Formulas, string])[] = [
  ["add-in", "with Mousse"],
  ["portable", "for any program"],
  ["values", "none, values only"],
];

export function formulasChoice(): { readonly element: HTMLElement; chosen(): Formulas } {
  const list = element(
    "select",
    { id: "formulas" },
    ...CHOICES.map(([value, words]) => element("option", { value }, words)),
  );
  return {
    element: element(
      "div",
      { class: "formulas" },
      element("label", { for: list.id }, "Formulas"),
      list,
      element(
        "span",
        { class: "note" },
        "with Mousse: live where the add-in is; for any program: live everywhere",
      ),
    ),
    chosen: () => CHOICES[list.selectedIndex]?.[0] ?? "add-in",
  };
}

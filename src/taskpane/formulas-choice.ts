/**
 * In which formulas a sheet is written.
 */
import type { Host } from "../hosts/host";
import type { Formulas } from "../workbook/book";
import { element } from "./dom";

const CHOICES: readonly (readonly [Formulas, string])[] = [
  ["add-in", "with Mousse"],
  ["portable", "for any program"],
  ["values", "none, values only"],
];

const KEY = "formulas";

export interface FormulasChoice {
  readonly element: HTMLElement;
  chosen(): Formulas;
  /** What was chosen last in this workbook is chosen again. */
  follow(host: Host): void;
}

export function formulasChoice(): FormulasChoice {
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
    follow(host) {
      // a setting that cannot be read or kept is no reason to stop anybody
      const quietly = (work: Promise<void>) => void work.catch(() => undefined);
      quietly(
        host.recall(KEY).then((kept) => {
          if (CHOICES.some(([value]) => value === kept)) list.value = kept!;
        }),
      );
      list.addEventListener("change", () => quietly(host.keep(KEY, list.value)));
    },
  };
}

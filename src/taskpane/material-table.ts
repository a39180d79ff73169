/**
 * The materials of the form: they share three columns, so they stand in a table.
 */
import { materialKeys, materials, OTHER_KEYS } from "../cellar/batch/materials";
import type { Box } from "./box";
import { element } from "./dom";

/** Makes the box of a field and registers it; `holder` is what is hidden with it. */
export type MakeBox = (dotted: string, holder: HTMLElement, describedBy?: string) => Box;

const COLUMNS = [
  ["spare_pct", "spare"],
  ["pack", "pack size"],
  ["price", "price for 1"],
] as const;

export function materialTable(makeBox: MakeBox): HTMLElement {
  const cell = (dotted: string, label: string, tag: "td" | "div" = "td", placeholder?: string) => {
    const holder = element(tag);
    const { input, message } = makeBox(dotted, holder);
    input.setAttribute("aria-label", label);
    if (placeholder !== undefined) input.setAttribute("placeholder", placeholder);
    holder.append(input, message);
    return holder;
  };
  const row = (key: string, item: string, ...head: (Node | string)[]) =>
    element(
      "tr",
      {},
      element("th", { scope: "row" }, ...head),
      ...COLUMNS.map(([which, label]) => cell(`materials.${key}.${which}`, `${item}: ${label}`)),
    );
  const heads = ["Item", "Spare, %", "Pack size", "Price for 1"].map((head) =>
    element("th", { scope: "col" }, head),
  );
  return element(
    "table",
    { class: "materials" },
    element("thead", {}, element("tr", {}, ...heads)),
    element(
      "tbody",
      {},
      ...materialKeys.map((key) => {
        const { label, unit } = materials[key];
        return row(key, label, label, element("span", { class: "unit" }, ` ${unit}`));
      }),
      ...OTHER_KEYS.map((key, index) => {
        const item = `Other ${index + 1}`;
        const name = cell(`materials.${key}.name`, `${item}: name`, "div", `${item}: name`);
        const need = cell(`materials.${key}.need`, `${item}: how many`, "div", "how many");
        return row(key, item, element("div", { class: "other" }, name, need));
      }),
    ),
  );
}

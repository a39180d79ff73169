/**
 * The gauge readings of the form: a line each.
 */
import { READING_KEYS } from "../cellar/batch/cellar-book";
import { element } from "./dom";
import type { MakeBox } from "./material-table";

const COLUMNS = [
  ["date", "Day"],
  ["pressure_bar", "Pressure"],
  ["at_C", "At"],
] as const;

export function readingTable(makeBox: MakeBox): HTMLElement {
  const units = new Map<string, HTMLElement>();
  const lines = READING_KEYS.map((key, index) =>
    element(
      "tr",
      {},
      element("th", { scope: "row" }, String(index + 1)),
      ...COLUMNS.map(([which, head]) => {
        const holder = element("td");
        const { input, message, unit } = makeBox(`readings.${key}.${which}`, holder);
        input.setAttribute("aria-label", `Reading ${index + 1}: ${head}`);
        holder.append(input, message);
        // the first line's stands for all of them, in the head
        if (index === 0) units.set(which, unit);
        return holder;
      }),
    ),
  );
  const heads = COLUMNS.map(([which, head]) => {
    const unit = units.get(which)!;
    return element("th", { scope: "col" }, head, " ", unit);
  });
  return element(
    "table",
    { class: "materials readings" },
    element("thead", {}, element("tr", {}, element("td"), ...heads)),
    element("tbody", {}, ...lines),
  );
}

/**
 * The gauge readings of the form: a line each.
 */
import { READING_KEYS } from "../cellar/batch/cellar-book";
import { element } from "./dom";
import type { MakeBox } from "./material-table";

const COLUMNS = [
  ["date", "Day"],
  ["pressure_bar", "bar"],
  ["at_C", "at, °C"],
] as const;

export function readingTable(makeBox: MakeBox): HTMLElement {
  const heads = ["", ...COLUMNS.map(([, head]) => head)];
  return element(
    "table",
    { class: "materials readings" },
    element("thead", {}, element("tr", {}, ...heads.map((head) => element("th", { scope: "col" }, head)))),
    element(
      "tbody",
      {},
      ...READING_KEYS.map((key, index) =>
        element(
          "tr",
          {},
          element("th", { scope: "row" }, String(index + 1)),
          ...COLUMNS.map(([which, head]) => {
            const holder = element("td");
            const { input, message } = makeBox(`readings.${key}.${which}`, holder);
            input.setAttribute("aria-label", `Reading ${index + 1}: ${head}`);
            holder.append(input, message);
            return holder;
          }),
        ),
      ),
    ),
  );
}

/**
 * The glass in which a dosage is tried.
 */
import { isWithin, rangeText } from "../../cellar/domains";
import { GLASS_ML, glassVolume } from "../../cellar/dosage";
import { element } from "../dom";
import { NumberBox } from "../variants/number-box";

export interface GlassBox {
  readonly element: HTMLElement;
  /** mL; undefined while the box holds no volume that can be taken. */
  readonly volumeMl: number | undefined;
}

const LABEL = "Volume of a glass";

export function glassBox(changed: () => void): GlassBox {
  let volumeMl: number | undefined = GLASS_ML;
  const limits = {
    label: LABEL,
    allowed: rangeText(glassVolume),
    isAllowed: (value: number) => isWithin(glassVolume, value),
  };
  const box = new NumberBox(
    "bench-glass_mL",
    () => limits,
    (value) => {
      volumeMl = value;
      changed();
    },
  );
  box.show(GLASS_ML);
  return {
    element: element(
      "div",
      { class: "glass-size" },
      element("label", { for: box.input.id }, LABEL),
      element("div", { class: "entry" }, box.input, element("span", { class: "unit" }, "mL")),
      element(
        "p",
        { class: "note" },
        "Liqueur first, then filled up with the disgorged wine to this volume.",
      ),
      box.message,
    ),
    get volumeMl() {
      return volumeMl;
    },
  };
}

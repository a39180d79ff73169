/**
 * How far the hours grow with the volume: twice the wine is seldom twice the work.
 */
import { USUAL_LABOUR_PCT } from "../../cellar/batch/what-if";
import { domains, isWithin, rangeText } from "../../cellar/domains";
import { element } from "../dom";
import { NumberBox } from "./number-box";

const LABEL = "Labour that grows with the volume";

export interface LabourBox {
  readonly element: HTMLElement;
  readonly pct: number;
  readonly isWrong: boolean;
  reset(): void;
}

export function labourBox(changed: () => void): LabourBox {
  let pct: number = USUAL_LABOUR_PCT;
  const limits = {
    label: LABEL,
    allowed: rangeText(domains.percent),
    isAllowed: (value: number) => isWithin(domains.percent, value),
  };
  const box = new NumberBox(
    "variant-labour_pct",
    () => limits,
    (value) => {
      pct = value ?? pct;
      changed();
    },
  );
  const reset = () => {
    pct = USUAL_LABOUR_PCT;
    box.show(pct);
  };
  reset();
  return {
    element: element(
      "div",
      { class: "with-volume" },
      element("label", { for: box.input.id }, LABEL),
      element("div", { class: "entry" }, box.input, element("span", { class: "unit" }, "%")),
      box.message,
      element(
        "p",
        { class: "note" },
        "Other materials grow with the volume; prices, rates, stock and the bottles held back stay.",
      ),
    ),
    get pct() {
      return pct;
    },
    get isWrong() {
      return box.isWrong;
    },
    reset,
  };
}

/**
 * What a saleable bottle costs, as one bar of its parts.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import type { Part } from "../../workbook/plan/cost-parts";
import { element } from "../dom";
import { shownResult } from "../typed-numbers";
import { SWATCH, figure, sentence, swatch, write } from "./figure";
import { costPicture, costShares, type CostShare } from "./geometry-cost";
import { LOOKS, newLooks, type Looks } from "./looks";
import { along, svg } from "./svg";

const CAPTION = "Cost of a saleable bottle";

/**
 * The words of the sheet's own parts (a test holds them together). Those stand among trees of formulas, which the pane
 * loads only when it writes.
 */
export const COST_WORDS: Readonly<Record<Part, string>> = {
  baseWine: "Base wine",
  tirageMaterials: "Materials for the tirage",
  tirageLabour: "Labour at tirage",
  riddlingLabour: "Labour at riddling",
  disgorgingLabour: "Labour at disgorging and dosage",
  finishingMaterials: "Materials for finishing, and others",
  finishingWine: "Wine for dosage and topping up",
  finishingLabour: "Labour at labelling and packing",
  storage: "Storage",
  moneyTiedUp: "Money tied up until release",
  duty: "Duty",
};

export function costDrawing({ batch }: BatchInputs, { costs }: BatchPlan): HTMLElement {
  const parts = Object.keys(COST_WORDS) as Part[];
  const shares = costShares(
    Object.fromEntries(parts.map((part) => [part, costs[part]])) as Record<Part, number>,
    costs.saleableBottles,
  );
  const missing = missingWords(costs.unpriced);
  if (shares.length === 0) return sentence("cost", CAPTION, ["Nothing costs anything yet.", ...missing]);

  const looks = newLooks();
  const { pieces, height } = costPicture(shares);
  const amount = (perBottle: number) => `${shownResult(perBottle, 2)} ${batch.currency}`;
  const whole = `In all ${amount(costs.perBottle)} a bottle, ${amount(costs.perCase)} a case of ${shownResult(batch.bottlesPerCase, 0)}.`;
  return figure({
    name: "cost",
    caption: CAPTION,
    height,
    nodes: [
      looks.defs,
      ...pieces.map(({ box: { left, top, width, height: tall } }, index) =>
        svg("rect", { x: left, y: top, width, height: tall, ...lookOf(looks, index) }),
      ),
      ...pieces.map(({ leader }) => svg("path", { d: along(leader), class: "drawing-leader" })),
      ...pieces.map(({ number }) => write(number)),
    ],
    sayings: [],
    key: element(
      "div",
      { class: "drawing-parts" },
      element("p", { class: "drawing-note drawing-whole" }, whole),
      ...missing.map((words) => element("p", { class: "drawing-note" }, words)),
      keyTable(shares, looks, amount),
    ),
    unseen: [
      ...shares.map(
        (each, index) =>
          `${index + 1}, ${nameOf(each)}: ${amount(each.perBottle)}, ${percent(each.share)} of the cost.`,
      ),
      whole,
      ...missing,
    ],
  });
}

function keyTable(
  shares: readonly CostShare[],
  looks: Looks,
  amount: (perBottle: number) => string,
): HTMLElement {
  const { width, height } = SWATCH;
  const patch = (index: number) =>
    swatch([svg("rect", { x: 1, y: 1, width: width - 2, height: height - 2, ...lookOf(looks, index) })]);
  const rows = shares.map((each, index) =>
    element(
      "tr",
      {},
      element("td", { class: "drawing-number" }, shownResult(index + 1, 0)),
      element("td", { class: "drawing-patch" }, patch(index)),
      element("th", { scope: "row" }, nameOf(each)),
      element("td", {}, amount(each.perBottle)),
      element("td", {}, percent(each.share)),
    ),
  );
  return element("table", { class: "drawing-table" }, element("tbody", {}, ...rows));
}

/** Neighbours never look alike, and numbers tell what comes again. */
const lookOf = (looks: Looks, index: number) => looks.area(LOOKS[index % LOOKS.length]!);

const nameOf = ({ part }: CostShare) => (part === "other" ? "Other, each below 2 %" : COST_WORDS[part]);

/** A whole number, but not 0 for what is there. */
const percent = (share: number) => `${shownResult(share * 100, share < 0.01 ? 1 : 0)} %`;

function missingWords(unpriced: number): string[] {
  if (unpriced === 0) return [];
  return unpriced === 1
    ? ["1 price is missing, so a bottle costs more than this."]
    : [`${shownResult(unpriced, 0)} prices are missing, so a bottle costs more than this.`];
}

/**
 * The few results to see while typing: what to weigh, pour and expect, and whether anything is out of bounds.
 */
import type { BatchInputs } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import { CHECK_KEYS, type Verdict } from "../cellar/batch/checks";
import { checkPhrase } from "../workbook/plan/checks";
import { wordNumber } from "../cellar/refusal";
import { element } from "./dom";
import { shownResult } from "./typed-numbers";

interface Figure {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
}

export function figures(
  { batch, tirage: given }: BatchInputs,
  { tirage, dosage, costs }: BatchPlan,
): Figure[] {
  const bar = (expected: number, high: number) => `${shownResult(expected, 2)} (to ${shownResult(high, 2)})`;
  const { cellar, hottest } = tirage.pressures;
  return [
    { label: "Sugar to weigh", value: shownResult(tirage.sugarKg, 2), unit: "kg" },
    ...(tirage.liqueurL > 0
      ? [{ label: "Tirage liqueur", value: shownResult(tirage.liqueurL, 1), unit: "L" }]
      : []),
    { label: "Bottles", value: shownResult(tirage.bottles, 0), unit: "" },
    {
      label: `Excess pressure, cellar, ${shownResult(given.cellar_C, 0)} °C`,
      value: bar(cellar.expected, cellar.high),
      unit: "bar",
    },
    {
      label: `Excess pressure, hottest, ${shownResult(given.hottest_C, 0)} °C`,
      value: bar(hottest.expected, hottest.high),
      unit: "bar",
    },
    { label: "Dosage a bottle", value: shownResult(dosage.eachMl, 2), unit: "mL" },
    { label: "Driest term permitted", value: dosage.terms[0]!, unit: "" },
    {
      label:
        costs.unpriced === 0
          ? "Cost of a saleable bottle"
          : `Cost of a saleable bottle, ${costs.unpriced} prices missing`,
      value: shownResult(costs.perBottle, 2),
      unit: batch.currency,
    },
  ];
}

/** Verdicts in words, the worst first: "Months on the lees at least 9 months: 3". */
export function findings({ checks }: BatchPlan): { readonly verdict: Verdict; readonly what: string }[] {
  const wanted = (verdict: Verdict) =>
    CHECK_KEYS.filter((key) => checks[key].verdict === verdict).map((key) => {
      const check = checks[key];
      const { value, limit } = check;
      const blank = value === "" || limit === "";
      const shown = blank
        ? "nothing given"
        : typeof value === "number"
          ? wordNumber(Number(value.toFixed(2)))
          : value;
      return { verdict, what: `${checkPhrase(key, check)}: ${shown}` };
    });
  return [...wanted("stop"), ...wanted("look again")];
}

export function previewOf(inputs: BatchInputs, plan: BatchPlan): HTMLElement {
  const rows = figures(inputs, plan).map(({ label, value, unit }) =>
    element(
      "tr",
      {},
      element("th", { scope: "row" }, label),
      element("td", {}, value),
      element("td", { class: "unit" }, unit),
    ),
  );
  const found = findings(plan);
  const verdicts =
    found.length === 0
      ? element("p", { class: "verdict" }, "All checks are fine.")
      : element(
          "ul",
          { class: "findings" },
          ...found.map(({ verdict, what }) => element("li", {}, element("strong", {}, `${verdict}: `), what)),
        );
  return element(
    "div",
    {},
    element(
      "table",
      { class: "figures" },
      element("caption", {}, "Figures of this form; a sheet once written goes its own way."),
      element("tbody", {}, ...rows),
    ),
    verdicts,
  );
}

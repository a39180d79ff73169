/**
 * The steps of a batch in the order of the work: which inputs each asks for, the few figures it comes to, and the
 * checks that concern it.
 */
import type { CheckKey } from "../cellar/batch/checks";
import type { BatchInputs, fields } from "../cellar/batch/fields";
import type { BatchPlan } from "../cellar/batch/plan";
import { shownDate, shownResult } from "./typed-numbers";
import type { Units } from "./units";

export interface Figure {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
}

export type Section = keyof typeof fields;
export type Drawing = "pressure" | "timeline" | "neck" | "cost";

export interface Step {
  readonly key: string;
  readonly title: string;
  /** The first belong to every plan and are open; `later` ones are asked for when there is something to say. */
  readonly sections: readonly Section[];
  readonly later?: readonly Section[];
  readonly checks: readonly CheckKey[];
  readonly drawing?: Drawing;
  readonly figures: (inputs: BatchInputs, plan: BatchPlan, units: Units) => readonly Figure[];
}

const count = (value: number) => shownResult(value, 0);
const figure = (label: string, value: string, unit = ""): Figure => ({ label, value, unit });

const pressure = (
  label: string,
  celsius: number,
  { expected, high }: { readonly expected: number; readonly high: number },
  units: Units,
): Figure => {
  const { value, unit } = units.parts("pressure", expected, 2);
  const most = units.parts("pressure", high, 2).value;
  return figure(`${label}, ${units.degrees(celsius)}`, `${value} (to ${most})`, unit);
};

const cellarPressure = (inputs: BatchInputs, plan: BatchPlan, units: Units) =>
  pressure("Excess pressure, cellar", inputs.tirage.cellar_C, plan.tirage.pressures.cellar, units);
const hottestPressure = (inputs: BatchInputs, plan: BatchPlan, units: Units) =>
  pressure("Excess pressure, hottest", inputs.tirage.hottest_C, plan.tirage.pressures.hottest, units);
const bottles = ({ tirage }: BatchPlan) => figure("Bottles to have ready", count(tirage.bottles), "bottles");
const sugar = ({ tirage }: BatchPlan) => figure("Sugar to weigh", shownResult(tirage.sugarKg, 2), "kg");
const liqueur = ({ tirage }: BatchPlan) =>
  tirage.liqueurL > 0 ? [figure("Tirage liqueur", shownResult(tirage.liqueurL, 1), "L")] : [];
const dosage = ({ dosage: { eachMl } }: BatchPlan) => figure("Dosage a bottle", shownResult(eachMl, 2), "mL");
const term = ({ dosage: { terms } }: BatchPlan) => figure("Driest term permitted", terms[0]!);
const perBottle = ({ batch }: BatchInputs, { costs }: BatchPlan) =>
  figure(
    costs.unpriced === 0
      ? "Cost of a saleable bottle"
      : costs.unpriced === 1
        ? "Cost of a saleable bottle, 1 price missing"
        : `Cost of a saleable bottle, ${costs.unpriced} prices missing`,
    shownResult(costs.perBottle, 2),
    batch.currency,
  );

export const STEPS: readonly Step[] = [
  {
    key: "wine",
    title: "Base wine",
    sections: ["batch", "baseWine"],
    checks: ["batchInputs", "baseWineInputs", "dryness", "baseAlcohol", "totalSo2", "bottleSize"],
    figures: (_inputs, plan) => [bottles(plan)],
  },
  {
    key: "tirage",
    title: "Tirage",
    sections: ["tirage"],
    checks: [
      "tirageInputs",
      "hottest",
      "modelRange",
      "tirageRise",
      "alcoholAfter",
      "yeast",
      "filled",
      "pressureClass",
    ],
    drawing: "pressure",
    figures: (inputs, plan, units) => [
      sugar(plan),
      ...liqueur(plan),
      ...(plan.tirage.starterL > 0
        ? [figure("Yeast starter", shownResult(plan.tirage.starterL, 1), "L")]
        : []),
      figure("Dose, with the wine's own sugar", shownResult(plan.tirage.dose, 2), "g/L"),
      cellarPressure(inputs, plan, units),
      hottestPressure(inputs, plan, units),
      figure("Alcohol afterwards", shownResult(plan.tirage.alcoholAfterVol, 2), "% vol"),
    ],
  },
  {
    key: "lees",
    title: "On the lees",
    sections: ["lees"],
    later: ["readings", "riddling"],
    checks: [
      "leesInputs",
      "readingsInputs",
      "riddlingInputs",
      "leesMonths",
      "totalMonths",
      "riddlingStart",
      "readingsState",
    ],
    drawing: "timeline",
    figures: (_inputs, { dates, riddling }) => [
      figure("Planned disgorging", shownDate(dates.disgorging)),
      figure("Earliest disgorging", shownDate(dates.earliestDisgorging)),
      figure("First turn of riddling", shownDate(riddling.start)),
      figure("Release", shownDate(dates.release)),
      figure("Racks or cages", count(riddling.racks)),
    ],
  },
  {
    key: "dosage",
    title: "Disgorging and dosage",
    sections: ["disgorging", "dosage"],
    checks: [
      "disgorgingInputs",
      "dosageInputs",
      "neckBath",
      "room",
      "stock",
      "dosageRise",
      "term",
      "termMargin",
      "labelAlcohol",
    ],
    drawing: "neck",
    figures: (_inputs, plan, units) => {
      const { dosage: finish } = plan;
      const after = units.parts("pressure", finish.pressureAt20, 2);
      return [
        dosage(plan),
        figure("Liqueur to prepare", shownResult(finish.batchL, 1), "L"),
        figure("Sweetness as analysed", shownResult(finish.sugarGL, 1), "g/L"),
        term(plan),
        figure("Alcohol on the label", shownResult(finish.labelVol, 1), "% vol"),
        figure(`Excess pressure afterwards, ${units.degrees(20)}`, after.value, after.unit),
      ];
    },
  },
  {
    key: "costs",
    title: "Costs",
    sections: ["costs"],
    later: ["materials", "actual"],
    checks: ["materialsInputs", "costsInputs", "actualInputs", "forSale", "prices"],
    drawing: "cost",
    figures: (inputs, plan) => [
      perBottle(inputs, plan),
      figure("Total cost", shownResult(plan.costs.total, 2), inputs.batch.currency),
      figure("Bottles for sale", count(plan.costs.saleableBottles), "bottles"),
      figure("A case", shownResult(plan.costs.perCase, 2), inputs.batch.currency),
    ],
  },
];

/** The figures that matter most, of all steps. */
export const keyFigures = (inputs: BatchInputs, plan: BatchPlan, units: Units): Figure[] => [
  sugar(plan),
  ...liqueur(plan),
  bottles(plan),
  cellarPressure(inputs, plan, units),
  hottestPressure(inputs, plan, units),
  dosage(plan),
  term(plan),
  perBottle(inputs, plan),
];

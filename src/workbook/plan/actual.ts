/**
 * Section Planned and actual: what came of the plan, as it is found out.
 */
import type { ActualKey } from "../../cellar/batch/plan-actual";
import { DEFAULT_HEADSPACE_PCT } from "../../cellar/constants";
import { ML_PER_LITRE } from "../../cellar/units";
import {
  builtin,
  cell,
  divided,
  iff,
  isNumber,
  minus,
  mousse,
  plus,
  times,
  type Expression,
} from "../formula";
import type { CellSpec, Row } from "../layout";
import {
  FORMATS,
  columnHeads,
  currencyUnit,
  heading,
  input,
  inputCell,
  resultCell,
  text,
  type Batch,
  type Section,
} from "./rows";

interface Line {
  readonly key: ActualKey;
  readonly label: string;
  readonly unit: string;
  readonly format: string;
  readonly planned: Expression;
  /** The input that holds the actual figure, or how it follows from others. */
  readonly actual: string | Expression;
}

const finished = input("actual.bottlesFinished");
const held = input("costs.heldBack_bottles");
const bar = input("actual.pressure_bar");
const celsius = input("actual.pressureAt_C");

const wineShare = (bottles: Expression) =>
  times(
    divided(
      divided(times(bottles, input("batch.bottle_mL")), ML_PER_LITRE),
      plus(cell("plan_tirageWine_L"), cell("plan_finishingWine_L")),
    ),
    100,
  );
const bottles = (key: ActualKey, label: string, planned: Expression): Line => ({
  key,
  label,
  unit: "bottles",
  format: FORMATS.whole,
  planned,
  actual: `actual.${key}`,
});

const LINES: readonly Line[] = [
  bottles("bottlesFilled", "Bottles filled", cell("plan_bottles")),
  bottles("bottlesBroken", "Bottles broken", minus(cell("plan_bottles"), cell("plan_finished_bottles"))),
  bottles("bottlesDisgorged", "Bottles disgorged", cell("plan_finished_bottles")),
  bottles("bottlesFinished", "Bottles finished", cell("plan_finished_bottles")),
  {
    key: "tirageSugar",
    label: "Sugar used at tirage",
    unit: "kg",
    format: FORMATS.two,
    planned: cell("plan_tirageSugar_kg"),
    actual: "actual.tirageSugar_kg",
  },
  {
    key: "pressureAt20",
    label: "Pressure of the finished wine at 20 °C",
    unit: "bar",
    format: FORMATS.two,
    planned: cell("plan_finishedPressure20_bar"),
    actual: iff(
      builtin("AND", isNumber(bar), isNumber(celsius)),
      mousse(
        "PRESSURE.SHIFT",
        bar,
        celsius,
        20,
        cell("plan_finishedAlcohol_vol"),
        cell("plan_sugar_gL"),
        DEFAULT_HEADSPACE_PCT,
        0,
      ),
      "",
    ),
  },
  {
    key: "sugar",
    label: "Glucose + fructose, analysed",
    unit: "g/L",
    format: FORMATS.two,
    planned: cell("plan_sugar_gL"),
    actual: "actual.sugar_gL",
  },
  {
    key: "alcohol",
    label: "Alcohol, analysed",
    unit: "% vol",
    format: FORMATS.two,
    planned: cell("plan_finishedAlcohol_vol"),
    actual: "actual.alcohol_vol",
  },
  {
    key: "cost",
    label: "Cost of the batch",
    unit: "",
    format: FORMATS.two,
    planned: cell("plan_cost_total"),
    actual: "actual.cost",
  },
  {
    key: "perBottle",
    label: "Cost of a saleable bottle",
    unit: "",
    format: FORMATS.two,
    planned: cell("plan_perBottle"),
    actual: iff(
      builtin("AND", isNumber(input("actual.cost")), isNumber(finished)),
      mousse("COST.BOTTLE", input("actual.cost"), minus(finished, held), 0),
      "",
    ),
  },
  {
    key: "yieldPct",
    label: "Wine in finished bottles, of all wine used",
    unit: "%",
    format: FORMATS.one,
    planned: wineShare(cell("plan_finished_bottles")),
    actual: iff(isNumber(finished), wineShare(finished), ""),
  },
];

/** What stands for a figure that what was typed in does not give. */
const NO_ANSWER = "no answer";

export const actualSection: Section = (batch) => [
  ...heading("Planned and actual"),
  columnHeads("What", ">Planned", "~Unit", ">Actual", ">Difference"),
  ...LINES.map((line) => comparisonRow(line, batch)),
  {
    cells: [
      text("Reading behind the pressure: bar, at °C", "label"),
      inputCell("actual.pressure_bar", batch.inputs),
      text("bar, at", "unit"),
      inputCell("actual.pressureAt_C", batch.inputs),
      text("°C", "unit"),
    ],
  },
];

const nameOfPlanned = (key: ActualKey) => `plan_planned_${key}`;
export const FIRST_COMPARED = nameOfPlanned(LINES[0]!.key);

function comparisonRow({ key, label, unit, format, planned, actual }: Line, batch: Batch): Row {
  const compared = batch.plan.actual[key];
  const actualName = `plan_actual_${key}`;
  const actualCell: CellSpec =
    typeof actual === "string"
      ? { ...inputCell(actual, batch.inputs), format }
      : resultCell({
          name: actualName,
          value: compared.actual ?? NO_ANSWER,
          formula: builtin("IFERROR", actual, NO_ANSWER),
          format,
        });
  const found = typeof actual === "string" ? input(actual) : cell(actualName);
  const plannedName = nameOfPlanned(key);
  return {
    cells: [
      text(label, "label"),
      resultCell({ name: plannedName, value: compared.planned, formula: planned, format }),
      unit === "" ? currencyUnit(batch) : text(unit, "unit"),
      actualCell,
      resultCell({
        name: `plan_difference_${key}`,
        value: compared.difference ?? "",
        format,
        formula: iff(isNumber(found), minus(found, cell(plannedName)), ""),
      }),
    ],
  };
}

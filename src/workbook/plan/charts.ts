/**
 * Section Charts: pressure against temperature with the glass rating. Its numbers stand
 * here, and it is drawn beside the comparison above; where the money goes beside the parts of the cost.
 */
import { DEFAULT_SPREAD, expectedPressure, pressureRange, type Fill } from "../../cellar/carbonation";
import { cell, iff, isBlank, nth, type Expression } from "../formula";
import type { ChartSpec, Row } from "../layout";
import { wineOf } from "../../cellar/batch/plan-tirage";
import { ACTUAL_KEYS } from "../../cellar/batch/plan-actual";
import { FIRST_COMPARED } from "./actual";
import { PART_KEYS, partLabel, partName } from "./cost-parts";
import {
  FORMATS,
  LAST_COLUMN,
  heading,
  input,
  resultCell,
  text,
  expectedAt,
  spreadAt,
  type Batch,
  type Section,
} from "./rows";

const CELSIUS = [0, 5, 10, 15, 20, 25, 30] as const;
/** Wider than the sheet's own columns: eleven labels need the room. */
const BESIDE = [5, LAST_COLUMN + 3] as const;
const rating = input("tirage.glassRating_bar");
const dose = cell("plan_dose_gL");

const cellName = (which: string, celsius: number) => `plan_curve_${which}_${celsius}`;
const line = (which: string) => ({
  first: cellName(which, CELSIUS[0]),
  last: cellName(which, CELSIUS[CELSIUS.length - 1]!),
});

export const chartsSection: Section = (batch) => [
  ...heading("Charts"),
  {
    cells: [
      text("Excess pressure under the crown cap at, °C", "columnHead"),
      ...CELSIUS.map((celsius) => ({
        key: cellName("at", celsius),
        value: celsius,
        style: "numberHead" as const,
        format: FORMATS.whole,
      })),
    ],
  },
  ...curveRows(batch),
];

function curveRows({ inputs, plan }: Batch): Row[] {
  const fill: Fill = { ...wineOf(inputs), dose: plan.tirage.dose };
  const row = (
    which: string,
    label: string,
    value: (celsius: number) => number,
    formula: (celsius: number) => Expression,
  ): Row => ({
    cells: [
      text(label, "label"),
      ...CELSIUS.map((celsius) =>
        resultCell({
          key: cellName(which, celsius),
          value: value(celsius),
          format: FORMATS.two,
          formula: formula(celsius),
        }),
      ),
    ],
  });
  const range = (celsius: number) => pressureRange(fill, celsius, DEFAULT_SPREAD);
  return [
    row(
      "expected",
      "Expected, bar",
      (celsius) => expectedPressure(fill, celsius),
      (celsius) => expectedAt(dose, celsius),
    ),
    row(
      "low",
      "Low, bar",
      (celsius) => range(celsius).low,
      (celsius) => nth(spreadAt(dose, celsius), 1),
    ),
    row(
      "high",
      "High, bar",
      (celsius) => range(celsius).high,
      (celsius) => nth(spreadAt(dose, celsius), 3),
    ),
    row(
      "rating",
      "Glass maker's rating, bar (0: none given)",
      () => inputs.tirage.glassRating_bar ?? 0,
      // an error would not be drawn either, but it would stand in the sheet
      () => iff(isBlank(rating), 0, rating),
    ),
  ];
}

export const planCharts: readonly ChartSpec[] = [
  {
    kind: "lines",
    title: "Excess pressure against temperature",
    description:
      "Excess pressure under the crown cap rises with temperature: expected, low and high, and the glass maker's rating as a level line.",
    categories: line("at"),
    series: [
      { title: "Expected", values: line("expected"), look: "solid" },
      { title: "Low", values: line("low"), look: "dotted" },
      { title: "High", values: line("high"), look: "dotted" },
      { title: "Glass maker's rating (0: none given)", values: line("rating"), look: "dashed" },
    ],
    horizontal: { title: "Temperature, °C", min: CELSIUS[0], max: CELSIUS[CELSIUS.length - 1]! },
    vertical: { title: "Excess pressure, bar", min: 0 },
    // beside the comparison above, which leaves the room
    at: FIRST_COMPARED,
    rows: ACTUAL_KEYS.length + 1,
    columns: BESIDE,
  },
  {
    kind: "bars",
    title: "Where the money goes",
    description: "Each part of the batch's cost as a bar.",
    categories: { first: partLabel(PART_KEYS[0]!), last: partLabel(PART_KEYS.at(-1)!) },
    series: [
      {
        title: "Cost",
        values: { first: partName(PART_KEYS[0]!), last: partName(PART_KEYS.at(-1)!) },
        look: "dark",
      },
    ],
    horizontal: { title: "Cost, in the currency of the plan", format: FORMATS.whole, min: 0 },
    vertical: { title: "" },
    at: "plan_costs_riddling_hours",
    // from there to the total; fewer, and every second name is left out
    rows: PART_KEYS.length + 5,
    // wider than the sheet's own columns: eleven labels need the room
    columns: BESIDE,
  },
];

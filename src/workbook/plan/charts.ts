/**
 * Section Charts: pressure against temperature with the glass rating, and where the money goes. The numbers drawn
 * stand beside them.
 */
import { expectedPressure, pressureRange, DEFAULT_SPREAD, type Fill } from "../../cellar/carbonation";
import { blank, cell, iff, isBlank, mousse, nth } from "../formula";
import type { ChartSpec, Row } from "../layout";
import { partLabel, partName, PART_KEYS } from "./cost-parts";
import {
  FORMATS,
  LAST_COLUMN,
  columnHeads,
  heading,
  input,
  resultCell,
  text,
  wineAndBottle,
  type Batch,
  type Section,
} from "./rows";

const CELSIUS = [0, 5, 10, 15, 20, 25, 30, 35] as const;
const CHART_ROWS = 17;
const PLACE = "plan_charts";
const rating = input("tirage.glassRating_bar");
const dose = cell("plan_dose_gL");
const alcohol = input("baseWine.alcohol_vol");

const cellName = (which: string, celsius: number) => `plan_curve_${which}_${celsius}`;
const column = (which: string) => ({
  first: cellName(which, CELSIUS[0]),
  last: cellName(which, CELSIUS[CELSIUS.length - 1]!),
});

export const chartsSection: Section = (batch) => [
  ...heading("Charts"),
  columnHeads(
    "Excess pressure under the crown cap",
    ">At, °C",
    ">Expected, bar",
    ">Low, bar",
    ">High, bar",
    ">Glass rating, bar",
  ),
  ...CELSIUS.map((celsius) => curveRow(celsius, batch)),
  { cells: [{ value: null, style: "label", key: PLACE }] },
  ...Array.from({ length: CHART_ROWS }, (): Row => ({ cells: [] })),
];

function curveRow(celsius: number, { inputs, plan }: Batch): Row {
  const { tirage, baseWine } = inputs;
  const fill: Fill = {
    dose: plan.tirage.dose,
    baseAlcoholVol: baseWine.alcohol_vol,
    yieldShare: tirage.yield,
    headspacePct: tirage.headspace_pct,
    dissolvedCo2GL: baseWine.dissolvedCO2_gL,
  };
  const { low, high } = pressureRange(fill, celsius, DEFAULT_SPREAD);
  const spread = mousse("TIRAGE.RANGE", dose, celsius, alcohol, blank, blank, blank, blank, ...wineAndBottle);
  return {
    cells: [
      text(celsius === CELSIUS[0] ? "Rating 0: none given" : "", "note"),
      { key: cellName("at", celsius), value: celsius, style: "result", format: FORMATS.whole },
      resultCell({
        key: cellName("expected", celsius),
        value: expectedPressure(fill, celsius),
        format: FORMATS.two,
        formula: mousse("TIRAGE.PRESSURE", dose, celsius, alcohol, ...wineAndBottle),
      }),
      resultCell({ key: cellName("low", celsius), value: low, format: FORMATS.two, formula: nth(spread, 1) }),
      resultCell({
        key: cellName("high", celsius),
        value: high,
        format: FORMATS.two,
        formula: nth(spread, 3),
      }),
      resultCell({
        key: cellName("rating", celsius),
        value: tirage.glassRating_bar ?? 0,
        format: FORMATS.two,
        // an error would not be drawn either, but it would stand in the sheet
        formula: iff(isBlank(rating), 0, rating),
      }),
    ],
  };
}

export function planCharts(): ChartSpec[] {
  return [
    {
      kind: "lines",
      title: "Excess pressure against temperature",
      description:
        "Excess pressure under the crown cap rises with temperature: expected, low and high, and the glass maker's rating as a level line.",
      categories: column("at"),
      series: [
        { title: "Expected", values: column("expected"), look: "solid" },
        { title: "Low", values: column("low"), look: "dotted" },
        { title: "High", values: column("high"), look: "dotted" },
        { title: "Glass maker's rating (0: none given)", values: column("rating"), look: "dashed" },
      ],
      horizontal: { title: "Temperature, °C", min: CELSIUS[0], max: CELSIUS[CELSIUS.length - 1]! },
      vertical: { title: "Excess pressure, bar", min: 0 },
      at: PLACE,
      rows: CHART_ROWS,
      columns: [0, 1],
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
      at: PLACE,
      rows: CHART_ROWS,
      columns: [2, LAST_COLUMN],
    },
  ];
}

/**
 * The table of pressures of section Tirage: cellar, 10 °C, 20 °C and the hottest day, each with its spread.
 */
import type { PressureRange } from "../../cellar/carbonation";
import { cell, mousse, nth, number, numberOf, type Expression } from "../formula";
import type { Row } from "../layout";
import {
  FORMATS,
  columnHeads,
  input,
  resultCell,
  resultRow,
  text,
  expectedAt,
  spreadAt,
  type Batch,
  gap,
} from "./rows";

const dose = cell("plan_dose_gL");

export function pressureRows(batch: Batch): Row[] {
  const { tirage } = batch.plan;
  const given = batch.inputs.tirage;
  return [
    gap,
    {
      cells: [
        text("Excess pressure under the crown cap; 95 % of the bottles lie between low and high.", "note"),
      ],
    },
    columnHeads("When", ">Expected, bar", ">At, °C", ">Low, bar", ">High, bar"),
    pressureRow(
      "Cellar",
      "cellar",
      numberOf(input("tirage.cellar_C")),
      given.cellar_C,
      tirage.pressures.cellar,
    ),
    pressureRow("At 10 °C", "at10", number(10), 10, tirage.pressures.at10),
    pressureRow("At 20 °C", "at20", number(20), 20, tirage.pressures.at20),
    pressureRow(
      "Hottest day in storage",
      "hottest",
      numberOf(input("tirage.hottest_C")),
      given.hottest_C,
      tirage.pressures.hottest,
    ),
    resultRow({
      name: "plan_at20ByTable_bar",
      label: "At 20 °C by the official gauge table",
      unit: "bar",
      format: FORMATS.two,
      value: tirage.at20ByTable,
      formula: mousse("PRESSURE.AT20", cell("plan_pressure_at10_bar"), 10),
      note: "what a gauge read at 10 °C counts as; the checks go by the physics above",
    }),
  ];
}

/** One temperature: expected, low and high. */
function pressureRow(label: string, key: string, at: Expression, celsius: number, range: PressureRange): Row {
  const spread = spreadAt(dose, at);
  return {
    cells: [
      text(label, "label"),
      resultCell({
        name: `plan_pressure_${key}_bar`,
        value: range.expected,
        format: FORMATS.two,
        style: "key",
        formula: expectedAt(dose, at),
      }),
      {
        value: celsius,
        style: "result",
        format: FORMATS.one,
        formula: at,
      },
      resultCell({
        name: `plan_pressure_${key}_low_bar`,
        value: range.low,
        format: FORMATS.two,
        formula: nth(spread, 1),
      }),
      resultCell({
        name: `plan_pressure_${key}_high_bar`,
        value: range.high,
        format: FORMATS.two,
        formula: nth(spread, 3),
      }),
    ],
  };
}

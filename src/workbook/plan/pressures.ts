/**
 * The table of pressures of section Tirage: cellar, 10 °C, 20 °C and the hottest day, each with its spread.
 */
import type { PressureRange } from "../../cellar/carbonation";
import { blank, cell, mousse, nth, type Expression } from "../formula";
import type { Row } from "../layout";
import { FORMATS, columnHeads, input, resultCell, resultRow, text, wineAndBottle, type Batch } from "./rows";

const dose = cell("plan_dose_gL");

export function pressureRows(batch: Batch): Row[] {
  const { tirage } = batch.plan;
  return [
    { cells: [] },
    {
      cells: [
        text("Excess pressure under the crown cap; 95 % of the bottles lie between low and high.", "note"),
      ],
    },
    columnHeads("When", ">Expected, bar", ">At, °C", ">Low, bar", ">High, bar"),
    pressureRow(
      "Cellar",
      "cellar",
      input("tirage.cellar_C"),
      batch.inputs.tirage.cellar_C,
      tirage.pressures.cellar,
    ),
    pressureRow("At 10 °C", "at10", null, 10, tirage.pressures.at10),
    pressureRow("At 20 °C", "at20", null, 20, tirage.pressures.at20),
    pressureRow(
      "Hottest day in storage",
      "hottest",
      input("tirage.hottest_C"),
      batch.inputs.tirage.hottest_C,
      tirage.pressures.hottest,
    ),
    resultRow({
      name: "plan_at20ByTable_bar",
      label: "At 20 °C by the official gauge table",
      unit: "bar",
      format: FORMATS.two,
      value: tirage.at20ByTable,
      formula: mousse("PRESSURE.AT20", cell("plan_pressure_at10_bar"), cell("plan_temperature_at10_C")),
      note: "from the 10 °C value; table and physics differ by some per cent",
    }),
  ];
}

/** One temperature: expected, low and high. A given temperature stands as a plain number that can be changed. */
function pressureRow(
  label: string,
  key: string,
  temperature: Expression | null,
  celsius: number,
  range: PressureRange,
): Row {
  const at = cell(`plan_temperature_${key}_C`);
  const spread = mousse(
    "TIRAGE.RANGE",
    dose,
    at,
    input("baseWine.alcohol_vol"),
    blank,
    blank,
    blank,
    blank,
    ...wineAndBottle,
  );
  return {
    cells: [
      text(label, "label"),
      resultCell({
        name: `plan_pressure_${key}_bar`,
        value: range.expected,
        format: FORMATS.two,
        style: "key",
        formula: mousse("TIRAGE.PRESSURE", dose, at, input("baseWine.alcohol_vol"), ...wineAndBottle),
      }),
      {
        key: `plan_temperature_${key}_C`,
        value: celsius,
        style: "result",
        format: FORMATS.one,
        ...(temperature && { formula: temperature }),
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

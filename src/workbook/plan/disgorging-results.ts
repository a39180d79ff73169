/**
 * Results of disgorging: bottles, cold, room and the pressure that stays.
 */
import { NO_ROOM } from "../../cellar/batch/checks";
import { builtin, cell, minus, mousse, operation } from "../formula";
import type { Row } from "../layout";
import { FORMATS, filledMl, input, resultRow, type Batch } from "./rows";

/** Where the pressure is outside all that the classes speak of. */
const NO_CLASS = "outside all classes";

const bottle = input("batch.bottle_mL");

export function disgorgingResults({ plan: { dosage } }: Batch): Row[] {
  return [
    resultRow({
      name: "plan_finished_bottles",
      label: "Bottles to disgorge and finish",
      unit: "bottles",
      format: FORMATS.whole,
      value: dosage.bottlesFinished,
      formula: builtin(
        "ROUNDDOWN",
        operation(cell("plan_bottles"), "*", minus(1, operation(input("costs.breakage_pct"), "/", 100))),
        0,
      ),
      note: "after the breakage given under Costs",
    }),
    resultRow({
      name: "plan_freezing_C",
      label: "Freezing point of the wine, estimate",
      unit: "°C",
      format: FORMATS.one,
      value: dosage.freezingPointC,
      formula: mousse("DISGORGING.FREEZING", cell("plan_alcoholAfter_vol"), input("dosage.residual_gL")),
    }),
    resultRow({
      name: "plan_space_mL",
      label: "Room in the neck",
      unit: "mL",
      format: FORMATS.one,
      value: dosage.spaceMl ?? NO_ROOM,
      formula: builtin(
        "IFERROR",
        mousse("DISGORGING.SPACE", filledMl, input("disgorging.lost_mL"), bottle),
        NO_ROOM,
      ),
    }),
    resultRow({
      name: "plan_finishedPressure20_bar",
      label: "Excess pressure after disgorging, at 20 °C",
      unit: "bar",
      format: FORMATS.two,
      value: dosage.pressureAt20,
      formula: minus(cell("plan_pressure_at20_bar"), input("disgorging.pressureLost_bar")),
      note: "from the pressure at 20 °C above, less the loss",
    }),
    resultRow({
      name: "plan_finishedPressure20_low_bar",
      label: "… at the low end of the bottles",
      unit: "bar",
      format: FORMATS.two,
      value: dosage.lowPressureAt20,
      formula: minus(cell("plan_pressure_at20_low_bar"), input("disgorging.pressureLost_bar")),
    }),
    resultRow({
      name: "plan_pressureClass",
      label: "Pressure class of the finished wine",
      value: dosage.pressureClass ?? NO_CLASS,
      formula: builtin(
        "IFERROR",
        mousse("PRESSURE.CLASS", cell("plan_finishedPressure20_bar"), bottle, input("batch.rules")),
        NO_CLASS,
      ),
    }),
  ];
}

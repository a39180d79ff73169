/**
 * The second grid: excess pressure by dose and temperature.
 */
import { optional } from "../../cellar/batch/field-kinds";
import { DEFAULT_SPREAD, expectedPressure, pressureRange } from "../../cellar/carbonation";
import { wineOf } from "../../cellar/batch/plan-tirage";
import { domains, isWithin } from "../../cellar/domains";
import { sucroseGL } from "../../cellar/units";
import { builtin, cell, minus, nth, plus, times, type Expression } from "../formula";
import type { Row } from "../layout";
import { LAST_COLUMN } from "./columns";
import { FORMATS, heading, input, resultCell, text, expectedAt, spreadAt, type Batch } from "../plan/rows";

/** Steps away from the plan's dose. */
const STEPS = [-4, -3, -2, -1, 0, 1, 2, 3, 4] as const;
const USUAL_STEP_GL = 1;
const USUAL_CELSIUS = [8, 10, 15, 20, 25, 30] as const;

const step = { ...domains.doseGL, what: "step", aboveMin: true, max: 10 };
const stepField = optional("Step from one dose to the next", step);
const celsiusField = optional("Temperature", domains.temperatureC);

const STEP = "whatif_doseStep_gL";
const doseName = (index: number) => `whatif_dose_${index + 1}_gL`;
const celsiusName = (index: number) => `whatif_at_${index + 1}_C`;

export function doseRows({ inputs, plan }: Batch): Row[] {
  const { tirage } = inputs;
  const celsius = [...USUAL_CELSIUS, tirage.cellar_C, tirage.hottest_C];
  const wine = wineOf(inputs);
  const linked: readonly (readonly [number, string])[] = [
    [USUAL_CELSIUS.length, "tirage.cellar_C"],
    [USUAL_CELSIUS.length + 1, "tirage.hottest_C"],
  ];
  return [
    ...heading("Dose and temperature: expected excess pressure under the crown cap, bar", LAST_COLUMN),
    {
      cells: [
        text("Step from one dose to the next", "label"),
        { value: USUAL_STEP_GL, style: "input", name: STEP, field: stepField },
        text("g/L", "unit"),
        text("around the plan's dose", "note"),
        ...USUAL_CELSIUS.slice(2).map(() => undefined),
        text("Cellar", "numberHead"),
        text("Hottest", "numberHead"),
        text("… high end", "numberHead"),
      ],
    },
    {
      cells: [
        text("Dose, g/L sucrose, against °C", "columnHead"),
        text("", "numberHead"),
        ...celsius.map((value, index) => {
          const from = linked.find(([at]) => at === index)?.[1];
          return {
            value,
            name: celsiusName(index),
            format: "General",
            ...(from === undefined
              ? { style: "input" as const, field: celsiusField }
              : { style: "numberHead" as const, formula: input(from) }),
          };
        }),
        {
          value: tirage.hottest_C,
          style: "numberHead",
          format: "General",
          formula: input("tirage.hottest_C"),
        },
      ],
    },
    ...STEPS.map((steps, index) => {
      const dose = plan.tirage.dose + steps * USUAL_STEP_GL;
      return {
        cells: [
          text(steps === 0 ? "As planned" : "", "label"),
          resultCell({
            name: doseName(index),
            value: dose,
            format: FORMATS.two,
            formula: stepped(steps),
          }),
          ...celsius.map((at, column) =>
            resultCell({
              name: `whatif_pressure_${index + 1}_${column + 1}_bar`,
              value: isWithin(domains.doseGL, dose)
                ? expectedPressure({ ...wine, dose: sucroseGL(dose) }, at)
                : "",
              format: FORMATS.two,
              formula: builtin("IFERROR", expectedAt(cell(doseName(index)), cell(celsiusName(column))), ""),
            }),
          ),
          resultCell({
            name: `whatif_pressure_${index + 1}_high_bar`,
            value: isWithin(domains.doseGL, dose)
              ? pressureRange({ ...wine, dose: sucroseGL(dose) }, tirage.hottest_C, DEFAULT_SPREAD).high
              : "",
            format: FORMATS.two,
            formula: builtin(
              "IFERROR",
              nth(spreadAt(cell(doseName(index)), input("tirage.hottest_C")), 3),
              "",
            ),
          }),
        ],
      };
    }),
  ];
}

function stepped(steps: number): Expression {
  const dose = cell("plan_dose_gL");
  if (steps === 0) return dose;
  const away = times(Math.abs(steps), cell(STEP));
  return steps > 0 ? plus(dose, away) : minus(dose, away);
}

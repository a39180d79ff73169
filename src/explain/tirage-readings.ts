/**
 * TIRAGE workings of readings on the lees, and of the curve.
 */
import { USUAL } from "../cellar/constants";
import { pressureCurve, shareFermented, yieldFromReading } from "../cellar/calibration";
import {
  contentsAtShare,
  expectedPressure,
  pressureAtShare,
  underCrownCap,
  type Fill,
} from "../cellar/carbonation";
import { domains } from "../cellar/domains";
import { excessBar } from "../cellar/units";
import {
  co2PressureStep,
  dose,
  DRY,
  expectedSteps,
  gaugeSteps,
  headspaceStep,
  nitrogenStep,
  solubilityStep,
  temperature,
  temperatureSteps,
  totalCo2Step,
  wineAndBottle,
} from "./bottle";
import { explainer, type Notebook } from "./notebook";
import { inProse } from "./numbers";
import { BOTTLE_CARE, BOTTLE_PHYSICS, READING_CARE, temperatureCaution } from "./sources";

const reading = (on: Notebook) =>
  excessBar(on.number("reading_bar", domains.pressureBar, "[P] Excess pressure read"));

/** The rows of a curve that are shown before the last one. */
const ROWS_SHOWN = 12;

export const tirageReadings = {
  "TIRAGE.PROGRESS": explainer(
    "reading_bar temperature_C dose_gL alcohol_vol yield_share headspace_pct dissolvedCO2_gL",
    (on) => {
      const read = reading(on);
      const celsius = temperature(on);
      const fill: Fill = { dose: dose(on), ...wineAndBottle(on) };
      const share = shareFermented(read, celsius, fill);
      on.found("With no sugar fermented the bottle would show", pressureAtShare(fill, celsius, 0), "bar");
      on.found("With all of it fermented", pressureAtShare(fill, celsius, 1), "bar");
      on.found(
        "[x] The pressure rises with the share in between. Alcohol and sugar change evenly with it, so that the share that makes the bottle show the reading is the root of a square equation",
        share,
        "",
      );
      const { alcoholVol, co2GL, sugar } = contentsAtShare(fill, share);
      const bottle = underCrownCap(fill.headspacePct);
      on.step("Check, the share put back in. CO2 so far", "c = x·s·y0·Y + c0", co2GL, "g per L of wine");
      on.step("Alcohol so far", "A = A0·(1000 − s·d)/1000 + x·s·inv/F", alcoholVol, "% vol");
      on.step("Sugar not yet fermented, as glucose + fructose", "S = (1 − x)·s·inv", sugar, "g/L");
      temperatureSteps(on, celsius);
      solubilityStep(on, celsius, alcoholVol, sugar);
      headspaceStep(on, celsius, bottle);
      gaugeSteps(
        on,
        pressureAtShare(fill, celsius, share),
        celsius,
        bottle,
        "",
        "Excess pressure for this share, which is the reading",
      );
      return {
        result: share,
        unit: "share, 0 to 1",
        sources: BOTTLE_PHYSICS,
        cautions: [READING_CARE, ...temperatureCaution(celsius)],
      };
    },
  ),

  "TIRAGE.YIELD": explainer(
    "reading_bar temperature_C dose_gL alcohol_vol headspace_pct dissolvedCO2_gL",
    (on) => {
      const read = reading(on);
      const celsius = temperature(on);
      const rest = { dose: dose(on), ...wineAndBottle(on, false) };
      const result = yieldFromReading(read, celsius, rest);
      const fill = { ...rest, yieldShare: result };
      const { alcoholVol } = contentsAtShare(fill, 1);
      const bottle = underCrownCap(rest.headspacePct);
      on.step(
        "Alcohol after the second fermentation, with the dilution by the dissolved sugar",
        "A = A0·(1000 − s·d)/1000 + s·inv/F",
        alcoholVol,
        "% vol",
      );
      temperatureSteps(on, celsius);
      solubilityStep(on, celsius, alcoholVol, null);
      headspaceStep(on, celsius, bottle);
      nitrogenStep(on, celsius, bottle);
      co2PressureStep(on, read, celsius, bottle);
      totalCo2Step(on, read, celsius, alcoholVol, DRY, bottle);
      on.step("Its share of what the dose would make in full", "Y = (c − c0)/(s·y0)", result, "");
      on.found("Check: with this yield TIRAGE.PRESSURE gives", expectedPressure(fill, celsius), "bar");
      return {
        result,
        unit: "share, 0.5 to 1",
        sources: BOTTLE_PHYSICS,
        cautions: [READING_CARE, ...temperatureCaution(celsius)],
      };
    },
  ),

  "TIRAGE.CURVE": explainer(
    "dose_gL alcohol_vol from_C to_C step_C yield_share headspace_pct dissolvedCO2_gL",
    (on) => {
      const fill = { dose: dose(on), ...wineAndBottle(on) };
      const from = on.optional("from_C", domains.temperatureC, "[f] First temperature", USUAL.curve.fromC);
      const to = on.optional("to_C", domains.temperatureC, "[g] Last temperature", USUAL.curve.toC);
      const by = on.optional("step_C", domains.stepC, "[i] Step", USUAL.curve.stepC);
      const rows = pressureCurve(fill, from, to, by);
      on.step("Rows from the first to the last temperature", "n = ⌊(g − f)/i⌋ + 1", rows.length, "rows");
      on.found("[t] The first row in full, at", from, "°C");
      expectedSteps(on, fill, from);
      rows.slice(1).forEach(([celsius, pressure], index) => {
        const last = index === rows.length - 2;
        if (index < ROWS_SHOWN || last)
          on.found(`In the same way at ${inProse(celsius)} °C`, pressure, "bar");
        else if (index === ROWS_SHOWN) on.say("And so on, row by row, to the last", "…");
      });
      return {
        result: rows,
        unit: "rows of °C and bar above atmospheric",
        sources: BOTTLE_PHYSICS,
        cautions: [BOTTLE_CARE, ...temperatureCaution(from, to)],
      };
    },
  ),
};

/**
 * TIRAGE workings of pressure.
 */
import {
  alcoholPerDose,
  capacityLostPerDose,
  doseForPressure,
  expectedPressure,
  headspaceCapacity,
  pressureRange,
  pressureSlopes,
  solubility,
  temperatureFactor,
  underCrownCap,
  contentsAtShare,
} from "../cellar/carbonation";
import { domains } from "../cellar/domains";
import { excessBar } from "../cellar/units";
import {
  co2PressureStep,
  dose,
  DRY,
  expectedSteps,
  headspaceStep,
  nitrogenStep,
  temperature,
  temperatureSteps,
  wineAndBottle,
} from "./bottle";
import { explainer } from "./notebook";
import { BOTTLE_CARE, BOTTLE_PHYSICS, temperatureCaution } from "./sources";

const ABOVE = "bar above atmospheric";

export const tiragePressure = {
  "TIRAGE.PRESSURE": explainer(
    "dose_gL temperature_C alcohol_vol yield_share headspace_pct dissolvedCO2_gL",
    (on) => {
      const fill = { dose: dose(on), ...wineAndBottle(on) };
      const celsius = temperature(on);
      const result = expectedPressure(fill, celsius);
      expectedSteps(on, fill, celsius);
      return {
        result,
        unit: ABOVE,
        sources: BOTTLE_PHYSICS,
        cautions: [BOTTLE_CARE, ...temperatureCaution(celsius)],
      };
    },
  ),

  "TIRAGE.DOSE": explainer(
    "pressure_bar temperature_C alcohol_vol yield_share headspace_pct dissolvedCO2_gL",
    (on) => {
      const pressure = excessBar(
        on.number("pressure_bar", domains.pressureBar, "[P] Excess pressure wanted"),
      );
      const celsius = temperature(on);
      const rest = wineAndBottle(on);
      const result = doseForPressure(pressure, celsius, rest);
      const bottle = underCrownCap(rest.headspacePct);
      temperatureSteps(on, celsius);
      nitrogenStep(on, celsius, bottle);
      co2PressureStep(on, pressure, celsius, bottle);
      headspaceStep(on, celsius, bottle);
      on.step(
        "CO2 that wine and headspace would hold for each bar if the dose made no alcohol",
        "C0 = K·(e0 − e·A0) + H",
        solubility(celsius, rest.baseAlcoholVol, DRY) + headspaceCapacity(bottle, celsius),
        "g/L/bar",
      );
      on.step(
        "Alcohol from each g/L of dose, less the dilution",
        "a1 = inv/F − A0·d/1000",
        alcoholPerDose(rest.baseAlcoholVol),
        "% vol per g/L",
      );
      on.step(
        "By so much does that alcohol lower what the wine holds",
        "q = e·K·a1",
        capacityLostPerDose(temperatureFactor(celsius), rest.baseAlcoholVol),
        "g/L/bar per g/L",
      );
      on.step(
        "The dose, TIRAGE.PRESSURE solved for it",
        "s = (p·C0 − c0)/(y0·Y + p·q)",
        result,
        "g/L as sucrose",
      );
      on.found(
        "Check: put back in, TIRAGE.PRESSURE gives",
        expectedPressure({ ...rest, dose: result }, celsius),
        "bar",
      );
      return {
        result,
        unit: "g/L as sucrose",
        sources: BOTTLE_PHYSICS,
        cautions: [BOTTLE_CARE, ...temperatureCaution(celsius)],
      };
    },
  ),

  "TIRAGE.RANGE": explainer(
    "dose_gL temperature_C alcohol_vol doseSd_gL yieldSd temperatureSd_C headspaceSd_pct yield_share headspace_pct dissolvedCO2_gL",
    (on) => {
      const fill = { dose: dose(on), ...wineAndBottle(on) };
      const celsius = temperature(on);
      const deviation = "standard deviation from bottle to bottle";
      const { low, expected, high } = pressureRange(fill, celsius, {
        doseGL: on.optional("doseSd_gL", domains.doseSdGL, `[σs] Dose, ${deviation}`, "σs"),
        yieldShare: on.optional("yieldSd", domains.yieldSd, `[σY] Yield, ${deviation}`, "σY"),
        temperatureC: on.optional(
          "temperatureSd_C",
          domains.temperatureSdC,
          `[σT] Temperature, ${deviation}`,
          "σT",
        ),
        headspacePct: on.optional(
          "headspaceSd_pct",
          domains.headspaceSdPct,
          `[σh] Headspace, ${deviation}`,
          "σh",
        ),
      });
      const slopes = pressureSlopes(fill, celsius);
      const capacity =
        solubility(celsius, contentsAtShare(fill, 1).alcoholVol, DRY) +
        headspaceCapacity(underCrownCap(fill.headspacePct), celsius);
      expectedSteps(on, fill, celsius);
      on.step("CO2 that wine and headspace hold for each bar", "C = kH + H", capacity, "g/L/bar");
      on.step(
        "Alcohol from each g/L of dose, less the dilution",
        "a1 = inv/F − A0·d/1000",
        alcoholPerDose(fill.baseAlcoholVol),
        "% vol per g/L",
      );
      on.step(
        "The pressure changes with the dose by",
        "Ds = (y0·Y + p·e·K·a1)/C",
        slopes.perDose,
        "bar per g/L",
      );
      on.step("with the yield by", "DY = s·y0/C", slopes.perYield, "bar for the whole share");
      on.step(
        "with the temperature by",
        "DT = p·(kH·ΔH/(R·T²) + H/T)/C + N20/T20",
        slopes.perKelvin,
        "bar per °C",
      );
      on.step(
        "with the headspace by",
        "Dh = −p·G/(100·T)/C",
        slopes.perHeadspacePct,
        "bar per % of the wine",
      );
      on.step(
        "Independent deviations add as squares; 95 % of the bottles lie within",
        "w = z95·√((Ds·σs)² + (DY·σY)² + (DT·σT)² + (Dh·σh)²)",
        high - expected,
        "bar",
      );
      on.step("Lowest", "Pl = P − w", low, "bar");
      on.step("Highest; one bottle in forty lies above it", "Ph = P + w", high, "bar");
      return {
        result: [[low, expected, high]],
        unit: `low, expected and high, ${ABOVE}`,
        sources: BOTTLE_PHYSICS,
        cautions: [BOTTLE_CARE, ...temperatureCaution(celsius)],
      };
    },
  ),
};

/**
 * Steps that the workings of pressure share: how much CO2 a litre takes up, and the pressure it makes. The suffix
 * tells two temperatures of one working apart: T1, T2.
 */
import {
  bottleCo2,
  contentsAtShare,
  expectedPressure,
  headspaceCapacity,
  nitrogenAt,
  solubility,
  temperatureFactor,
  underCrownCap,
  type Bottle,
  type Fill,
} from "../cellar/carbonation";
import { domains } from "../cellar/domains";
import {
  excessToAbsolute,
  invertGL,
  kelvin,
  sucroseGL,
  type ExcessBar,
  type InvertGL,
} from "../cellar/units";
import type { Notebook } from "./notebook";

export const DRY = invertGL(0);

/** The wine and the bottle, all but the dose, in the order in which the functions check them. */
export function wineAndBottle(on: Notebook, withYield = true): Omit<Fill, "dose"> {
  return {
    baseAlcoholVol: on.number("alcohol_vol", domains.baseAlcoholVol, "[A0] Alcohol of the base wine"),
    yieldShare: withYield
      ? on.optional("yield_share", domains.yieldShare, "[Y] Share of the full CO2 really obtained", "Y")
      : 1,
    headspacePct: on.optional("headspace_pct", domains.headspacePct, "[h] Headspace", "h"),
    dissolvedCo2GL: on.optional(
      "dissolvedCO2_gL",
      domains.dissolvedCo2GL,
      "[c0] CO2 already in the base wine",
      0,
    ),
  };
}

export const dose = (on: Notebook, what = "Dose, the sugar in the filled bottle") =>
  sucroseGL(on.number("dose_gL", domains.doseGL, `[s] ${what}`, "g/L as sucrose"));

export const temperature = (on: Notebook) =>
  on.number("temperature_C", domains.temperatureC, "[t] Temperature of the bottle");

/** T and K: what the temperature makes of the solubility. */
export function temperatureSteps(on: Notebook, celsius: number, x = ""): void {
  on.step("The temperature on the absolute scale", `T${x} = t${x} + T0`, kelvin(celsius), "K");
  on.step(
    "The colder the wine, the more CO2 it dissolves: the relation at 20 °C carried to this temperature",
    `K${x} = k20·exp(ΔH/R·(1/T${x} − 1/T20))`,
    temperatureFactor(celsius),
    "g/L/bar",
  );
}

/** kH, from A and from S where there is sugar. */
export function solubilityStep(
  on: Notebook,
  celsius: number,
  alcoholVol: number,
  sugar: InvertGL | null,
  x = "",
): number {
  return on.step(
    sugar === null
      ? "Alcohol changes what dissolves; the wine is dry. CO2 dissolved for each bar"
      : "Alcohol and sugar change what dissolves. CO2 dissolved for each bar",
    sugar === null ? `kH${x} = K${x}·(e0 − e·A)` : `kH${x} = K${x}·(e0 − e·A)·(1 − z·S)`,
    solubility(celsius, alcoholVol, sugar ?? DRY),
    "g/L/bar",
  );
}

export function headspaceStep(on: Notebook, celsius: number, bottle: Bottle, x = ""): number {
  return on.step(
    "CO2 as gas in the headspace, for each litre of wine and bar",
    `H${x} = h/100·G/T${x}`,
    headspaceCapacity(bottle, celsius),
    "g/L/bar",
  );
}

export function nitrogenStep(on: Notebook, celsius: number, bottle: Bottle, x = ""): number {
  return on.step(
    "Nitrogen in the headspace at this temperature",
    `N${x} = N20·T${x}/T20`,
    nitrogenAt(bottle, celsius),
    "bar",
  );
}

/** p: the pressure of CO2 alone, from a pressure on the gauge. */
export function co2PressureStep(
  on: Notebook,
  pressure: ExcessBar,
  celsius: number,
  bottle: Bottle,
  x = "",
): number {
  return on.step(
    "The gauge reads from the atmosphere up, and nitrogen is part of it. CO2 alone",
    `p${x} = P${x} + Patm − N${x}`,
    excessToAbsolute(pressure) - nitrogenAt(bottle, celsius),
    "bar",
  );
}

export function totalCo2Step(
  on: Notebook,
  pressure: ExcessBar,
  celsius: number,
  alcoholVol: number,
  sugar: InvertGL,
  bottle: Bottle,
  x = "",
): number {
  return on.step(
    "CO2 in all, dissolved and in the headspace",
    `c = p${x}·(kH${x} + H${x})`,
    bottleCo2(pressure, celsius, alcoholVol, sugar, bottle),
    "g per L of wine",
  );
}

/** p and P: from the CO2 in all to the gauge. */
export function gaugeSteps(
  on: Notebook,
  pressure: ExcessBar,
  celsius: number,
  bottle: Bottle,
  x = "",
  what = "Excess pressure, as a gauge reads it",
): void {
  on.step(
    "The CO2 is shared between wine and headspace; its own pressure",
    `p${x} = c/(kH${x} + H${x})`,
    excessToAbsolute(pressure) - nitrogenAt(bottle, celsius),
    "bar",
  );
  nitrogenStep(on, celsius, bottle, x);
  on.step(what, `P${x} = p${x} + N${x} − Patm`, pressure, "bar");
}

/** Everything from the dose to the gauge, fermented out. */
export function expectedSteps(on: Notebook, fill: Fill, celsius: number): void {
  const { alcoholVol, co2GL } = contentsAtShare(fill, 1);
  const bottle = underCrownCap(fill.headspacePct);
  on.step("CO2 from the dose, with what the base wine brings", "c = s·y0·Y + c0", co2GL, "g per L of wine");
  on.step(
    "Alcohol after the second fermentation, with the dilution by the dissolved sugar",
    "A = A0·(1000 − s·d)/1000 + s·inv/F",
    alcoholVol,
    "% vol",
  );
  temperatureSteps(on, celsius);
  solubilityStep(on, celsius, alcoholVol, null);
  headspaceStep(on, celsius, bottle);
  gaugeSteps(on, expectedPressure(fill, celsius), celsius, bottle);
}

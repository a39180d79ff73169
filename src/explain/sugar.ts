/**
 * SUGAR workings.
 */
import { domains } from "../cellar/domains";
import { brixFromStrength, DENSITY_COEFFICIENTS, strengthFromBrix, sucroseDensity } from "../cellar/sugar";
import { invertGL, invertToSucrose, sucroseGL, sucroseToInvert } from "../cellar/units";
import { explainer, type Notebook } from "./notebook";
import { ICUMSA, MOLAR_MASSES } from "./sources";

const POWERS = ["", "·w", "·w²", "·w³", "·w⁴", "·w⁵", "·w⁶"];
const POLYNOMIAL = DENSITY_COEFFICIENTS.map((_, power) => `q${power}${POWERS[power]}`).join(" + ");
/** The functions take and give either. */
const GRAMS = "g, or g/L";
const NOT_MUST = "Not for must, whose extract is not all sugar.";

/** w and ρ, from °Brix known as B. */
function densitySteps(on: Notebook, brix: number): void {
  on.step("°Brix is g of sucrose in 100 g; as a share of the mass", "w = B/100", brix / 100, "");
  DENSITY_COEFFICIENTS.forEach((value, power) =>
    on.constant({
      symbol: `q${power}`,
      value,
      unit: "kg/m³",
      what: `coefficient of power ${power} of the share`,
      source: ICUMSA,
    }),
  );
  on.step("Density at 20 °C", `ρ = ${POLYNOMIAL}`, sucroseDensity(brix), "kg/m³");
}

const brixOf = (on: Notebook) => on.number("brix", domains.brix, "[B] Mass of sucrose in 100 g of solution");

export const sugar = {
  "SUGAR.INVERT": explainer("grams", (on) => {
    const result = sucroseToInvert(sucroseGL(on.number("grams", domains.massGram, "[m] Sucrose", GRAMS)));
    on.step("Water is taken up as sucrose splits, so there is more of it", "i = m·inv", result, GRAMS);
    return { result, unit: "g, or g/L, of glucose + fructose", sources: [MOLAR_MASSES] };
  }),

  "SUGAR.SUCROSE": explainer("grams", (on) => {
    const result = invertToSucrose(
      invertGL(on.number("grams", domains.massGram, "[i] Glucose + fructose", GRAMS)),
    );
    on.step("The sucrose that splits into it is less", "m = i/inv", result, GRAMS);
    return { result, unit: "g, or g/L, of sucrose", sources: [MOLAR_MASSES] };
  }),

  "SUGAR.STRENGTH": explainer("brix", (on) => {
    const brix = brixOf(on);
    const result = strengthFromBrix(brix);
    densitySteps(on, brix);
    on.step("Sugar in a litre: its share of the litre's mass (1 kg/m³ is 1 g/L)", "s = w·ρ", result, "g/L");
    return { result, unit: "g/L as sucrose", sources: [ICUMSA], cautions: [NOT_MUST] };
  }),

  "SUGAR.BRIX": explainer("strength_gL", (on) => {
    const strength = sucroseGL(on.number("strength_gL", domains.strengthGL, "Strength, as sucrose"));
    const result = brixFromStrength(strength);
    on.found(
      "[B] The strength rises with °Brix. The °Brix that has this strength, found by bisection: the span is halved until nothing lies between its ends",
      result,
      "°Brix",
    );
    densitySteps(on, result);
    on.step("Check: put back in, the strength is", "s = w·ρ", strengthFromBrix(result), "g/L");
    return { result, unit: "°Brix", sources: [ICUMSA], cautions: [NOT_MUST] };
  }),

  "SUGAR.DENSITY": explainer("brix", (on) => {
    const brix = brixOf(on);
    densitySteps(on, brix);
    return { result: sucroseDensity(brix), unit: "kg/m³", sources: [ICUMSA], cautions: [NOT_MUST] };
  }),
};

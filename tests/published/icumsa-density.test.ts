/**
 * Density of sucrose solutions at 20 °C: the ICUMSA polynomial (read), ρ in kg/m³ over the mass fraction w.
 */
import { brixFromStrength, strengthFromBrix, sucroseDensity } from "../../src/cellar/sugar";
import { LITRES_PER_KG_SUGAR, WATER_KG_PER_L } from "../../src/cellar/constants";
import { expectPrinted, expectRelative } from "../support/relative";

test.each([
  [10, "1038.1", "103.8"],
  [40, "1176.5", "470.6"],
  [65, "1316.6", "855.8"],
])("%d °Bx: %s kg/m³ and %s g/L", (brix, density, strength) => {
  expectPrinted(sucroseDensity(brix), density, "derived");
  expectPrinted(strengthFromBrix(brix), strength, "derived");
  expectRelative(brixFromStrength(strengthFromBrix(brix)), brix, 1e-12);
});

test("pure water, and each coefficient as printed, power by power", () => {
  expectPrinted(sucroseDensity(0), "998.20", "read");
  expectPrinted(WATER_KG_PER_L, "0.99820", "read");
  const printed = [998.2, 385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.289];
  for (const brix of [5, 23, 50, 85]) {
    const sum = printed.reduce((total, coefficient, power) => total + coefficient * (brix / 100) ** power, 0);
    expectRelative(sucroseDensity(brix), sum, 1e-13, "read");
  }
});

test("sugar displaces 0.617 to 0.631 L/kg over the strengths used, and 0.625 is taken", () => {
  const displaced = (brix: number) => {
    // a litre of solution less its water, over the sugar in it
    const sugarKg = strengthFromBrix(brix) / 1000;
    const waterKg = sucroseDensity(brix) / 1000 - sugarKg;
    return (1 - waterKg / 0.9982) / sugarKg;
  };
  expectPrinted(displaced(10), "0.617", "derived");
  // at 65 °Bx, the strongest liqueur, 0.630: 1 % above the one figure taken
  expectRelative(displaced(65), 0.631, 0.003);
  expectPrinted(LITRES_PER_KG_SUGAR, "0.625", "read");
});

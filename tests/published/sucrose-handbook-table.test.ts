/**
 * Density of sucrose solutions at 20 °C, g/mL, as handbooks of chemistry print it after the older Plato tables (memory).
 * The ICUMSA polynomial is newer; the two part by up to 0.3 kg/m³ at 70 °Brix, which is 0.023 %.
 */
import { sugarDensity, sugarStrength } from "../../src/functions/sugar";

const HANDBOOK = [
  [5, 1.01785],
  [10, 1.03814],
  [15, 1.05917],
  [20, 1.08096],
  [25, 1.10356],
  [30, 1.12698],
  [35, 1.15128],
  [40, 1.17645],
  [50, 1.22957],
  [55, 1.25754],
  [60, 1.28646],
  [65, 1.31633],
  [70, 1.34717],
] as const;

test.each(HANDBOOK)("%d °Brix: %d g/mL, to 0.025 %", (brix, density) => {
  expect(Math.abs(sugarDensity(brix) / (1000 * density) - 1)).toBeLessThan(0.000_25);
  // g in a litre: mass share times density
  expect(Math.abs(sugarStrength(brix) / (brix * 10 * density) - 1)).toBeLessThan(0.000_25);
});

test("up to 25 °Brix, to 0.005 %", () => {
  for (const [brix, density] of HANDBOOK.filter(([each]) => each <= 25)) {
    expect(Math.abs(sugarDensity(brix) / (1000 * density) - 1)).toBeLessThan(0.000_05);
  }
});

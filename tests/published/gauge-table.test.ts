/**
 * Ratio of excess pressure at 20 °C to that at t: OIV-MA-AS314-02 and Regulation (EC) 1293/2005 (memory).
 */
import { shiftPressure } from "../../src/cellar/carbonation";
import { RATIO_TO_20C, pressureAt20 } from "../../src/cellar/gauge-table";
import { excessBar, invertGL } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";

const PRINTED =
  "1.85 1.80 1.74 1.68 1.64 1.59 1.54 1.50 1.45 1.40 1.36 1.32 1.28 1.24 1.20 1.16 1.13 1.09 1.06 1.03 1.00 0.97 0.95 0.93 0.91 0.88".split(
    " ",
  );

test("26 ratios, and their sum: an edited digit fails", () => {
  expect(RATIO_TO_20C).toHaveLength(26);
  // by rows of five: 8.71 + 7.48 + 6.40 + 5.47 + 4.76 + 0.88
  expectPrinted(
    RATIO_TO_20C.reduce((sum, ratio) => sum + ratio),
    "33.70",
    "memory",
  );
  for (let t = 1; t < 26; t++) expect(RATIO_TO_20C[t]!).toBeLessThan(RATIO_TO_20C[t - 1]!);
});

test.each(PRINTED.map((printed, t) => [t, printed] as const))("%d °C: %s", (t, printed) => {
  expectRelative(pressureAt20(excessBar(5), t), 5 * Number(printed), 1e-14, "memory");
});

test("linear between whole degrees, up to the last", () => {
  // (1.36 + 1.32)/2 and 0.91 − 0.75·0.03, by hand
  expectRelative(pressureAt20(excessBar(4), 10.5), 4 * 1.34, 1e-14);
  expectRelative(pressureAt20(excessBar(4), 24.75), 4 * 0.8875, 1e-14);
  expectRelative(pressureAt20(excessBar(4), 25), 4 * 0.88, 1e-14);
});

/** How much higher the table comes out than the physics, for a bottle that holds `at20` bar at 20 °C. */
function aboveThePhysics(at20: number, temperatureC: number, nitrogenBar: number): number {
  const bottle = { headspacePct: 10 / 3, nitrogenBar };
  const reading = shiftPressure(excessBar(at20), 20, temperatureC, 12, invertGL(0), bottle);
  return pressureAt20(reading, temperatureC) / at20 - 1;
}

/**
 * Excess pressures, as both functions take them. Between absolute pressures of CO2 alone the table would be 10 % low
 * at 0 °C, but it is not made for those.
 */
test.each([
  [6, 0, 0, -0.26],
  [6, 10, 0, -0.11],
  [6, 25, 0, 0.06],
  [3, 0, 0, -0.42],
  // under the crown cap the nitrogen hardly changes with the temperature, which brings them closer
  [6, 0, 0.79, -0.15],
  [6, 10, 0.79, -0.06],
])("%d bar at 20 °C, read at %d °C with %d bar of nitrogen: off the physics by %d", (at20, t, air, share) => {
  expect(Math.abs(aboveThePhysics(at20, t, air) - share)).toBeLessThan(0.006);
});

test("the size of that disagreement by bare arithmetic, from the published solubilities 2.98 and 1.44", () => {
  // absolute p0 = p20·(1.44 + gas20)/(2.98 + gas0), gas = 529.31/30/T
  const p0 = ((6 + 1.01325) * (1.44 + 529.31 / 30 / 293.15)) / (2.98 + 529.31 / 30 / 273.15);
  expectRelative((1.85 * (p0 - 1.01325)) / 6 - 1, -0.25, 0.05);
});

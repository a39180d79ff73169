/**
 * Solubility of CO2 in wine of 12.5 % vol with 10 g/L of sugar at 0, 1, … 25 °C, g/L a bar: Agabaliantz, as reproduced
 * by Liger-Belair, J. Agric. Food Chem. 2005, 53, 2788 (memory). The relation at 20 °C and an enthalpy fitted to
 * this table (derived) follow it within 3 %.
 */
import { solubility } from "../../src/cellar/carbonation";
import { invertGL } from "../../src/cellar/units";
import { expectRelative } from "../support/relative";

const PRINTED = [
  2.98, 2.88, 2.78, 2.68, 2.59, 2.49, 2.41, 2.32, 2.23, 2.16, 2.07, 2.0, 1.93, 1.86, 1.79, 1.73, 1.67, 1.6,
  1.54, 1.49, 1.44, 1.4, 1.34, 1.29, 1.25, 1.21,
];

const atWine = (temperatureC: number) => solubility(temperatureC, 12.5, invertGL(10));

test("26 values, and their sum: an edited digit fails", () => {
  expect(PRINTED).toHaveLength(26);
  // 13.91 + 11.61 + 9.65 + 8.03 + 6.72 + 1.21, by rows of five
  expectRelative(
    PRINTED.reduce((sum, value) => sum + value),
    51.13,
    1e-12,
  );
});

test.each(PRINTED.map((printed, temperatureC) => [temperatureC, printed]))(
  "%d °C: %d g/L/bar within 3 %%",
  (temperatureC, printed) => expectRelative(atWine(temperatureC), printed, 0.03, "memory"),
);

test("the disagreement is one-sided: the module is lower at every degree, by less than 3 %", () => {
  // the EU/OIV relation gives 1.951·0.735·0.9856 = 1.413 at 20 °C where the table prints 1.44, 1.9 % more
  const ratios = PRINTED.map((printed, temperatureC) => atWine(temperatureC) / printed);
  expect(Math.max(...ratios)).toBeLessThan(1);
  expect(Math.min(...ratios)).toBeGreaterThan(0.97);
});

test("the fitted enthalpy: the slope of ln k over 1/T is 24.7 kJ/mol, literature 24.8 (memory)", () => {
  const slope = Math.log(atWine(0) / atWine(25)) / (1 / 273.15 - 1 / 298.15);
  expectRelative(slope * 8.314462, 24_700, 1e-9);
  // least squares over the printed table itself, nothing of the module in it
  const points = PRINTED.map((printed, t) => [1 / (t + 273.15), Math.log(printed)] as const);
  const mean = (index: 0 | 1) => points.reduce((sum, point) => sum + point[index], 0) / points.length;
  const [meanX, meanY] = [mean(0), mean(1)];
  const fitted =
    points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0) /
    points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  expectRelative(fitted * 8.314462, 24_700, 0.01, "derived");
});

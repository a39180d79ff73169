/**
 * Carbon dioxide from pressure at 20 °C: Commission Regulation (EEC) 2676/90, annex ch. 37, and OIV-MA-AS314 (read in
 * parallel EU language copies): CO2 [g/L] = 1.951 · P · (0.86 − 0.01·A) · (1 − 0.00144·S), P absolute in bar.
 */
import { dissolvedCo2, pressureOfDissolved, solubility } from "../../src/cellar/carbonation";
import { absoluteBar, invertGL } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";

test.each([
  // worked by hand: 1.951·0.86 = 1.67786; 1.951·0.755 = 1.473005; 1.951·0.74·0.9856 = 1.42295
  [0, 0, 1, "1.67786"],
  [10.5, 0, 1, "1.473005"],
  [12, 10, 1, "1.42295"],
  [12, 10, 5, "7.11475"],
  // 1.951·0.72·0.928 = 1.303580
  [14, 50, 1, "1.303580"],
])("%d %% vol, %d g/L, %d bar absolute: %s g/L", (alcohol, sugar, bar, printed) => {
  const co2 = dissolvedCo2(absoluteBar(bar), 20, alcohol, invertGL(sugar));
  expectPrinted(co2, printed, "relation read, value by hand");
  expectRelative(pressureOfDissolved(co2, 20, alcohol, invertGL(sugar)), bar, 1e-14);
});

test("without alcohol and sugar it is close to water's own solubility", () => {
  // handbooks: 1.688 g of CO2 in 1 kg of water at 20 °C and 1.01325 bar of CO2 (memory), 0.9982 kg/L
  const water = (1.688 / 1.01325) * 0.9982;
  // the relation is 0.9 % above
  expectRelative(solubility(20, 0, invertGL(0)), water, 0.01);
});

test("it reaches zero only far outside the wines allowed: 694 g/L of sugar", () => {
  expect(solubility(20, 12, invertGL(694))).toBeGreaterThan(0);
  expect(solubility(20, 12, invertGL(695))).toBeLessThan(0);
});

/**
 * Molar masses from the IUPAC abridged standard atomic weights (memory): C 12.011, H 1.008, O 15.999; and what
 * follows for sugar, alcohol and CO2. Also CODATA 2018 and the definitions of the atmosphere and of 0 °C.
 */
import * as constants from "../../src/cellar/constants";
import { alcoholFromSugar, co2FromDose } from "../../src/cellar/fermentation";
import { invertGL, invertToSucrose, sucroseGL, sucroseToInvert } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";

const molar = (carbon: number, hydrogen: number, oxygen: number) =>
  carbon * 12.011 + hydrogen * 1.008 + oxygen * 15.999;

test.each([
  ["sucrose C12H22O11", constants.SUCROSE_G_PER_MOL, molar(12, 22, 11), "342.297"],
  ["glucose C6H12O6", constants.HEXOSE_G_PER_MOL, molar(6, 12, 6), "180.156"],
  ["ethanol C2H6O", constants.ETHANOL_G_PER_MOL, molar(2, 6, 1), "46.069"],
])("%s", (_name, value, sum, printed) => {
  expectRelative(value, sum, 1e-12, "memory");
  expectPrinted(value, printed, "derived");
});

test("carbon dioxide: 44.0095 from unabridged weights, 44.009 from abridged ones, 0.001 % apart", () => {
  expectRelative(constants.CO2_G_PER_MOL, molar(1, 0, 2), 1.2e-5);
});

test("1 g of sucrose is 1.05263 g of glucose + fructose: two hexoses, one water taken up", () => {
  expectPrinted(sucroseToInvert(sucroseGL(1)), "1.05263", "derived");
  expectPrinted(sucroseToInvert(sucroseGL(1)), "1.0526", "read, liqueur handbook of 1898");
  expectRelative(2 * molar(6, 12, 6), molar(12, 22, 11) + molar(0, 2, 1), 1e-14);
  expectRelative(invertToSucrose(invertGL(360.312)), 342.297, 1e-14);
});

test("1 g of sucrose makes 0.5143 g of CO2, four of them a molecule", () => {
  expectPrinted(co2FromDose(sucroseGL(1), 1), "0.5143", "derived");
  // one sucrose and one water are four ethanol and four CO2, so nothing is lost or made
  expectRelative(molar(12, 22, 11) + molar(0, 2, 1), 4 * molar(2, 6, 1) + 4 * molar(1, 0, 2), 1e-14);
});

test("16.83 g/L of glucose + fructose make 1 % vol (memory: OIV and EU convention)", () => {
  expectPrinted(alcoholFromSugar(invertGL(16.83)), "1", "memory");
  // full stoichiometry would need 10 mL · 0.78924 g/mL · 180.156/(2·46.069) = 15.43 g, so the convention takes 92 % of it
  const full = (10 * constants.ETHANOL_KG_PER_L * molar(6, 12, 6)) / (2 * molar(2, 6, 1));
  expectPrinted(full, "15.43", "derived");
  expectRelative(full / 16.83, 0.917, 1e-3);
});

test("defined and measured constants", () => {
  expectPrinted(constants.GAS_CONSTANT, "8.314462", "CODATA 2018: 8.314462618, printed to seven digits");
  expectPrinted(constants.ATMOSPHERE_BAR, "1.01325", "exact");
  expectPrinted(constants.KELVIN_AT_0C, "273.15", "exact");
});

/**
 * International Physics Olympiad 2025, theory problem 3, official solution: CO2 shared between wine and headspace.
 */
import { bottleCo2, bottlePressure, solubility, underCrownCap } from "../../src/cellar/carbonation";
import { ATMOSPHERE_BAR, CO2_G_PER_MOL, DEFAULT_HEADSPACE_PCT } from "../../src/cellar/constants";
import { excessBar, invertGL } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";

const DRY = invertGL(0);
/** 25 mL of gas over 750 mL of wine (read), the CO2 alone in it. */
const bottle = { headspacePct: (100 * 25) / 750, nitrogenBar: 0 };
/** 0.2 mol of CO2 in 750 mL (read), g/L. */
const co2GL = (0.2 * CO2_G_PER_MOL) / 0.75;
/** kH = 5.4e-4 mol/(m³·Pa) at 6 °C (read); 1e5 Pa a bar and 1000 L a m³ make it g/L/bar. */
const printedSolubility = (5.4e-4 * 1e5 * CO2_G_PER_MOL) / 1000;

/** The module takes no solubility, so the alcohol is sought at which its own is the printed one: it is linear. */
function alcoholOfPrintedSolubility(): number {
  const at0 = solubility(6, 0, DRY);
  const perVol = (at0 - solubility(6, 10, DRY)) / 10;
  return (at0 - printedSolubility) / perVol;
}

test("the worked example from the bare numbers: p = n/(kH·V + Vg/(R·T))", () => {
  const pascal = 0.2 / (5.4e-4 * 750e-6 + 25e-6 / (8.314462 * 279.15));
  expectPrinted(pascal / 1e5, "4.81", "read");
});

test("the module's bottle with the printed solubility", () => {
  const alcohol = alcoholOfPrintedSolubility();
  expectRelative(solubility(6, alcohol, DRY), printedSolubility, 1e-12);
  expectPrinted(bottlePressure(co2GL, 6, alcohol, DRY, bottle) + ATMOSPHERE_BAR, "4.81", "read");
});

test("the headspace holds what the ideal gas law says", () => {
  // what one bar adds to the bottle beyond what dissolves
  const alcohol = 12;
  const perBar =
    bottleCo2(excessBar(1), 6, alcohol, DRY, bottle) - bottleCo2(excessBar(0), 6, alcohol, DRY, bottle);
  // M·p·V/(R·T): 44.0095 g/mol · 1e5 Pa · 1/30 L of gas a litre of wine, 1000 L a m³
  const gas = (44.0095 * 1e5 * (25 / 750 / 1000)) / (8.314462 * 279.15);
  expectRelative(perBar - solubility(6, alcohol, DRY), gas, 1e-9);
  expectPrinted((gas * 279.15) / (25 / 750), "529.31", "derived: 100·M/R");
});

test("with the module's own solubility for such a wine it stays within 1.2 %", () => {
  // 12.5 % vol and 10 g/L: solubility 1.1 % below the printed one, so the pressure is 1.1 % above
  const own = bottlePressure(co2GL, 6, 12.5, invertGL(10), bottle) + ATMOSPHERE_BAR;
  expect(own).toBeGreaterThan(4.81 * 1.005);
  expectRelative(own, 4.81, 0.012);
});

test("the default headspace is that of the problem", () => {
  expectRelative(DEFAULT_HEADSPACE_PCT, (100 * 25) / 750, 1e-15, "read");
  expect(underCrownCap(5).headspacePct).toBe(5);
});

/**
 * Rules outside the EU: 27 CFR (still wine up to 0.392 g of CO2 in 100 mL, read; label ±1.5 % vol up to 14, secondary;
 * finishing dosage 10 % of the volume, read), Australia (5 g/L of CO2, read), Québec (3 to 5 absolute atm at 10 °C, read).
 */
import { labelAlcoholVerdict } from "../../src/cellar/label";
import { legalLimits } from "../../src/cellar/rules/limits";
import { pressureClass } from "../../src/cellar/rules/pressure-classes";
import { excessBar } from "../../src/cellar/units";
import { expectRefusal } from "../cellar/refusing";

/** A dry wine of 12 % vol holds 1.951·0.74 = 1.44374 g/L a bar at 20 °C. */
const excessOf = (co2GL: number) => co2GL / (1.951 * 0.74) - 1.01325;

test.each([
  ["US", excessOf(3.919), "still wine"],
  ["US", excessOf(3.921), "effervescent wine"],
  ["AU", excessOf(4.999), "between classes"],
  ["AU", excessOf(5.001), "sparkling wine"],
] as const)("%s: %d bar at 20 °C is %s", (rules, bar, name) =>
  expect(pressureClass(excessBar(bar), 750, rules)).toBe(name),
);

/** Excess bar at 20 °C of a bottle that holds `atm` absolute atmospheres at 10 °C: CO2 kept, headspace 25 to 750. */
function at20(atm: number): number {
  const kH10 = 1.951 * 0.74 * Math.exp((24_700 / 8.314462) * (1 / 283.15 - 1 / 293.15));
  const co2 = atm * 1.01325 * (kH10 + 529.313 / 30 / 283.15);
  return co2 / (1.951 * 0.74 + 529.313 / 30 / 293.15) - 1.01325;
}

test.each([
  [2.999, "between classes"],
  [3.001, "sparkling wine"],
  [4.999, "sparkling wine"],
  [5.001, "between classes"],
])("Québec: %d absolute atmospheres at 10 °C is %s", (atm, name) =>
  expect(pressureClass(excessBar(at20(atm)), 750, "CA-QC")).toBe(name),
);

test("the label in the USA: 1.5 % vol either way, and no figure known above 14", () => {
  expect(labelAlcoholVerdict(12, 13.5, "US")).toBe("within tolerance");
  expect(labelAlcoholVerdict(12, 13.51, "US")).toBe("outside tolerance");
  expect(labelAlcoholVerdict(14, 14, "US")).toBe("within tolerance");
  expectRefusal(() => labelAlcoholVerdict(14, 14.01, "US"), {
    argument: "measured_vol",
    given: 14.01,
    remedy: "holds up to 14 % vol",
  });
});

test("limits of 27 CFR", () => {
  expect([legalLimits.US.dosageShare?.value, legalLimits.US.alcoholVol?.value]).toEqual([0.1, 14]);
});

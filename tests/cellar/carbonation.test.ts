import {
  bottleCo2,
  bottlePressure,
  doseForPressure,
  expectedPressure,
  pressureAtShare,
  pressureRange,
  shiftPressure,
  underCrownCap,
} from "../../src/cellar/carbonation";
import { absoluteToExcess, excessBar, excessToAbsolute, invertGL, sucroseGL } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";
import { expectRefusal } from "./refusing";

const DRY = invertGL(0);
const wine = { baseAlcoholVol: 10.5, yieldShare: 0.95, headspacePct: 10 / 3, dissolvedCo2GL: 0 };
const fill = (dose: number) => ({ ...wine, dose: sucroseGL(dose) });

test("excess and absolute lie an atmosphere apart", () => {
  expectRelative(excessToAbsolute(excessBar(6)), 7.01325, 1e-15);
  expectRelative(absoluteToExcess(excessToAbsolute(excessBar(-1))), -1, 1e-14);
});

test("no dose: only the nitrogen is left, 0.79 − 1.01325 at 20 °C", () => {
  expectRelative(expectedPressure(fill(0), 20), 0.79 - 1.01325, 1e-12);
  // gases shrink with the temperature: 0.79·273.15/293.15
  expectRelative(expectedPressure(fill(0), 0), (0.79 * 273.15) / 293.15 - 1.01325, 1e-12);
});

test("a bottle's CO2 and its pressure are each other's inverse", () => {
  for (const t of [-5, 0, 12, 45])
    for (const bottle of [underCrownCap(3), { headspacePct: 20, nitrogenBar: 0 }])
      expectRelative(
        bottlePressure(bottleCo2(excessBar(5.5), t, 12, invertGL(8), bottle), t, 12, invertGL(8), bottle),
        5.5,
        1e-13,
      );
});

test("by hand at 20 °C: 1.951·0.74 + 529.31/30/293.15 = 1.50393 g/L/bar", () => {
  expectPrinted(bottlePressure(15.0393, 20, 12, DRY, { headspacePct: 10 / 3, nitrogenBar: 0 }), "8.9868");
});

test("the doses at both ends are found again, not lost to the last bit of a float", () => {
  for (let t = -5; t <= 45; t += 0.5)
    for (const dose of [0, 60])
      expect(doseForPressure(expectedPressure(fill(dose), t), t, wine)).toBeCloseTo(dose, 9);
});

test.each([
  [20, -0.23],
  [20, 20],
])("at %d °C %d bar is out of reach, and the refusal says what is within", (t, pressure) => {
  expectRefusal(() => doseForPressure(excessBar(pressure), t, wine), {
    argument: "pressure_bar",
    given: pressure,
    // no dose: 0.79 − 1.01325; the other end from 60 g/L by hand: A 13.859, c 29.314, kH 1.40747 + 0.06019
    remedy:
      /^doses of 0 to 60 g\/L give -0\.22 to 19\.75 bar at 20 °C in this wine; give a pressure between these$/u,
  });
});

test("half fermented: less CO2, but the sugar left keeps it out of solution too", () => {
  const half = pressureAtShare(fill(24), 12, 0.5);
  // c = 24·0.514285·0.95/2, A = 10.3425 + 0.75054, S = 12.63158, T = 285.15
  const kH =
    1.951 *
    (0.86 - 0.1109304) *
    (1 - 0.00144 * 12.63158) *
    Math.exp((24_700 / 8.314462) * (1 / 285.15 - 1 / 293.15));
  const bare = (24 * 0.514285 * 0.475) / (kH + 529.31 / 30 / 285.15) + (0.79 * 285.15) / 293.15 - 1.01325;
  expectRelative(half, bare, 1e-5);
  expectRelative(pressureAtShare(fill(24), 12, 0), expectedPressure(fill(0), 12), 1e-12);
});

test("a pressure below the nitrogen's own belongs to no bottle", () => {
  const bottle = underCrownCap(10 / 3);
  expectRefusal(() => shiftPressure(excessBar(-0.5), 20, 10, 12, DRY, bottle), {
    argument: "pressure_bar",
    given: -0.5,
    remedy: "the nitrogen alone makes -0.22 bar at 20 °C; give at least that",
  });
  expect(shiftPressure(excessBar(-0.22), 20, 10, 12, DRY, bottle)).toBeLessThan(-0.22);
});

test("no spread, no range", () => {
  const none = { doseGL: 0, yieldShare: 0, temperatureC: 0, headspacePct: 0 };
  const { low, expected, high } = pressureRange(fill(24), 10, none);
  expect([low, high]).toEqual([expected, expected]);
  expectRelative(expected, expectedPressure(fill(24), 10), 1e-14);
});

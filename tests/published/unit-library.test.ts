/**
 * Units of pressure against an independent unit library from the registry (js-quantities), and the definitions of the
 * units as the SI brochure and national laws give them (exact).
 */
import Qty from "js-quantities";
import { pressureConvert } from "../../src/functions/pressure";
import { expectPrinted, expectRelative } from "../support/relative";

/** Our words for the units, the library's, and how many of the library's make one. */
const UNITS = [
  ["bar", "bar", 1],
  ["kPa", "kPa", 1],
  ["atm", "atm", 1],
  ["psi", "psi", 1],
  ["kgf/cm2", "N/cm^2", 9.80665],
] as const;

/** The library's own factors carry six to seven digits for psi and atm. */
const LIBRARY_DIGITS = 2e-6;

describe.each(UNITS)("from %s", (from, theirFrom, fromFactor) => {
  test.each(UNITS)("to %s, as differences and as absolute pressures", (to, theirTo, toFactor) => {
    const converted = (value: number, unit: string) => Qty(`${value} ${unit}`).to(theirTo).scalar / toFactor;
    const atmosphere = converted(101.325, "kPa");
    for (const value of [1, 3.5, 6, 14.2]) {
      const theirs = converted(value * fromFactor, theirFrom);
      expectRelative(pressureConvert(value, from, to), theirs, LIBRARY_DIGITS);
      expectRelative(pressureConvert(value, `${from} abs`, `${to} abs`), theirs, LIBRARY_DIGITS);
      // a gauge shows the absolute pressure less an atmosphere, whatever the units
      const gauge = pressureConvert(value, `${from} abs`, to);
      expect(Math.abs(gauge + atmosphere - theirs)).toBeLessThanOrEqual(
        LIBRARY_DIGITS * Math.max(theirs, atmosphere),
      );
    }
  });
});

test("definitions, to the digits printed", () => {
  expectPrinted(pressureConvert(1, "atm", "kPa"), "101.325");
  expectPrinted(pressureConvert(1, "kgf/cm2", "kPa"), "98.0665");
  expectPrinted(pressureConvert(1, "psi", "kPa"), "6.894757");
  expectPrinted(pressureConvert(1, "bar", "psi"), "14.50377");
});

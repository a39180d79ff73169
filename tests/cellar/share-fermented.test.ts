/**
 * The share fermented in closed form, held against halving the span until nothing lies between its ends.
 */
import fc from "fast-check";
import { shareFermented, yieldFromReading } from "../../src/cellar/calibration";
import { expectedPressure, pressureAtShare, type Fill } from "../../src/cellar/carbonation";
import { bisect } from "../../src/cellar/root";
import { excessBar, sucroseGL } from "../../src/cellar/units";
import { SEED } from "../support/fuzz";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const filled = (least: number): fc.Arbitrary<Fill> =>
  fc.record({
    dose: between(least, 60).map(sucroseGL),
    baseAlcoholVol: between(5, 16),
    yieldShare: between(0.5, 1),
    headspacePct: between(0.5, 20),
    dissolvedCo2GL: between(0, 5),
  });
const celsius = between(-5, 45);

test("any share between nothing and all", () => {
  fc.assert(
    fc.property(filled(0.01), celsius, between(0, 1), (fill, at, wanted) => {
      const reading = pressureAtShare(fill, at, wanted);
      const halved = bisect((share) => pressureAtShare(fill, at, share) - reading, 0, 1);
      const share = shareFermented(reading, at, fill);
      expect(share).toBeGreaterThanOrEqual(0);
      expect(share).toBeLessThanOrEqual(1);
      // the last bits of the pressure weigh the more the smaller the dose is
      expect(Math.abs(share - halved)).toBeLessThan(1e-12 + 1e-13 / fill.dose);
    }),
    { seed: SEED, numRuns: 2000 },
  );
});

test("both ends exactly, however small the dose", () => {
  fc.assert(
    fc.property(filled(1e-9), celsius, (fill, at) => {
      const [none, all] = [pressureAtShare(fill, at, 0), pressureAtShare(fill, at, 1)];
      fc.pre(none < all);
      expect(shareFermented(none, at, fill)).toBe(0);
      expect(shareFermented(all, at, fill)).toBe(1);
    }),
    { seed: SEED },
  );
});

test("a last bit inside the ends is a share, not more and not less", () => {
  fc.assert(
    fc.property(filled(1e-3), celsius, fc.boolean(), (fill, at, low) => {
      const end = pressureAtShare(fill, at, low ? 0 : 1);
      const share = shareFermented(excessBar(end + (low ? 1e-15 : -1e-15)), at, fill);
      expect(share >= 0 && share <= 1).toBe(true);
    }),
    { seed: SEED, numRuns: 2000 },
  );
});

test("without a dose there is one pressure, and no other reading has an answer", () => {
  fc.assert(
    fc.property(filled(0), celsius, (fill, at) => {
      const still = { ...fill, dose: sucroseGL(0) };
      const pressure = expectedPressure(still, at);
      expect(shareFermented(pressure, at, still)).toBe(0);
      expect(() => shareFermented(excessBar(pressure + 1e-9), at, still)).toThrow(/this bottle shows/u);
    }),
    { seed: SEED },
  );
});

test("the yields at both ends are found again, however small the dose; what lies beyond is refused", () => {
  fc.assert(
    fc.property(filled(1e-6), celsius, fc.constantFrom(0.5, 1), (fill, at, yieldShare) => {
      const reading = expectedPressure({ ...fill, yieldShare }, at);
      const found = yieldFromReading(reading, at, fill);
      expect(found >= 0.5 && found <= 1).toBe(true);
      expect(Math.abs(found - yieldShare)).toBeLessThan(1e-12 + 1e-13 / fill.dose);
      const beyond = excessBar(reading + (yieldShare === 1 ? 1e-9 : -1e-9));
      expect(() => yieldFromReading(beyond, at, fill)).toThrow(/yields of 0.5 to 1 give/u);
    }),
    { seed: SEED, numRuns: 2000 },
  );
});

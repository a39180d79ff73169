/**
 * Laws that hold over the whole domain, on values that a fixed seed draws.
 */
import fc from "fast-check";
import {
  doseForPressure,
  expectedPressure,
  pressureRange,
  shiftPressure,
  type Fill,
} from "../../src/cellar/carbonation";
import { packsToOrder } from "../../src/cellar/costing";
import { dosageMl, dosedSugarGL } from "../../src/cellar/dosage";
import { alcoholAfter } from "../../src/cellar/fermentation";
import { liqueurRecipe } from "../../src/cellar/sugar";
import { permittedBands } from "../../src/cellar/sweetness";
import { tirageLiqueurL, tirageSugarKg, tirageVolumeHl } from "../../src/cellar/tirage";
import { excessBar, invertGL, invertToSucrose, sucroseGL } from "../../src/cellar/units";
import { expectRelative } from "../support/relative";

/** Evenly over the span, both ends among them; doubles as such would mostly be next to nothing. */
const STEPS = 2 ** 30;
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + ((max - min) * step) / STEPS);
const law = <T>(arbitrary: fc.Arbitrary<T>, holds: (value: T) => void, numRuns = 2000) =>
  fc.assert(fc.property(arbitrary, holds), { seed: 20_250_722, numRuns });

const wines = fc.record({
  baseAlcoholVol: between(5, 16),
  yieldShare: between(0.5, 1),
  headspacePct: between(0.5, 20),
  dissolvedCo2GL: between(0, 5),
});
const temperatures = between(-5, 45);
const doses = between(0, 60);

test("the dose for a pressure is the dose that makes it", () =>
  law(fc.record({ wine: wines, t: temperatures, dose: doses }), ({ wine, t, dose }) => {
    const pressure = expectedPressure({ ...wine, dose: sucroseGL(dose) }, t);
    const found = doseForPressure(pressure, t, wine);
    // relative to 1 g/L at least: a dose of 1e-9 g/L drowns in an atmosphere
    expect(Math.abs(found - dose)).toBeLessThanOrEqual(1e-9 * Math.max(dose, 1));
    expectRelative(expectedPressure({ ...wine, dose: found }, t) + 1.01325, pressure + 1.01325, 1e-9);
  }));

test("pressure rises with the dose, with the yield and with the temperature", () =>
  law(
    fc.record({ wine: wines, t: between(-5, 44), dose: between(0.1, 59), more: between(0.01, 1) }),
    ({ wine, t, dose, more }) => {
      const pressure = (change: Partial<Fill>, warmer = 0) =>
        expectedPressure({ ...wine, dose: sucroseGL(dose), ...change }, t + warmer);
      const base = pressure({});
      expect(pressure({ dose: sucroseGL(dose + more) })).toBeGreaterThan(base);
      expect(pressure({}, more)).toBeGreaterThan(base);
      expect(pressure({ yieldShare: wine.yieldShare + more / 10 })).toBeGreaterThan(base);
      expect(pressure({ headspacePct: wine.headspacePct + more })).toBeLessThan(base);
    },
  ));

const tirages = fc
  .record({
    volumeHl: between(0.01, 100_000),
    dose: between(1, 60),
    ownShare: between(0, 1),
    starterL: between(0, 1000),
    strength: between(61, 1000),
  })
  .map(({ dose, ownShare, ...rest }) => ({
    ...rest,
    dose: sucroseGL(dose),
    // never more than the dose, in spite of the last bit
    own: invertGL(Math.min(dose, dose * ownShare) * 1.0526 * (1 - 1e-9)),
  }));

test("dry sugar: what is weighed and what the wine holds make the dose in the volume to bottle", () =>
  law(tirages, ({ volumeHl, dose, own, starterL }) => {
    const wineL = volumeHl * 100 + starterL;
    const sugarG = tirageSugarKg(wineL / 100, dose, own) * 1000;
    const litres = tirageVolumeHl(volumeHl, dose, "dry", own, starterL) * 100;
    expectRelative(sugarG + (wineL * own * 342.297) / 360.312, dose * litres, 1e-11);
  }));

test("liqueur: the sugar in it and the wine's own make the dose in the volume to bottle", () =>
  law(tirages, ({ volumeHl, dose, own, starterL, strength }) => {
    const wineL = volumeHl * 100 + starterL;
    const liqueurL = tirageLiqueurL(wineL / 100, dose, sucroseGL(strength), own);
    const litres = tirageVolumeHl(volumeHl, dose, sucroseGL(strength), own, starterL) * 100;
    expectRelative(litres, wineL + liqueurL, 1e-12);
    expectRelative(liqueurL * strength + (wineL * own * 342.297) / 360.312, dose * litres, 1e-11);
  }));

test("sugar dissolved first in some of the same wine is as much sugar a litre bottled as dry sugar", () =>
  law(tirages, ({ volumeHl, dose, own, strength }) => {
    const carrier = invertToSucrose(own);
    const liqueurL = tirageLiqueurL(volumeHl, dose, sucroseGL(strength), own);
    const recipe = liqueurRecipe(liqueurL, sucroseGL(strength), carrier);
    const wineL = volumeHl * 100 + recipe.carrierL;
    expectRelative(recipe.sugarKg, tirageSugarKg(wineL / 100, dose, own), 1e-8);
    const byLiqueur = tirageVolumeHl(volumeHl, dose, sucroseGL(strength), own, 0);
    expectRelative(byLiqueur, tirageVolumeHl(wineL / 100, dose, "dry", own, 0), 1e-11);
  }));

test("alcohol is conserved: the wine's own share of the bottle, and what the dose makes", () =>
  law(fc.record({ tirage: tirages, alcohol: between(5, 16) }), ({ tirage: { dose, own }, alcohol }) => {
    const litres = tirageVolumeHl(10, dose, "dry", own, 0) * 100;
    const expected = (alcohol * 1000) / litres + (dose * 360.312) / 342.297 / 16.83;
    expectRelative(alcoholAfter(alcohol, dose, own), expected, 1e-11);
  }));

test("a pressure shifted there and back is the same", () =>
  law(
    fc.record({
      pressure: between(0.1, 20),
      from: temperatures,
      to: temperatures,
      alcohol: between(0, 20),
      sugar: between(0, 300),
      bottle: fc.record({ headspacePct: between(0.5, 20), nitrogenBar: between(0, 0.9) }),
    }),
    ({ pressure, from, to, alcohol, sugar, bottle }) => {
      const there = shiftPressure(excessBar(pressure), from, to, alcohol, invertGL(sugar), bottle);
      const back = shiftPressure(there, to, from, alcohol, invertGL(sugar), bottle);
      expectRelative(back + 1.01325, pressure + 1.01325, 1e-12);
      // warmer is never softer
      expect(Math.sign(there - pressure) * Math.sign(to - from)).toBeGreaterThanOrEqual(0);
    },
  ));

test("every sugar from 0 to 1000 g/L has a term in both rule sets, and bands never run against the sugar", () =>
  law(fc.oneof(between(0, 1000), between(0, 55), fc.constantFrom(0, 3, 6, 12, 17, 32, 50, 1000)), (sugar) => {
    for (const rules of ["EU", "OIV"] as const)
      for (const added of [true, false]) {
        const bands = permittedBands(invertGL(sugar), added, rules);
        expect(bands.length).toBeGreaterThan(0);
        for (const { low, high } of bands) {
          expect(sugar).toBeGreaterThanOrEqual(low);
          expect(sugar).toBeLessThanOrEqual(high ?? Infinity);
        }
      }
  }));

test("packs cover the need, and one pack fewer would not", () =>
  law(
    fc.record({ needed: between(0, 1e12), pack: between(0.001, 1e9), reserve: between(0, 100) }),
    ({ needed, pack, reserve }) => {
      const packs = packsToOrder(needed, pack, reserve);
      const wanted = needed * (1 + reserve / 100);
      expect(Number.isInteger(packs)).toBe(true);
      expect(packs * pack).toBeGreaterThanOrEqual(wanted * (1 - 2e-12));
      // and in pieces, where a share of a huge need would be many
      expect((wanted - packs * pack) / pack).toBeLessThanOrEqual(1e-6 + packs * 1e-15);
      if (packs > 0) expect((packs - 1) * pack).toBeLessThan(wanted * (1 + 1e-15));
    },
  ));

test("the dosage for a sweetness gives that sweetness", () =>
  law(
    fc
      .tuple(between(50, 30_000), between(0, 1000), between(0, 1000), between(0, 1000))
      .map(([bottle, ...strengths]) => [bottle, ...strengths.sort((a, b) => a - b)] as const),
    ([bottle, wine, target, liqueur]) => {
      const ml = dosageMl(bottle, wine, target, liqueur);
      expect(ml).toBeLessThanOrEqual(bottle);
      // what is reached is kept to a billionth of a g/L
      const reached = dosedSugarGL(bottle, wine, Math.min(ml, bottle), liqueur);
      expect(Math.abs(reached - target)).toBeLessThanOrEqual(1e-9 * Math.max(1, target));
    },
  ));

const spreads = fc.record({
  doseGL: between(0, 1),
  yieldShare: between(0, 0.05),
  temperatureC: between(0, 1),
  headspacePct: between(0, 0.5),
});

test("the range is 1.96 deviations by central differences of the expected pressure", () =>
  law(
    fc.record({ wine: wines, t: temperatures, dose: between(1, 59), spread: spreads }),
    ({ wine, t, dose, spread }) => {
      const at = (d: number, y: number, temperature: number, h: number) =>
        expectedPressure({ ...wine, dose: sucroseGL(d), yieldShare: y, headspacePct: h }, temperature);
      const { yieldShare: y, headspacePct: h } = wine;
      const step = 1e-4;
      const slope = (change: (by: number) => number) => (change(step) - change(-step)) / (2 * step);
      const deviation = Math.hypot(
        slope((by) => at(dose + by, y, t, h)) * spread.doseGL,
        slope((by) => at(dose, y + by, t, h)) * spread.yieldShare,
        slope((by) => at(dose, y, t + by, h)) * spread.temperatureC,
        slope((by) => at(dose, y, t, h + by)) * spread.headspacePct,
      );
      const range = pressureRange({ ...wine, dose: sucroseGL(dose) }, t, spread);
      expectRelative(range.expected, at(dose, y, t, h), 1e-9);
      expect(Math.abs(range.high - range.expected - 1.96 * deviation)).toBeLessThan(1e-6);
      expect(Math.abs(range.expected - range.low - 1.96 * deviation)).toBeLessThan(1e-6);
    },
    500,
  ));

test("of 40 000 bottles drawn with the default spread, 95 % lie in the range", () => {
  const wine = { baseAlcoholVol: 10.5, yieldShare: 0.95, headspacePct: 10 / 3, dissolvedCo2GL: 0 };
  const range = pressureRange({ ...wine, dose: sucroseGL(24) }, 10, {
    doseGL: 0.4,
    yieldShare: 0.02,
    temperatureC: 0.5,
    headspacePct: 0.5,
  });
  // a linear congruential generator and Box-Muller: no luck in it
  let state = 12_345;
  const uniform = () => (state = (state * 1_664_525 + 1_013_904_223) % 2 ** 32) / 2 ** 32 + 2 ** -33;
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  let inside = 0;
  for (let bottle = 0; bottle < 40_000; bottle++) {
    const pressure = expectedPressure(
      {
        ...wine,
        dose: sucroseGL(24 + 0.4 * normal()),
        yieldShare: 0.95 + 0.02 * normal(),
        headspacePct: 10 / 3 + 0.5 * normal(),
      },
      10 + 0.5 * normal(),
    );
    if (pressure >= range.low && pressure <= range.high) inside++;
  }
  // three standard errors of a share of 0.95 in 40 000 are 0.0033
  expect(Math.abs(inside / 40_000 - 0.95)).toBeLessThan(0.0033);
});

import { alcoholAfter, missingSugar, starterVolumeL, wineShare } from "../../src/cellar/fermentation";
import { bottlesFilled, tirageLiqueurL, tirageSugarKg, tirageVolumeHl } from "../../src/cellar/tirage";
import { invertGL, invertToSucrose, sucroseGL, sucroseToInvert } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";
import { expectRefusal } from "./refusing";

const NONE = invertGL(0);
const dose = sucroseGL(24);

test("sugar by hand: 1000 L to 24 g/L is 24 kg over 1 − 0.015", () => {
  expectRelative(tirageSugarKg(10, dose, NONE), 24 / 0.985, 1e-14);
  // mixed with 500 g/L: 1000·24/476
  expectRelative(tirageLiqueurL(10, dose, sucroseGL(500), NONE), 24_000 / 476, 1e-14);
});

test("a dose of 0 needs nothing", () => {
  const nothing = sucroseGL(0);
  expect(tirageSugarKg(10, nothing, NONE)).toBe(0);
  expect(tirageLiqueurL(10, nothing, sucroseGL(500), NONE)).toBe(0);
  expect(tirageVolumeHl(10, nothing, "dry", NONE, 0)).toBe(10);
  expect(alcoholAfter(10.5, nothing, NONE)).toBe(10.5);
});

test("a dose that is the wine's own sugar needs nothing, whatever the liqueur", () => {
  const own = invertGL(20);
  const same = invertToSucrose(own);
  expect(tirageSugarKg(10, same, own)).toBe(0);
  expect(tirageLiqueurL(10, same, same, own)).toBe(0);
  expect(tirageVolumeHl(10, same, "dry", own, 50)).toBe(10.5);
  // nothing is added, so nothing is diluted: 20/16.83 more
  expectRelative(alcoholAfter(10, same, own), 10 + 20 / 16.83, 1e-14);
});

test("a dose below the wine's own sugar is refused with the sugar as sucrose", () => {
  // 20/1.05263 = 19.00
  const expected = {
    argument: "dose_gL",
    given: 18,
    remedy: "already makes 19.00 g/L as sucrose; give a dose",
  };
  const low = sucroseGL(18);
  expectRefusal(() => missingSugar(low, invertGL(20)), expected);
  expectRefusal(() => tirageSugarKg(10, low, invertGL(20)), expected);
  expectRefusal(() => tirageLiqueurL(10, low, sucroseGL(500), invertGL(20)), expected);
  expectRefusal(() => tirageVolumeHl(10, low, "dry", invertGL(20), 0), expected);
  expectRefusal(() => alcoholAfter(10, low, invertGL(20)), expected);
});

test.each([24, 23.9, 0])("a liqueur of %d g/L cannot make a dose of 24", (strength) => {
  const expected = { argument: "liqueur_gL", given: strength, remedy: "stronger than the dose of 24 g/L" };
  expectRefusal(() => tirageLiqueurL(10, dose, sucroseGL(strength), NONE), expected);
  expectRefusal(() => tirageVolumeHl(10, dose, sucroseGL(strength), NONE, 0), expected);
});

test("volume to bottle by hand, the starter counted as wine", () => {
  // 10.2 hL of wine and starter: 1020 L · 24/985 kg · 0.625 L/kg = 15.533 L
  expectPrinted(tirageVolumeHl(10, dose, "dry", NONE, 20), "10.35533");
  // 1020·24/476 = 51.429 L of liqueur
  expectPrinted(tirageVolumeHl(10, dose, sucroseGL(500), NONE, 20), "10.71429");
});

test("sugar on two bases: 12 g/L weighed analyse as 12.63, and back", () => {
  expectPrinted(sucroseToInvert(sucroseGL(12)), "12.63");
  expectPrinted(invertToSucrose(invertGL(12)), "11.40");
  expectRelative(invertToSucrose(sucroseToInvert(sucroseGL(7))), 7, 1e-15);
});

test("share of base wine in the bottle", () => {
  expectRelative(wineShare(dose, sucroseGL(0)), 0.985, 1e-15);
  expect(wineShare(dose, dose)).toBe(1);
});

test.each([
  [7.5, 750, 0, 1000],
  [0.3, 750, 0, 40],
  [0.7, 700, 0, 100],
  [0.0075, 750, 0, 1],
  [0.0075 - 1e-10, 750, 0, 0],
  [50, 750, 1, 6600],
  [1.1, 110, 0, 1000],
  [100_000, 50, 0, 200_000_000],
  [7.4999, 750, 0, 999],
])("%d hL in %d mL with %d %% lost: %d bottles", (volume, size, loss, bottles) => {
  expect(bottlesFilled(volume, size, loss)).toBe(bottles);
});

test("yeast starter: 100 hL to 2 million/mL from 102 is 1 to 50", () => {
  expect(starterVolumeL(100, 2, 102)).toBe(200);
  // cells are conserved: (10000 + 200)·2 = 200·102
  expect((10_000 + 200) * 2).toBe(200 * 102);
});

test.each([1, 2])("a starter of %d million/mL cannot make 2", (cells) => {
  expectRefusal(() => starterVolumeL(100, 2, cells), {
    argument: "starter_Mcells_mL",
    given: cells,
    remedy: "must hold more than the 2 million cells/mL",
  });
});

import * as dosage from "../../src/cellar/dosage";
import { freezingPointC, spaceMl } from "../../src/cellar/disgorging";
import { brixFromStrength, liqueurRecipe } from "../../src/cellar/sugar";
import { invertGL, sucroseGL } from "../../src/cellar/units";
import { expectPrinted, expectRelative } from "../support/relative";
import { expectRefusal } from "./refusing";

test("volume by hand: 750·(8 − 0)/600 = 10 mL, and it gives 8 g/L", () => {
  expect(dosage.dosageMl(750, 0, 8, 600)).toBe(10);
  expect(dosage.dosedSugarGL(750, 0, 10, 600)).toBe(8);
});

test("edges: no sweetness wanted beyond the wine's, and a liqueur no stronger than the target", () => {
  expect(dosage.dosageMl(750, 5, 5, 600)).toBe(0);
  // nothing is needed, so a weak liqueur is no obstacle
  expect(dosage.dosageMl(750, 5, 5, 0)).toBe(0);
  expect(dosage.dosageMl(750, 5, 8, 8)).toBe(750);
});

test("a space exactly equal to the dosage is enough, a trace less is not", () => {
  expect(dosage.dosageMlWithin(750, 0, 8, 600, 10)).toBe(10);
  expectRefusal(() => dosage.dosageMlWithin(750, 0, 8, 600, 9.99), {
    argument: "space_mL",
    given: 9.99,
    remedy: "the dosage takes 10.0 mL; use a stronger liqueur",
  });
  expect(dosage.topUpMl(10, 10)).toBe(0);
  expectRefusal(() => dosage.topUpMl(10, 10.01), {
    argument: "liqueur_mL",
    given: 10.01,
    remedy: "room for 10 mL",
  });
});

test("refusals of what cannot be mixed", () => {
  expectRefusal(() => dosage.dosageMl(750, 8, 5, 600), {
    argument: "target_gL",
    given: 5,
    remedy: "the wine already holds 8 g/L; give a target of at least that",
  });
  expectRefusal(() => dosage.dosageMl(750, 1, 8, 7), {
    argument: "liqueur_gL",
    given: 7,
    remedy: "must hold at least the 8 g/L wanted",
  });
  for (const mix of [dosage.dosedSugarGL, dosage.dosedAlcoholVol])
    expectRefusal(() => mix(750, 1, 751, 600), {
      argument: "liqueur_mL",
      given: 751,
      remedy: "the bottle holds 750 mL; give no more than that",
    });
  expectRefusal(() => dosage.bottlesFromStock(100, 750, 5, 5, 600), {
    argument: "target_gL",
    given: 5,
    remedy: "no liqueur is needed, so the stock sets no limit",
  });
});

test("alcohol by volume: 10 of 750 mL at 40 % vol into 12 % vol", () => {
  expectRelative(dosage.dosedAlcoholVol(750, 12, 10, 40), (740 * 12 + 10 * 40) / 750, 1e-14);
  expect(dosage.dosedAlcoholVol(750, 12, 750, 40)).toBe(40);
});

test("liqueur for a batch, and bottles from a stock", () => {
  expectRelative(dosage.batchLiqueurL(1000, 8, 5), 8.4, 1e-14);
  expect(dosage.batchLiqueurL(0, 8, 5)).toBe(0);
  // 10 mL a bottle: 8.4 L are 840, though 8.4·1000/10 is a float
  expect(dosage.bottlesFromStock(8.4, 750, 0, 8, 600)).toBe(840);
  expect(dosage.bottlesFromStock(8.3999, 750, 0, 8, 600)).toBe(839);
  expect(dosage.bottlesFromStock(0, 750, 0, 8, 600)).toBe(0);
});

test("recipe: 10 L of 600 g/L are 6 kg and 6.25 L; a sweet carrier saves sugar", () => {
  expect(liqueurRecipe(10, sucroseGL(600), sucroseGL(0))).toEqual({ sugarKg: 6, carrierL: 6.25 });
  // 10·(600 − 100)/(1000 − 62.5) = 5.3333 kg, 10 − 3.3333 L
  const { sugarKg, carrierL } = liqueurRecipe(10, sucroseGL(600), sucroseGL(100));
  expectPrinted(sugarKg, "5.3333");
  expectPrinted(carrierL, "6.6667");
  expectRelative(carrierL * 100 + sugarKg * 1000, 10 * 600, 1e-14);
  expect(liqueurRecipe(10, sucroseGL(100), sucroseGL(100))).toEqual({ sugarKg: 0, carrierL: 10 });
});

test("a carrier stronger than the liqueur, and a solution stronger than 85 °Bx", () => {
  expectRefusal(() => liqueurRecipe(10, sucroseGL(99), sucroseGL(100)), {
    argument: "strength_gL",
    given: 99,
    remedy: "the carrier alone has 100 g/L",
  });
  // 0.85 times the polynomial by hand: 1446.06 kg/m³ gives 1229 g/L
  expectRefusal(() => brixFromStrength(sucroseGL(1300)), {
    argument: "strength_gL",
    given: 1300,
    remedy: /^a sucrose solution of 85 °Brix has 12\d\d g\/L; give no more$/u,
  });
  expect(brixFromStrength(sucroseGL(0))).toBe(0);
});

test("space after disgorging", () => {
  expect(spaceMl(750, 20, 750)).toBe(20);
  expect(spaceMl(750, 0, 750)).toBe(0);
  expect(spaceMl(760, 10, 750)).toBe(0);
  expect(spaceMl(20, 20, 750)).toBe(750);
  expectRefusal(() => spaceMl(760, 9, 750), {
    argument: "filled_mL",
    given: 760,
    remedy: "751 mL remain, more than the 750 mL wanted; fill less at tirage or lose more",
  });
  expectRefusal(() => spaceMl(750, 751, 750), {
    argument: "lost_mL",
    given: 751,
    remedy: "only 750 mL were filled",
  });
});

test("freezing: water at 0, and lower with alcohol and with sugar", () => {
  expect(freezingPointC(0, invertGL(0))).toBeCloseTo(0, 15);
  // 180.156 g/L of sugar: 1 mol over (1000 − 112.6)·0.9982 g of water, −1.86/0.88580
  expectPrinted(freezingPointC(0, invertGL(180.156)), "-2.0998");
  expect(freezingPointC(12, invertGL(20))).toBeLessThan(freezingPointC(12, invertGL(0)));
});

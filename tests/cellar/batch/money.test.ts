/**
 * Money as a bookkeeper counts it: rounded amounts that add up, stock held back, planned against actual.
 */
import * as formulajs from "@formulajs/formulajs";
import fc from "fast-check";
import { UnplannableBatch } from "../../../src/cellar/batch/attempt";
import { roundedMoney } from "../../../src/cellar/costing";
import { expectPrinted } from "../../support/relative";
import { planOf } from "./worked-batch";
import { SEED } from "../../support/fuzz";

describe("rounding", () => {
  test.each<[number, number, number]>([
    [2.675, 2, 2.68],
    [1.005, 2, 1.01],
    [0.5, 0, 1],
    [-0.125, 2, -0.13],
    [1234.5678, 3, 1234.568],
    [0, 2, 0],
    [1e15, 2, 1e15],
  ])("%d to %d decimals is %d, half away from zero", (amount, decimals, rounded) =>
    expect(roundedMoney(amount, decimals)).toBe(rounded),
  );

  test("is that of a spreadsheet's ROUND for any amount of cents and a half", () =>
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 3 }), (tenths, decimals) => {
        const amount = tenths / 10 ** (decimals + 1);
        // the library's own ROUND keeps binary remainders, so it is asked in whole numbers, where it has none
        const whole = formulajs.ROUND(tenths / 10, 0) as number;
        expect(roundedMoney(amount, decimals)).toBeCloseTo(whole / 10 ** decimals, 9);
      }),
      { seed: SEED },
    ));
});

test("the parts shown add up to the total shown, whatever they are rounded to", () => {
  for (const decimals of [0, 1, 2]) {
    const { costs } = planOf({
      costs: { decimals, baseWine_perL: 2.3457, labour_perHour: 19.999, storage_perBottleMonth: 0.01237 },
    });
    const parts = [
      costs.baseWine,
      costs.tirageMaterials,
      costs.tirageLabour,
      costs.riddlingLabour,
      costs.disgorgingLabour,
      costs.finishingMaterials,
      costs.finishingWine,
      costs.finishingLabour,
      costs.storage,
      costs.moneyTiedUp,
      costs.duty,
    ];
    const shown = (amount: number) => Number(amount.toFixed(decimals));
    for (const part of parts) expect(part).toBeCloseTo(shown(part), 9);
    expect(parts.reduce((sum, part) => sum + shown(part), 0)).toBeCloseTo(costs.total, 6);
  }
});

describe("stock held back", () => {
  test("is paid for by the bottles that are sold", () => {
    const { costs } = planOf({ costs: { heldBack_bottles: 400 } });
    expect(costs.saleableBottles).toBe(13_000);
    const all = planOf().costs;
    expect(costs.total).toBe(all.total);
    expectPrinted(costs.perBottle / all.perBottle, (13_400 / 13_000).toFixed(9));
  });

  test("may not be all of it", () => {
    expect(planOf({ costs: { heldBack_bottles: 13_399 } }).costs.saleableBottles).toBe(1);
    const all = () => planOf({ costs: { heldBack_bottles: 13_400 } });
    expect(all).toThrow(UnplannableBatch);
    expect(all).toThrow(/costs\.heldBack_bottles: no bottle is left to sell; give less than 13400/);
  });
});

describe("planned and actual", () => {
  test("nothing found out leaves nothing to compare", () => {
    for (const { actual, difference } of Object.values(planOf().actual)) {
      expect([actual, difference]).toEqual(["", ""]);
    }
  });

  test("what was found out is held against the plan", () => {
    const { actual, costs } = planOf({
      costs: { heldBack_bottles: 100 },
      actual: {
        bottlesFilled: 13_500,
        bottlesBroken: 150,
        bottlesDisgorged: 13_350,
        bottlesFinished: 13_300,
        tirageSugar_kg: 245,
        sugar_gL: 8.4,
        alcohol_vol: 11.2,
        cost: 40_000,
      },
    });
    expect(actual.bottlesFilled).toEqual({ planned: 13_536, actual: 13_500, difference: -36 });
    expect(actual.bottlesBroken).toEqual({ planned: 136, actual: 150, difference: 14 });
    expect(actual.bottlesFinished.difference).toBe(-100);
    expectPrinted(actual.tirageSugar.difference as number, "1.345");
    expectPrinted(actual.sugar.difference as number, "0.4000");
    expectPrinted(actual.alcohol.difference as number, "-0.1023");
    expect(actual.cost.difference).toBeCloseTo(40_000 - costs.total, 9);
    // 40 000 over the 13 200 that are sold; 13 300·0.75 L of 10 000 L at tirage, 83.541 in liqueur and 140.7 on top
    expectPrinted(actual.perBottle.actual as number, "3.0303");
    expectPrinted(actual.yieldPct.actual as number, "97.562");
    expectPrinted(actual.yieldPct.planned, "98.296");
  });

  test("a pressure is compared at 20 °C, from the temperature at which it was read", () => {
    const at = (pressure_bar: number, pressureAt_C: number) =>
      planOf({ actual: { pressure_bar, pressureAt_C } }).actual.pressureAt20;
    expectPrinted(at(6.508, 20).difference as number, "0.000");
    expect(at(5, 10).actual as number).toBeGreaterThan(6.5);
  });

  test("a cost with no bottle left to carry it has no answer", () => {
    const { perBottle } = planOf({ actual: { cost: 100, bottlesFinished: 0 } }).actual;
    expect([perBottle.actual, perBottle.difference]).toEqual([null, null]);
  });
});

import { costPerBottle, holdingCost, packsToOrder } from "../../src/cellar/costing";
import { bisect } from "../../src/cellar/root";
import { wholeDown, wholeUp } from "../../src/cellar/whole";
import { expectPrinted, expectRelative } from "../support/relative";
import { expectRefusal } from "./refusing";

describe("whole numbers", () => {
  test("quotients that are whole but for the last bits of a float", () => {
    expect(0.7 / 0.1).toBeLessThan(7);
    expect(wholeDown(0.7 / 0.1)).toBe(7);
    expect(2.1 / 0.7).toBeGreaterThan(3 - 1e-15);
    expect(0.3 / 0.1).toBeLessThan(3);
    expect(wholeUp(1.1 * 10)).toBe(11);
    expect(1.1 * 1.1 * 100).toBeGreaterThan(121);
    expect(wholeUp(1.1 * 1.1 * 100)).toBe(121);
  });

  test("a real rest stays a rest", () => {
    expect(wholeDown(6.999999)).toBe(6);
    expect(wholeUp(7.000001)).toBe(8);
    expect([wholeDown(0), wholeUp(0)]).toEqual([0, 0]);
  });

  test("never a whole piece too few or too many, however large", () => {
    for (const quotient of [1e9, 1e11, 1e12, 2e12, 9e15]) {
      expect(wholeUp(quotient)).toBe(quotient);
      expect(wholeDown(quotient)).toBe(quotient);
    }
    expect(wholeUp(1e12 + 0.5)).toBe(1e12 + 1);
    expect(wholeDown(1e12 + 0.5)).toBe(1e12);
  });
});

describe("bisection", () => {
  test("ends at the root or its neighbour, whatever its size", () => {
    for (const root of [Math.SQRT2, 1e-300, 84.999999999, 1 / 3])
      expectRelative(
        bisect((x) => x - root, 0, 85),
        root,
        4e-16,
      );
    expectRelative(
      bisect((x) => x ** 3 - 2, -10, 10),
      2 ** (1 / 3),
      4e-16,
    );
  });

  test("a root at or beyond a bound gives the bound", () => {
    expect(bisect((x) => x, 0, 1)).toBe(0);
    expect(bisect((x) => x + 1, 0, 1)).toBe(0);
    expect(bisect((x) => x - 1, 0, 1)).toBe(1);
    expect(bisect((x) => x - 2, 0, 1)).toBe(1);
  });

  test("a jump is found, and no more than some 1100 steps are made even towards zero", () => {
    let calls = 0;
    const step = bisect((x) => (calls++, x < 0.3 ? -1 : 1), 0, 1);
    expectRelative(step, 0.3, 4e-16);
    expect(calls).toBeLessThan(80);
    calls = 0;
    bisect((x) => (calls++, x - Number.MIN_VALUE), 0, 85);
    expect(calls).toBeLessThan(1100);
  });
});

describe("costs", () => {
  test.each([
    // 6600·1.02 = 6732
    [6600, 1000, 2, 7],
    [7000, 1000, 0, 7],
    [7001, 1000, 0, 8],
    [0, 1000, 50, 0],
    // 121 exactly, but the float is above
    [110, 1, 10, 121],
    [1e12, 1, 100, 2e12],
    [3, 0.1, 0, 30],
  ])("%d needed in packs of %d with %d %% in reserve: %d", (needed, pack, reserve, packs) => {
    expect(packsToOrder(needed, pack, reserve)).toBe(packs);
  });

  test("interest, compounded: two years at 5 % are 10.25 %", () => {
    expectRelative(holdingCost(1000, 24, 5), 102.5, 1e-12);
    // half a year at 21 % is √1.21 − 1
    expectRelative(holdingCost(1000, 6, 21), 100, 1e-12);
    expect(holdingCost(1000, 0, 5)).toBe(0);
    expect(holdingCost(1000, 24, 0)).toBe(0);
    expectPrinted(holdingCost(1000, 12, 100), "1000.0");
  });

  test("breakage is paid for by the bottles that remain; none filled, none to pay", () => {
    expectRelative(costPerBottle(9900, 1000, 1), 10, 1e-14);
    expect(costPerBottle(0, 1, 0)).toBe(0);
    expectRefusal(() => costPerBottle(9900, 0, 1), {
      argument: "bottles_filled",
      given: 0,
      remedy: "give at least 1",
    });
  });
});

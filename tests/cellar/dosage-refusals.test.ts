/**
 * Trials, blends and stocks at their ends, and what cannot be answered.
 */
import { bottlesFromStock, shareOfStronger, trialRow } from "../../src/cellar/dosage";
import { expectRelative } from "../support/relative";
import { expectRefusal } from "./refusing";

describe("a line of a trial", () => {
  test("by hand: 750·8/600 = 10 mL in the bottle, 10·100/750 in the glass", () => {
    const row = trialRow(750, 0, 8, 600) as { bottleMl: number; glassMl: number };
    expect(row.bottleMl).toBe(10);
    expectRelative(row.glassMl, 4 / 3, 1e-15);
  });

  test("says why it has no answer, in the words of the refusal", () =>
    expect(trialRow(750, 3, 1, 600)).toEqual({
      reason: "target_gL is 1; the wine already holds 3 g/L; give a target of at least that",
    }));

  test("a fault that is no refusal is not taken for a reason", () =>
    // wine without a number cannot be worded
    expect(() => trialRow(750, null as unknown as number, -1, 600)).toThrow(TypeError));
});

describe("the share of the stronger", () => {
  test("by hand: from 5 and 605 to 155 g/L, 150 of 600", () =>
    expect(shareOfStronger(5, 605, 155)).toBe(0.25));

  test("mixing by that share gives the target", () => {
    for (const [weaker, stronger, target] of [
      [0, 600, 8],
      [12, 50, 33],
      [299, 300, 299.25],
    ] as const) {
      const share = shareOfStronger(weaker, stronger, target);
      expectRelative(share * stronger + (1 - share) * weaker, target, 1e-14);
    }
  });

  test("is nothing at the weaker and all at the stronger", () =>
    expect([shareOfStronger(5, 600, 5), shareOfStronger(5, 600, 600)]).toEqual([0, 1]));

  test.each([4.99, 600.01])("%d g/L is not between 5 and 600", (target) =>
    expectRefusal(() => shareOfStronger(5, 600, target), {
      argument: "target_gL",
      given: target,
      remedy: /^give 5 to 600 g\/L, between the two$/u,
    }),
  );

  test.each([12, 11])("%d g/L is not stronger than 12", (stronger) =>
    expectRefusal(() => shareOfStronger(12, stronger, 12), {
      argument: "stronger_gL",
      given: stronger,
      remedy: /^give more than the weaker, 12 g\/L$/u,
    }),
  );
});

test("a stock that doses more bottles than a number can hold", () =>
  // 1e10 mL of stock over 750·1e-300/600 mL a bottle: beyond the 1.8e308 at which numbers end
  expectRefusal(() => bottlesFromStock(1e7, 750, 0, 1e-300, 600), {
    argument: "target_gL",
    given: 1e-300,
    remedy: /^a bottle takes next to nothing; give a higher target$/u,
  }));

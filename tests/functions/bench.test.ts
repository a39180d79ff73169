/**
 * Bench trials and blends, worked by hand.
 */
import { disgorgingSpace } from "../../src/functions/disgorging";
import { dosageStock, dosageTopup } from "../../src/functions/dosage";
import { dosageBlend, dosageTrial } from "../../src/functions/dosage-bench";
import { sweetnessLimits } from "../../src/functions/sweetness";

test("a blend of dry wine and 600 g/L to 150 g/L is a quarter of the stronger; ends are all or nothing", () => {
  expect(dosageBlend(0, 600, 150)).toBe(0.25);
  expect([dosageBlend(5, 600, 5), dosageBlend(5, 600, 600)]).toEqual([0, 1]);
  expect(() => dosageBlend(5, 600, 4)).toThrow("target_gL is 4; give 5 to 600 g/L, between the two");
  expect(() => dosageBlend(5, 600, 601)).toThrow("target_gL is 601");
  expect(() => dosageBlend(600, 600, 600)).toThrow("stronger_gL is 600; give more than the weaker, 600 g/L");
});

test("a trial: 750·8/600 = 10 mL a bottle, a 7.5th of it in 100 mL, and each target's own term", () => {
  const rows = dosageTrial(750, 0, 600, [
    [2, 8],
    [15, null as unknown as number],
  ]) as (string | number)[][];
  expect(rows.map(([target, bottle, , term]) => [target, bottle, term])).toEqual([
    [2, 2.5, "extra brut"],
    [8, 10, "brut"],
    [15, 18.75, "extra dry"],
  ]);
  for (const [, bottle, glass] of rows) expect((glass as number) * 7.5).toBeCloseTo(bottle as number, 12);
});

test("zero dosage may be brut nature; nothing is added, so nothing was", () => {
  expect(dosageTrial(750, 2, 600, [[2]])).toEqual([[2, 0, 0, "brut nature"]]);
});

test("a target that cannot be reached says why in its row, and the others stand", () => {
  const [dry, fine, sweet] = dosageTrial(750, 3, 100, [[1, 8, 200]]);
  expect(dry).toEqual([
    1,
    "",
    "",
    "target_gL is 1; the wine already holds 3 g/L; give a target of at least that",
  ]);
  expect(fine![3]).toBe("brut");
  expect(sweet![3]).toContain("liqueur_gL is 100; the liqueur must hold at least the 200 g/L wanted");
});

test("a range of blanks is refused, and a cell out of range names its argument", () => {
  expect(() => dosageTrial(750, 0, 600, [["" as unknown as number]])).toThrow(
    "targets is blank; give at least one sweetness to try",
  );
  expect(() => dosageTrial(750, 0, 600, [[8, -1]])).toThrow("targets is -1; give 0 to 1000 g/L");
});

test("room, top-up and stock", () => {
  expect([
    disgorgingSpace(750, 20, 750),
    disgorgingSpace(760, 20, 750),
    disgorgingSpace(770, 20, 750),
  ]).toEqual([20, 10, 0]);
  expect([dosageTopup(20, 8.5), dosageTopup(20, 20)]).toEqual([11.5, 0]);
  // 10 mL each: 10 L dose a thousand, 9.99 L one fewer
  expect([dosageStock(10, 750, 0, 8, 600), dosageStock(9.99, 750, 0, 8, 600)]).toEqual([1000, 999]);
});

test("limits of a term; an open end is empty text, which a cell shows as nothing", () => {
  expect(sweetnessLimits("extra dry")).toEqual([[12, 17]]);
  expect(sweetnessLimits("doux")).toEqual([[50, ""]]);
  expect(sweetnessLimits("brut", "OIV")).toEqual([[0, 12]]);
});

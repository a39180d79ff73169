/**
 * The tests' own evaluator, on sums done by hand.
 */
import { evaluate, printedInterval } from "./evaluate";

test.each([
  ["1 + 2·3", 7],
  ["10 − 4 − 3", 3],
  ["12/2/3", 2],
  ["−2²", -4],
  ["(−2)²", 4],
  ["2^(−1)", 0.5],
  ["√(9 + 16)", 5],
  ["|3 − 5|", 2],
  ["⌊7/2⌋ + ⌈7/2⌉", 7],
  ["min(4; 3)", 3],
  ["round(23.68)/2", 12],
  ["exp(0)", 1],
  ["2·(3 + (−1))", 4],
])("%s", (text, expected) => {
  const { low, high } = evaluate(text);
  expect((low + high) / 2).toBeCloseTo(expected, 9);
  expect(high - low).toBeLessThan(1e-8);
});

test.each(["", "1 +", "2 3", "process", "1 = 1", "(1", "⌊1⌉", "x"])("%p is refused", (text) => {
  expect(() => evaluate(text)).toThrow();
});

test("five digits may be rounded, fewer are exact, and a value known to be exact is", () => {
  expect(printedInterval("1.5000", () => false)).toEqual({ low: 1.49995, high: 1.50005 });
  expect(printedInterval("0.015", () => false)).toEqual({ low: 0.015, high: 0.015 });
  expect(printedInterval("1.01325", (printed) => printed === "1.01325")).toEqual({
    low: 1.01325,
    high: 1.01325,
  });
  expect(evaluate("1/(12345 − 12345)")).toEqual({ low: -Infinity, high: Infinity });
});

/**
 * The constants shown: the cellar's own, marked as the cellar's own comments mark them.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import * as basic from "../../src/cellar/constants";
import { constants } from "../../src/explain/constants";
import { inProse, numbersPutIn, shown } from "../../src/explain/numbers";
import { cellarNumbers } from "./cellar-numbers";

const source = readFileSync(path.resolve(__dirname, "../../src/cellar/constants.ts"), "utf8");

test("each is a number that the cellar exports, with unit, meaning and source", () => {
  expect(Object.keys(constants).length).toBeGreaterThan(25);
  for (const [symbol, constant] of Object.entries(constants)) {
    expect(constant.symbol).toBe(symbol);
    expect([symbol, cellarNumbers.has(constant.value)]).toEqual([symbol, true]);
    expect(constant.what).not.toBe("");
    expect(constant.source.text).not.toBe("");
  }
});

test("each has the mark that its comment in the cellar has", () => {
  const comments = [...source.matchAll(/\/\*\* (.+?) \*\/\nexport const (\w+)/gsu)];
  let compared = 0;
  for (const [, comment = "", name = ""] of comments) {
    const value = (basic as unknown as Record<string, unknown>)[name];
    const found = Object.values(constants).find((constant) => constant.value === value);
    if (!found) continue;
    compared++;
    expect([name, comment]).toEqual([name, expect.stringMatching(new RegExp(found.source.mark, "u"))]);
  }
  expect(compared).toBeGreaterThanOrEqual(14);
});

test.each([
  [24, "24"],
  [0.625, "0.625"],
  [121.82741116751269, "121.83"],
  [1.5000049, "1.5000"],
  [102.50000000000011, "102.5"],
  [99_999.712_345, "100000"],
  [123_456.7, "123456.7"],
  [1_234_567.89, "1234568"],
  [1e8, "100000000"],
  [-5, "−5"],
  [-0, "0"],
  [0.00001234567, "0.00001234567"],
  [1.234_567_89e-7, "(1.2346·10^(−7))"],
  [2e300, "(2·10^(300))"],
])("%p is shown as %s", (value, text) => expect(shown(value)).toBe(text));

test("in a sentence thousands stand apart", () => {
  expect(inProse(5000)).toBe("5\u00a0000");
  expect(inProse(1_234_567)).toBe("1\u00a0234\u00a0567");
  expect(inProse(0.0625)).toBe("0.0625");
  expect(inProse(-1234.5)).toBe("−1\u00a0234.5");
});

test("numbers are put in for symbols, negative ones in brackets, and functions stay", () => {
  const values: Record<string, number> = { a: -2, b1: 3, exp: 7 };
  expect(numbersPutIn("exp(a·b1) − b1²", (symbol) => values[symbol]!)).toBe("exp((−2)·3) − 3²");
});

/**
 * Every function, any valid arguments: the working ends at exactly what the cell holds, each equation comes out with
 * the numbers that are shown, and each constant is the cellar's own, with a source.
 */
import fc from "fast-check";
import { isoFromSerial } from "../../src/cellar/ageing";
import { isRefusal } from "../../src/cellar/refusal";
import { explain, explainers } from "../../src/explain/explain";
import { shown } from "../../src/explain/numbers";
import { readOut } from "../../src/explain/read-out";
import type { Step, Working } from "../../src/explain/types";
import type { CustomFunction } from "../../src/hosts/grid/functions";
import { VALID_CALLS } from "../functions/valid-calls";
import { allFunctions, type AllFunctions } from "../support/functions";
import { cellarNumbers } from "./cellar-numbers";
import { evaluate, printedInterval } from "./evaluate";
import { callsOf } from "./random-calls";

let all: AllFunctions;
beforeAll(async () => {
  all = await allFunctions();
});

const SEED = 20_261_125;
const RUNS = 200;
const IDS = Object.keys(VALID_CALLS).sort();

const outcome = (calculate: CustomFunction, args: readonly unknown[]) => {
  try {
    return { result: calculate(...args) };
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return { sentence: error.message, kind: error.kind };
  }
};

const plain = (text: string) => text.replaceAll("−", "-").replace(/^\((.+)·10\^\(([-\d]+)\)\)$/u, "$1e$2");

/** Which printed numbers are known to stand for one value in full, and not for another that was rounded. */
function exactTexts({ steps, constants }: Working): (printed: string) => boolean {
  const values = [...steps.map(({ result }) => result), ...constants.map(({ value }) => value)];
  const numbers = values.filter((value) => typeof value === "number").map(Math.abs);
  const isFull = (value: number) => Number(plain(shown(value))) === value;
  const rounded = new Set(numbers.filter((value) => !isFull(value)).map(shown));
  const full = new Set(numbers.filter(isFull).map(shown));
  return (printed) => full.has(printed) && !rounded.has(printed);
}

/** What is wrong with a step, or "". */
function fault(step: Step, working: Working): string {
  const { result, shown: printed, equation, numbers } = step;
  if (step.what === "" || printed === "") return "says nothing";
  if (typeof result === "string") return numbers === undefined ? "" : "puts numbers into words";
  if (!Number.isFinite(result)) return `gives ${result}`;
  if (/^\d{4,}-\d\d-\d\d$/u.test(printed))
    return isoFromSerial(result) === printed ? "" : "shows another day";
  if (printed !== shown(result)) return `shows ${printed}`;
  const read = plain(printed);
  const size = printedInterval(read.replace(/^-/u, ""), () => false);
  if (Math.abs(result) < size.low * (1 - 1e-9) || Math.abs(result) > size.high * (1 + 1e-9))
    return `shows ${printed} for ${result}`;
  if (Math.sign(Number(read)) !== Math.sign(result)) return "loses its sign";
  if ((equation === undefined) !== (numbers === undefined)) return "has an equation without numbers";
  if (numbers === undefined) return "";
  const { low, high } = evaluate(numbers, exactTexts(working));
  if (!(result >= low && result <= high)) return `comes to ${low} … ${high}, not ${result}`;
  widths.push(result === 0 ? high - low : Math.abs((high - low) / result));
  return "";
}
/** How narrow the intervals were: wide ones would prove nothing. */
const widths: number[] = [];

function expectRight(working: Working, result: unknown): void {
  expect(working.result).toStrictEqual(result);
  for (const step of working.steps) {
    const wrong = fault(step, working);
    if (wrong)
      throw new Error(
        `${working.call}: "${step.what}" ${wrong} [${step.equation ?? ""} = ${step.numbers ?? ""}]`,
      );
  }
  // the working arrives at the answer
  const cells = (Array.isArray(working.result) ? [working.result].flat(2) : [working.result]) as unknown[];
  if (!Array.isArray(working.result)) {
    expect([working.call, working.steps.some((step) => step.result === cells[0])]).toEqual([
      working.call,
      true,
    ]);
  }
  for (const { symbol, value, what, source } of working.constants) {
    expect([working.call, symbol, cellarNumbers.has(value)]).toEqual([working.call, symbol, true]);
    expect(what).not.toBe("");
    expect(source.text).not.toBe("");
    expect(source.mark).toMatch(/^(read|secondary|derived|memory|practice|exact)$/u);
  }
  expect(new Set(working.constants.map(({ symbol }) => symbol)).size).toBe(working.constants.length);
  expect(working.sources.length).toBeGreaterThan(0);
  expect(readOut(working).join("\n")).not.toMatch(/undefined|NaN|Infinity|\[object/u);
}

test("every function is explained, by the names of its arguments", () => {
  expect([...explainers.keys()].sort()).toEqual(all.metadata.map(({ id }) => id).sort());
  expect(explainers.size).toBeGreaterThanOrEqual(52);
  for (const { id, parameters } of all.metadata)
    expect([id, explainers.get(id)!.parameters]).toEqual([id, parameters.map(({ name }) => name)]);
});

test.each(IDS)("%s: a call with every argument given, and with the optional ones blank", (id) => {
  const { parameters } = all.metadata.find((each) => each.id === id)!;
  const calculate = all.implementations.get(id)!;
  const args = VALID_CALLS[id]!;
  const needed = args.filter((_, index) => !parameters[index]!.optional);
  for (const given of [args, needed]) {
    const working = explain(id, given) as Working;
    expect(working.kind).toBe("working");
    expectRight(working, calculate(...given));
    const defaults = working.steps.filter(({ argument }) => argument === "default");
    expect(defaults).toHaveLength(parameters.length - given.length);
    for (const { what } of defaults) expect(what).toMatch(/^Left blank, so the default\. /u);
    const asked = working.steps.filter(({ argument }) => argument !== undefined);
    expect(asked.length).toBeGreaterThanOrEqual(parameters.length);
    // something is worked out or looked up beyond repeating the arguments
    expect(working.steps.length).toBeGreaterThan(asked.length);
  }
});

test.each(IDS)("%s: any valid arguments", (id) => {
  const { parameters } = all.metadata.find((each) => each.id === id)!;
  const calculate = all.implementations.get(id)!;
  let workings = 0;
  fc.assert(
    fc.property(callsOf(parameters), (args) => {
      const explanation = explain(id, args);
      const expected = outcome(calculate, args);
      if (explanation.kind === "working") {
        workings++;
        expectRight(explanation, expected.result);
      } else expect(explanation).toMatchObject(expected);
    }),
    { seed: SEED, numRuns: parameters.length === 0 ? 1 : RUNS },
  );
  // the arguments are mostly such that there is an answer
  expect(workings).toBeGreaterThanOrEqual(parameters.length === 0 ? 1 : RUNS / 10);
});

test("the intervals are narrow: nearly all within a thousandth of the value", () => {
  expect(widths.length).toBeGreaterThan(10_000);
  expect(widths.filter((width) => width < 1e-3).length / widths.length).toBeGreaterThan(0.97);
});

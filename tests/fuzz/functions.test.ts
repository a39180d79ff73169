/**
 * Every function with whatever cells and ranges hold, as Excel calls it: a value that a cell can show, or Excel's own
 * error with a code and a sentence; nothing given is changed; no call takes long. Who is blamed in which words is in
 * tests/functions/robustness.test.ts.
 */
import fc from "fast-check";
import { VALID_CALLS } from "../functions/valid-calls";
import { cells, numbers, words } from "../support/any-cell";
import { allFunctions, type AllFunctions } from "../support/functions";
import { HOSTILE_TEXTS, UNHOLDABLE_TEXTS, always, fastest, runsMade } from "../support/fuzz";

jest.setTimeout(600_000);

const SLOW_MS = 200;
const CODES = { invalidValue: "#VALUE!", notAvailable: "#N/A" };

class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message);
  }
}

let all: AllFunctions;
beforeAll(async () => {
  Object.assign(globalThis, {
    CustomFunctions: { associate: () => undefined, Error: CellError, ErrorCode: CODES },
  });
  all = await allFunctions();
});
afterAll(() => process.stdout.write(`functions: ${runsMade()} runs\n`));

const extremes = fc.constantFrom(
  -0,
  5e-324,
  -1e-300,
  1.7976931348623157e308,
  -1.7976931348623157e308,
  Infinity,
  -Infinity,
  2 ** 53 + 2,
  0.1 + 0.2,
  60,
  61,
  2_958_465,
  2_958_465.99,
  2_958_466,
);
const texts = fc.oneof(
  words,
  fc.constantFrom(...HOSTILE_TEXTS, ...UNHOLDABLE_TEXTS, "x".repeat(32_767)),
  fc.string({ unit: "binary" }),
);
/** As Excel hands them over within a range. */
const errors = fc.constantFrom("#N/A", "#VALUE!", new CellError("#DIV/0!", ""));
const anyCell = fc.oneof(
  cells,
  extremes,
  texts,
  errors,
  numbers.map((value) => Object(value) as unknown),
);
const line = fc.array(fc.oneof(numbers, extremes, texts, errors, fc.constant(null)), { maxLength: 40 });
const ranges = fc.oneof(
  fc.array(line, { maxLength: 6 }),
  line.map((row) => [row]),
  line.map((column) => column.map((cell) => [cell])),
  fc.constantFrom([], [[]], [[], []], [[null]], [[[1]]], [[1], [], [1, 2, 3]]),
);
const anyArgument = fc.oneof({ weight: 3, arbitrary: anyCell }, { weight: 1, arbitrary: ranges });

function frozen<T>(value: T): T {
  if (Array.isArray(value)) value.forEach(frozen);
  return Object.freeze(value);
}

const isCell = (value: unknown) =>
  typeof value === "string" || typeof value === "boolean" || Number.isFinite(value);
const isAnswer = (result: unknown) =>
  Array.isArray(result)
    ? result.length > 0 && result.every((row) => Array.isArray(row) && row.length > 0 && row.every(isCell))
    : result !== "" && isCell(result);

function outcome(id: string, args: readonly unknown[]): unknown {
  try {
    return all.implementations.get(id)!(...args);
  } catch (error) {
    return error;
  }
}

function check(id: string, args: readonly unknown[]): void {
  // a change to what is frozen is a TypeError, which is no answer
  args.forEach(frozen);
  const result = outcome(id, args);
  const refuses =
    result instanceof CellError && Object.values(CODES).includes(result.code) && result.message.length > 10;
  if (!refuses && !isAnswer(result)) throw new Error(`${id} gives ${String(result)}`);
  const took = fastest(() => outcome(id, args), SLOW_MS);
  if (took > SLOW_MS) throw new Error(`${id} takes ${took.toFixed(0)} ms`);
}

test("any cells and ranges, too few or too many", () => {
  for (const { id, parameters } of all.metadata) {
    always(fc.array(anyArgument, { maxLength: parameters.length + 3 }), (args) => check(id, args));
  }
});

test("any cells and ranges among arguments that are right", () => {
  for (const { id, parameters } of all.metadata) {
    if (parameters.length === 0) continue;
    const places = fc.array(fc.tuple(fc.nat(parameters.length - 1), anyArgument), {
      minLength: 1,
      maxLength: 3,
    });
    always(places, (changes) => {
      const args = structuredClone([...VALID_CALLS[id]!]);
      for (const [at, value] of changes) args[at] = value;
      check(id, args);
    });
  }
});

test("floats of any size where a number is wanted", () => {
  for (const { id } of all.metadata) {
    const size = fc.tuple(fc.double({ min: -320, max: 308, noNaN: true }), fc.constantFrom(1, 1, 1, -1));
    always(
      fc.array(
        size.map(([power, sign]) => sign * 10 ** power),
        { minLength: 10, maxLength: 10 },
      ),
      (given) =>
        check(
          id,
          VALID_CALLS[id]!.map((valid, index) => (typeof valid === "number" ? given[index] : valid)),
        ),
      0.5,
    );
  }
});

describe("a range of 100 000 cells", () => {
  const FEW = 5_000;
  const MANY = 100_000;
  const spread = (index: number) => (index * 37) % 900;
  const shapes: Readonly<Record<string, (count: number) => unknown[][]>> = {
    "a column": (count) => Array.from({ length: count }, (_, row) => [spread(row)]),
    "a row": (count) => [Array.from({ length: count }, (_, column) => spread(column))],
    "a square": (count) =>
      Array.from({ length: 100 }, (_, row) =>
        Array.from({ length: count / 100 }, (__, column) => spread(row + 100 * column)),
      ),
    blanks: (count) => Array.from({ length: count }, () => [null]),
    "out of reach": (count) => Array.from({ length: count }, () => [900]),
    "a text at the end": (count) => [...Array.from({ length: count }, () => [8]), ["x"]],
  };

  test.each(Object.keys(shapes))("%s is answered or refused in time that grows with it", (shape) => {
    for (const { id, parameters } of all.metadata) {
      const at = parameters.findIndex(({ dimensionality }) => dimensionality === "matrix");
      // where one value is wanted, a range is refused at once
      const place = Math.max(0, at);
      if (parameters.length === 0) continue;
      const calling = (count: number) => {
        const args = VALID_CALLS[id]!.map((valid, index) =>
          index === place ? shapes[shape]!(count) : valid,
        );
        return () => outcome(id, args);
      };
      const result = calling(MANY)();
      if (!(result instanceof CellError) && !isAnswer(result)) throw new Error(`${id}: ${String(result)}`);
      const many = fastest(calling(MANY), SLOW_MS, 2);
      if (many <= SLOW_MS) continue;
      expect(at).toBeGreaterThanOrEqual(0);
      // twenty times the cells; what grows as their square takes four hundred times as long
      expect([id, many / fastest(calling(FEW), 0) < 90]).toEqual([id, true]);
    }
  });
});

/**
 * How Excel calls a function, and what it may get back. Excel passes null for an argument that is left out and one
 * argument more than there are, its own invocation; a blank cell that is referred to comes as null (web) or as 0
 * (desktop). Only #VALUE! and #N/A carry a sentence.
 */
import fc from "fast-check";
import type { CustomFunction, FunctionMetadata } from "../../src/hosts/grid/functions";
import { cells } from "../support/any-cell";
import { allFunctions, type AllFunctions } from "../support/functions";
import { VALID_CALLS } from "./valid-calls";

const SEED = 20_261_126;

/** As Excel's: a sentence only with the two codes that carry one. */
class CellError extends Error {
  constructor(
    readonly code: string,
    readonly sentence?: string,
  ) {
    super(["#VALUE!", "#N/A"].includes(code) ? sentence : "");
  }
}
const CODES = {
  divisionByZero: "#DIV/0!",
  invalidName: "#NAME?",
  invalidNumber: "#NUM!",
  invalidReference: "#REF!",
  invalidValue: "#VALUE!",
  notAvailable: "#N/A",
  nullReference: "#NULL!",
};

let all: AllFunctions;
const page = globalThis as { CustomFunctions?: unknown };
beforeAll(async () => {
  all = await allFunctions();
  page.CustomFunctions = { Error: CellError, ErrorCode: CODES };
});
afterAll(() => delete page.CustomFunctions);

type Argument = FunctionMetadata["parameters"][number] & { readonly type: string };
const each = (visit: (id: string, calculate: CustomFunction, parameters: readonly Argument[]) => void) =>
  all.metadata.forEach(({ id, parameters }) =>
    visit(id, all.implementations.get(id)!, parameters as readonly Argument[]),
  );
const replaced = (args: readonly unknown[], at: number, value: unknown) =>
  args.map((arg, index) => (index === at ? value : arg));
/** What a call gives, or the error it ends with. */
function outcome(calculate: CustomFunction, args: readonly unknown[]): unknown {
  try {
    return calculate(...args);
  } catch (error) {
    if (!(error instanceof CellError)) throw error;
    return `${error.code} ${error.message}`;
  }
}

/** Optional arguments for which 0 is a value of its own, so that a desktop's blank cell is not the default. */
const ZERO_IS_ZERO = [
  "DOSAGE.BATCH reserve_pct",
  "DOSAGE.VOLUME space_mL",
  "PRESSURE.SHIFT alcohol_vol",
  "TIRAGE.CURVE to_C",
  "TIRAGE.RANGE doseSd_gL",
  "TIRAGE.RANGE headspaceSd_pct",
  "TIRAGE.RANGE temperatureSd_C",
  "TIRAGE.RANGE yieldSd",
];

test("a 0 means what blank means wherever it can; where it cannot, the description says so", () => {
  const differing = new Set<string>();
  each((id, calculate, parameters) =>
    parameters.forEach(({ name, optional, description = "" }, index) => {
      if (!optional) return;
      // beside the other arguments, and with none of the optional ones
      const alone = VALID_CALLS[id]!.map((arg, at) => (parameters[at]!.optional ? null : arg));
      for (const args of [VALID_CALLS[id]!, alone]) {
        const blank = outcome(calculate, replaced(args, index, null));
        const zero = outcome(calculate, replaced(args, index, 0));
        if (JSON.stringify(zero) !== JSON.stringify(blank)) differing.add(`${id} ${name}`);
      }
      expect([id, name, /A blank cell may arrive as 0, and 0 is kept/u.test(description)]).toEqual([
        id,
        name,
        ZERO_IS_ZERO.includes(`${id} ${name}`),
      ]);
    }),
  );
  expect([...differing].sort()).toEqual(ZERO_IS_ZERO);
});

test("a range's blank cells: left out as null and as empty text, tried as 0 where they come as 0", () => {
  const trial = all.implementations.get("DOSAGE.TRIAL")!;
  const rows = (...targets: unknown[]) =>
    (
      trial(
        750,
        0,
        600,
        targets.map((target) => [target]),
      ) as unknown[][]
    ).map(([target]) => target);
  expect(rows(8, null, "", 10)).toEqual([8, 10]);
  expect(rows(8, 0)).toEqual([8, 0]);
  const { description } = all.metadata.find(({ id }) => id === "DOSAGE.TRIAL")!.parameters[3]!;
  expect(description).toContain("tried as 0 where Excel makes them 0");
});

test("Excel's own last argument changes nothing, with all arguments and with none of the optional ones", () => {
  const invocation = { functionName: "X", address: "Sheet1!A1", parameterAddresses: [] };
  each((id, calculate, parameters) => {
    const args = VALID_CALLS[id]!;
    const none = args.map((arg, at) => (parameters[at]!.optional ? null : arg));
    for (const call of [args, none])
      expect([id, calculate(...call, invocation)]).toEqual([id, calculate(...call)]);
  });
});

/** Cells that an argument refuses, and none that it takes. */
const BAD: readonly unknown[] = [
  -1e15,
  1e15,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  "no such word",
  "12,5 g",
  [[1, 2]],
  {},
  12.345678901,
];

/** A number, a text in quotes or a word for what cannot be quoted, as the refused cell has to be told. */
function quoted(given: unknown): RegExp {
  const literal = (text: string) => new RegExp(text.replace(/[.*+?^${}()|[\]\\]/gu, "\\$&"), "u");
  if (typeof given === "number")
    return Number.isFinite(given) ? literal(` is ${given}; `) : / is not a .*; /u;
  return typeof given === "string" ? literal(` is "${given}"; `) : / is (a range|not a) .*; /u;
}

test("every bad value in every argument: an error with a sentence of what was given and what is allowed", () => {
  const seen = { refused: 0, ranges: 0, words: 0 };
  each((id, calculate, parameters) =>
    parameters.forEach(({ name, description = "", type, dimensionality }, index) => {
      for (const bad of BAD) {
        if (dimensionality === "matrix" && Array.isArray(bad)) continue;
        let error: unknown;
        try {
          calculate(...replaced(VALID_CALLS[id]!, index, bad));
        } catch (thrown) {
          error = thrown;
        }
        // 12.345… may be a fair number here
        if (error === undefined && bad === 12.345678901 && type === "number") continue;
        const what = `${id} ${name} ${JSON.stringify(bad)}`;
        expect([what, error instanceof CellError]).toEqual([what, true]);
        const { code, message } = error as CellError;
        expect([what, code]).toEqual([what, code === "#N/A" ? "#N/A" : "#VALUE!"]);
        // another argument may be blamed where the two do not go together
        if (!message.startsWith(`${name} `)) {
          expect([what, code]).toEqual([what, "#N/A"]);
          continue;
        }
        seen.refused++;
        expect([what, message]).toEqual([what, expect.stringMatching(quoted(bad))]);
        if (code === "#N/A") continue;
        const [, remedy = ""] = /; (.*)$/su.exec(message) ?? [];
        // what the description says is allowed is what the sentence allows
        const range = /\((?:a whole number, )?([^()]*\d[^()]*)\)/u.exec(description)?.[1];
        if (type === "number" && range !== undefined && !/1900/u.test(range)) {
          seen.ranges++;
          for (const bound of range.match(/-?\d+(?:\.\d+)?/gu) ?? [])
            expect([what, remedy]).toEqual([
              what,
              expect.stringMatching(new RegExp(`(^|[^\\d.])${bound}\\b`, "u")),
            ]);
        }
        if (type === "string") {
          seen.words++;
          expect([what, remedy]).toEqual([what, expect.stringMatching(/^give one of: .+/u)]);
          for (const [, word] of description.split(";")[0]!.matchAll(/"([^"]+)"/gu))
            expect([what, remedy]).toEqual([what, expect.stringContaining(word!)]);
        }
        if (type === "boolean") expect([what, remedy]).toEqual([what, "give TRUE or FALSE"]);
      }
    }),
  );
  expect(seen.refused).toBeGreaterThan(1000);
  expect(seen.ranges).toBeGreaterThan(700);
  expect(seen.words).toBeGreaterThan(100);
});

test("whatever stands in the cells, nothing is thrown but #VALUE! and #N/A, and both with a sentence", () => {
  const codes = new Set<string>();
  each((id, calculate, parameters) =>
    fc.assert(
      fc.property(fc.array(cells, { maxLength: parameters.length + 1 }), (args) => {
        try {
          calculate(...args);
        } catch (error) {
          if (!(error instanceof CellError))
            throw new Error(`${id} throws ${String(error)}`, { cause: error });
          codes.add(error.code);
          if (!/^\S.* is .+; .+/su.test(error.message)) throw new Error(`${id} says "${error.message}"`);
        }
      }),
      { seed: SEED, numRuns: 200 },
    ),
  );
  expect([...codes].sort()).toEqual(["#N/A", "#VALUE!"]);
});

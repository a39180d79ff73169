/**
 * Whatever stands in the cells: an answer that a cell can show, or a refusal that names the argument.
 */
import fc from "fast-check";
import { cells } from "../support/any-cell";
import { isRefusal, wordGiven } from "../../src/cellar/refusal";
import type { CustomFunction, FunctionMetadata } from "../../src/hosts/grid/functions";
import { adapterFiles, allFunctions, type AllFunctions } from "../support/functions";
import { VALID_CALLS } from "./valid-calls";

let all: AllFunctions;
beforeAll(async () => {
  all = await allFunctions();
});

const SEED = 20_261_125;

const replaced = (args: readonly unknown[], at: number, value: unknown) =>
  args.map((arg, index) => (index === at ? value : arg));

/** A finite number, a text, or a matrix of those; in a matrix an empty text is an empty cell. */
function showable(result: unknown): boolean {
  if (!Array.isArray(result)) return result !== "" && isCell(result);
  return (
    result.length > 0 && result.every((row) => Array.isArray(row) && row.length > 0 && row.every(isCell))
  );
}
const isCell = (value: unknown) => typeof value === "string" || Number.isFinite(value);

/** What is wrong with the outcome of a call, or "" where nothing is. */
function fault(metadata: FunctionMetadata, calculate: CustomFunction, args: readonly unknown[]): string {
  try {
    const result = calculate(...args);
    return showable(result) ? "" : `gives ${String(result)}`;
  } catch (error) {
    if (!isRefusal(error)) return `throws ${String(error)}`;
    const index = metadata.parameters.findIndex(({ name }) => name === error.argument);
    if (index < 0) return `blames "${error.argument}", which is no argument: ${error.message}`;
    // of a range it is the one cell that is quoted
    const ofRange = metadata.parameters[index]!.dimensionality === "matrix";
    if (!ofRange && error.message !== `${error.argument} is ${wordGiven(args[index])}; ${error.remedy}`)
      return `does not quote what was given: ${error.message}`;
    const sentence = /; .*\b(give|must|use|take|check|fill|limit)\b/su.test(error.message);
    return sentence ? "" : `says no remedy: ${error.message}`;
  }
}

/** Arguments that change no answer that both sides give; the next test is theirs. */
const SEEN_ONLY_IN_REFUSALS = new Set([
  "DOSAGE.VOLUME space_mL",
  "SWEETNESS.CHECK sugarAdded",
  "SWEETNESS.MARGIN rules",
  "SWEETNESS.LIMITS rules",
]);

const each = (visit: (metadata: FunctionMetadata, calculate: CustomFunction) => unknown) => {
  for (const metadata of all.metadata) visit(metadata, all.implementations.get(metadata.id)!);
};

test("every adapter is in the list, and has a call that works", () => {
  expect(adapterFiles.length).toBeGreaterThanOrEqual(8);
  expect(all.metadata.length).toBeGreaterThanOrEqual(52);
  expect(Object.keys(VALID_CALLS).sort()).toEqual(all.metadata.map(({ id }) => id).sort());
  each((metadata, calculate) => {
    const args = VALID_CALLS[metadata.id]!;
    expect([metadata.id, args.length]).toEqual([metadata.id, metadata.parameters.length]);
    expect([metadata.id, showable(calculate(...args))]).toEqual([metadata.id, true]);
  });
});

test("any cells in all arguments", () => {
  each((metadata, calculate) =>
    fc.assert(
      fc.property(fc.array(cells, { maxLength: metadata.parameters.length + 1 }), (args) => {
        const found = fault(metadata, calculate, args);
        if (found) throw new Error(`${metadata.id} ${found}`);
      }),
      { seed: SEED, numRuns: 500 },
    ),
  );
});

test("any cell in any one argument of a call that works", () => {
  each(
    (metadata, calculate) =>
      metadata.parameters.length > 0 &&
      fc.assert(
        fc.property(fc.nat(metadata.parameters.length - 1), cells, (index, cell) => {
          const args = replaced(VALID_CALLS[metadata.id]!, index, cell);
          const found = fault(metadata, calculate, args);
          if (found) throw new Error(`${metadata.id} ${found}`);
        }),
        { seed: SEED, numRuns: 1000 },
      ),
  );
});

test("numbers within sight of the domains in all arguments", () => {
  const near = fc.oneof(
    fc.constantFrom(0, 0.5, 1, 5, 12, 16, 20, 50, 60, 100, 300, 750, 1000),
    fc.double({ min: -1, max: 1000, noNaN: true }),
  );
  each((metadata, calculate) =>
    fc.assert(
      fc.property(fc.array(near, { minLength: 1, maxLength: 10 }), (numbersGiven) => {
        // words stay words, or every call would end at them
        const args = VALID_CALLS[metadata.id]!.map((valid, index) =>
          typeof valid === "number" ? numbersGiven[index % numbersGiven.length] : valid,
        );
        const found = fault(metadata, calculate, args);
        if (found) throw new Error(`${metadata.id} ${found}`);
      }),
      { seed: SEED, numRuns: 500 },
    ),
  );
});

test("a missing argument that is needed is refused as blank", () => {
  let refused = 0;
  each((metadata, calculate) =>
    metadata.parameters.forEach(({ name, optional }, index) => {
      if (optional) return;
      for (const blank of [undefined, null, ""]) {
        refused++;
        expect(() => calculate(...replaced(VALID_CALLS[metadata.id]!, index, blank))).toThrow(
          new RegExp(`^${name} is blank; `, "u"),
        );
      }
    }),
  );
  expect(refused).toBeGreaterThan(150);
});

test("null, undefined and empty text are as good as leaving an optional argument out", () => {
  let compared = 0;
  each((metadata, calculate) => {
    const args = VALID_CALLS[metadata.id]!;
    const first = metadata.parameters.findIndex(({ optional }) => optional);
    if (first < 0) return;
    const leftOut = calculate(...args.slice(0, first));
    for (const blank of [null, undefined, ""])
      expect([metadata.id, calculate(...args.slice(0, first), ...args.slice(first).fill(blank))]).toEqual([
        metadata.id,
        leftOut,
      ]);
    // also one by one between others that are given
    for (let index = first; index < args.length; index++) {
      compared++;
      const missing = calculate(...replaced(args, index, undefined));
      for (const blank of [null, ""])
        expect([metadata.id, index, calculate(...replaced(args, index, blank))]).toEqual([
          metadata.id,
          index,
          missing,
        ]);
      if (index === args.length - 1) expect(calculate(...args.slice(0, -1))).toEqual(missing);
      if (SEEN_ONLY_IN_REFUSALS.has(`${metadata.id} ${metadata.parameters[index]!.name}`)) continue;
      // and it is not simply ignored: given, alone or with the others, it makes a difference
      const blanks = args.map((arg, at) => (at < first || at === index ? arg : undefined));
      const differs = [
        [calculate(...args), missing],
        [calculate(...blanks), leftOut],
      ].some(([one, other]) => JSON.stringify(one) !== JSON.stringify(other));
      expect([metadata.id, index, differs]).toEqual([metadata.id, index, true]);
    }
  });
  expect(compared).toBeGreaterThan(40);
});

test("the arguments that change no answer do change what is refused or permitted", () => {
  const call = (id: string, ...args: unknown[]) => all.implementations.get(id)!(...args);
  // 750·7/599 = 8.76 mL
  expect(call("DOSAGE.VOLUME", 750, 1, 8, 600, 8.77)).toBeCloseTo(8.7646, 4);
  expect(() => call("DOSAGE.VOLUME", 750, 1, 8, 600, 8.76)).toThrow(/^space_mL is 8.76; /u);
  expect(() => call("DOSAGE.VOLUME", 750, 1, 8, 600, 0)).toThrow(/^space_mL is 0; /u);
  expect(call("SWEETNESS.CHECK", "brut nature", 2)).toBe("not permitted");
  expect(call("SWEETNESS.CHECK", "brut nature", 2, false)).toBe("permitted");
  expect(call("SWEETNESS.MARGIN", "extra brut", 2)).toBe(4);
  expect(() => call("SWEETNESS.LIMITS", "extra brut", "OIV")).toThrow(/^term is "extra brut"; /u);
  expect(() => call("SWEETNESS.MARGIN", "extra brut", 2, "OIV")).toThrow(/^term is "extra brut"; /u);
});

test("a 0 that makes no sense is a host's blank; a 0 that does stays 0", () => {
  const call = (id: string, ...args: unknown[]) => all.implementations.get(id)!(...args);
  expect(call("TIRAGE.BOTTLES", 7.5, 0)).toBe(1000);
  expect(call("PRESSURE.CLASS", 3.2, 0, 0)).toBe("sparkling wine");
  expect(call("AGEING.MINIMUM", "Champagne vintage", 0)).toBe(12);
  // no reserve, where blank would add 5 %
  expect(call("DOSAGE.BATCH", 1000, 8, 0)).toBe(8);
  expect(() => call("TIRAGE.BOTTLES", 7.5, 49)).toThrow(/^bottle_mL is 49; give 50 to 30000 mL$/u);
});

test("the default that a description names is the one taken", () => {
  let compared = 0;
  each((metadata, calculate) =>
    metadata.parameters.forEach(({ description = "", optional }, index) => {
      if (!optional) return;
      const [, named] = /blank = ("[^"]+"|TRUE|FALSE|-?\d+(?:\.\d+)?)/u.exec(description) ?? [];
      if (named === undefined) {
        expect(description).toMatch(/blank = (no check|dry sugar)/u);
        return;
      }
      compared++;
      const value: unknown = JSON.parse(named.toLowerCase());
      const args = VALID_CALLS[metadata.id]!;
      const blank = [calculate(...replaced(args, index, undefined))].flat(2);
      const spelled = [calculate(...replaced(args, index, value))].flat(2);
      blank.forEach((cell, at) =>
        typeof cell === "number"
          ? // 3.333 stands for 10/3
            expect(Math.abs(cell - Number(spelled[at]))).toBeLessThanOrEqual(1e-3 * Math.abs(cell))
          : expect(spelled[at]).toEqual(cell),
      );
    }),
  );
  expect(compared).toBeGreaterThan(40);
});

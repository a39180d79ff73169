/**
 * What each argument's text says is what the function does: its range to the very ends, its default, its name in the
 * refusal. What is expected is read from the doc comments, which users see.
 */
import { adapters, type Adapter, type Parameter } from "../support/adapters";
import { CellError, inExcel } from "../support/in-excel";
import { VALID_CALLS } from "./valid-calls";

const replaced = (args: readonly unknown[], at: number, value: unknown) =>
  args.map((arg, index) => (index === at ? value : arg));
const each = (
  visit: (adapter: Adapter, parameter: Parameter, at: number, args: readonly unknown[]) => void,
) => {
  for (const adapter of adapters)
    adapter.parameters.forEach((parameter, at) => visit(adapter, parameter, at, VALID_CALLS[adapter.id]!));
};

interface Range {
  readonly low: number;
  readonly high: number;
  readonly aboveLow: boolean;
  readonly belowHigh: boolean;
  readonly whole: boolean;
}
/** "(more than 0, at most 100000)", "(a whole number, 4 to 60)", "(0 to less than 100)". */
function rangeIn(text: string): Range | undefined {
  const found =
    /\((a whole number, )?(more than )?(-?[\d.]+)(?:, (?:at most )?| to )(less than )?(-?[\d.]+)(?: each)?\)/u.exec(
      text,
    );
  if (!found) return undefined;
  const [, whole, more, low, less, high] = found;
  return {
    low: Number(low),
    high: Number(high),
    aboveLow: more !== undefined,
    belowHigh: less !== undefined,
    whole: whole !== undefined,
  };
}

/** Matrices take a cell as one of a block. */
const given = (args: readonly unknown[], at: number, value: unknown) =>
  replaced(args, at, Array.isArray(args[at]) ? [[value]] : value);

test("every function is here, with a call that works", () => {
  expect(adapters.map(({ id }) => id).sort()).toEqual(Object.keys(VALID_CALLS).sort());
  for (const { id, parameters, calculate } of adapters) {
    expect([id, parameters.length]).toEqual([id, VALID_CALLS[id]!.length]);
    expect([id, String(inExcel(calculate, VALID_CALLS[id]!)).startsWith("#")]).toEqual([id, false]);
  }
});

test("a number a little outside the range said is #VALUE!, by the argument's name; the ends are not", () => {
  let ranges = 0;
  each(({ id, calculate }, { name, optional, text }, at, args) => {
    const range = rangeIn(text);
    if (!range || typeof [args[at]].flat(2)[0] !== "number") return;
    ranges++;
    const { low, high, aboveLow, belowHigh, whole } = range;
    const little = whole ? 1 : 1e-6 * Math.max(1, Math.abs(high));
    const outside = [
      aboveLow ? low : low - little,
      belowHigh ? high : high + little,
      ...(whole ? [low + 0.5] : []),
    ];
    for (const value of outside) {
      // where 0 makes no sense it is a blank cell
      if (optional && value === 0) continue;
      expect([id, name, value, inExcel(calculate, given(args, at, value))]).toEqual([
        ...[id, name, value],
        expect.stringMatching(new RegExp(`^#VALUE! ${name} is ${value}; give `, "u")),
      ]);
    }
    for (const value of [aboveLow ? low + little : low, belowHigh ? high - little : high]) {
      const found = String(inExcel(calculate, given(args, at, value)));
      expect([id, name, value, found.startsWith(`#VALUE! ${name} is`)]).toEqual([id, name, value, false]);
    }
  });
  expect(ranges).toBeGreaterThan(110);
});

test("a word where there should be a number, and a number where there should be a word: the argument is named", () => {
  each(({ id, calculate }, { name }, at, args) => {
    const wrong = typeof [args[at]].flat(2)[0] === "number" ? "twelve" : 12.5;
    expect([id, name, inExcel(calculate, given(args, at, wrong))]).toEqual([
      ...[id, name],
      expect.stringMatching(new RegExp(`^#(VALUE!|N/A) ${name} is "?${wrong}"?; `, "u")),
    ]);
  });
});

test("what is left out is asked for by its name, or is what the text says", () => {
  let defaults = 0;
  each(({ id, calculate }, { name, optional, text }, at, args) => {
    const blank = inExcel(calculate, replaced(args, at, undefined));
    if (!optional) {
      expect([id, name, blank]).toEqual([
        id,
        name,
        expect.stringMatching(`^#(VALUE!|N/A) ${name} is blank; give `),
      ]);
      return;
    }
    const [, said] = /blank = ("[^"]+"|TRUE|FALSE|-?\d+(?:\.\d+)?)/u.exec(text) ?? [];
    if (said === undefined) {
      expect(text).toMatch(/blank = (no check|dry sugar)/u);
      return;
    }
    defaults++;
    // 3.333 stands for 10/3
    const value: unknown =
      said === "3.333" ? 10 / 3 : JSON.parse(said.toLowerCase().replace(/^".*$/u, () => said));
    expect([id, name, blank]).toEqual([id, name, inExcel(calculate, replaced(args, at, value))]);
  });
  expect(defaults).toBeGreaterThan(45);
});

test("an optional argument is not simply ignored", () => {
  // these change no answer, only what is refused, and are asked about below
  const SILENT = [
    "DOSAGE.VOLUME space_mL",
    "SWEETNESS.CHECK sugarAdded",
    "SWEETNESS.MARGIN rules",
    "SWEETNESS.LIMITS rules",
  ];
  each(({ id, calculate, parameters }, { name, optional }, at, args) => {
    if (!optional || SILENT.includes(`${id} ${name}`)) return;
    const alone = args.map((arg, index) => (parameters[index]!.optional && index !== at ? undefined : arg));
    const differs = [args, alone].some(
      (call) =>
        JSON.stringify(inExcel(calculate, call)) !==
        JSON.stringify(inExcel(calculate, replaced(call, at, undefined))),
    );
    expect([id, name, differs]).toEqual([id, name, true]);
  });
  const call = (id: string, ...args: unknown[]) =>
    inExcel(adapters.find((each) => each.id === id)!.calculate, args);
  // 750·7/599 = 8.76 mL
  expect(call("DOSAGE.VOLUME", 750, 1, 8, 600, 8.76)).toMatch(/^#N\/A space_mL is 8.76; /u);
  expect(call("DOSAGE.VOLUME", 750, 1, 8, 600, 0)).toMatch(/^#N\/A space_mL is 0; /u);
  expect(call("SWEETNESS.CHECK", "brut nature", 2)).toBe("not permitted");
  expect(call("SWEETNESS.CHECK", "brut nature", 2, false)).toBe("permitted");
  expect(call("SWEETNESS.LIMITS", "extra brut", "OIV")).toMatch(/^#\S+ term is "extra brut"; /u);
  expect(call("SWEETNESS.MARGIN", "extra brut", 2, "OIV")).toMatch(/^#\S+ term is "extra brut"; /u);
});

const page = globalThis as { CustomFunctions?: unknown };

test("without Excel a refusal is thrown as it is, also where Excel's own errors are half there", () => {
  const { calculate } = adapters.find(({ id }) => id === "SUGAR.INVERT")!;
  for (const half of [undefined, {}, { Error: CellError }, { ErrorCode: {} }]) {
    page.CustomFunctions = half;
    try {
      expect(() => calculate(-1)).toThrow(/^grams is -1; give 0 to /u);
    } finally {
      delete page.CustomFunctions;
    }
  }
});

/**
 * What the doc comments say, held against what the functions do: every number has its range, and the range said is
 * the range kept.
 */
import { readFileSync } from "node:fs";
import { isRefusal } from "../../src/cellar/refusal";
import { functionDocs, type FunctionDoc } from "../../src/help/doc-comments";
import type { CustomFunction } from "../../src/hosts/grid/functions";
import { adapterFiles, allFunctions, type AllFunctions } from "../support/functions";
import { VALID_CALLS } from "./valid-calls";

const docs = functionDocs(adapterFiles.map((file) => ({ file, text: readFileSync(file, "utf8") })));

let all: AllFunctions;
beforeAll(async () => {
  all = await allFunctions();
});

interface Range {
  readonly min: number;
  readonly max: number;
  readonly minIncluded: boolean;
  readonly maxIncluded: boolean;
}

/** "(more than 0, at most 100000)", "(a whole number, 4 to 60)", "(0 to less than 100)", "(0 to 1000 each)". */
function rangeIn(text: string): Range | undefined {
  const number = "(-?[0-9.]+)";
  const match = new RegExp(
    `\\((?:a whole number, )?(more than )?${number}(?: to |, at most )(less than )?${number}(?: each)?\\)`,
  ).exec(text);
  if (!match) return undefined;
  const [, above, min, below, max] = match;
  return {
    min: Number(min),
    max: Number(max),
    minIncluded: above === undefined,
    maxIncluded: below === undefined,
  };
}

const UNITS =
  /(?<![a-z])(hL|mL|L|g\/L|kg|g|bar|°C|% vol|%|°Brix|°|million\/mL|months|days?|bottles|turns|hour|share|money|quantity|places|first unit)(?![a-z])/i;

test("there are docs for every function", () => {
  expect(docs.map(({ id }) => id)).toEqual(
    all.metadata.map(({ id }) => id).sort((one, other) => one.localeCompare(other, "en")),
  );
});

const typeOf = (id: string, index: number) =>
  (all.metadata.find((each) => each.id === id)!.parameters[index] as unknown as { type?: string }).type;
const numeric = (doc: FunctionDoc) =>
  doc.parameters
    .map((parameter, index) => ({ parameter, index }))
    .filter(({ index }) => typeOf(doc.id, index) === "number");

test.each(docs.map((doc) => [doc.id, doc] as const))(
  "%s: every number argument says its unit and its range",
  (_id, doc) => {
    for (const { parameter } of numeric(doc)) {
      const isDate = /a spreadsheet date/.test(parameter.text);
      expect([parameter.name, isDate || rangeIn(parameter.text) !== undefined]).toEqual([
        parameter.name,
        true,
      ]);
      expect([parameter.name, isDate || UNITS.test(parameter.text)]).toEqual([parameter.name, true]);
      if (parameter.optional) expect(parameter.text).toMatch(/blank = /);
    }
  },
);

test.each(docs.map((doc) => [doc.id, doc] as const))("%s: the range said is the range kept", (_id, doc) => {
  const calculate = all.implementations.get(doc.id)!;
  const valid = VALID_CALLS[doc.id]!;
  for (const { parameter, index } of numeric(doc)) {
    const range = rangeIn(parameter.text);
    if (!range || Array.isArray(valid[index])) continue;
    const { min, max, minIncluded, maxIncluded } = range;
    const step = (at: number) => Math.max(1e-6, Math.abs(at) * 1e-6);
    const outside = [
      min - step(min),
      max + step(max),
      ...(minIncluded ? [] : [min]),
      ...(maxIncluded ? [] : [max]),
    ];
    for (const value of outside) {
      // a 0 that is not allowed is taken for a host's blank where the argument may be left out
      if (parameter.optional && value === 0) continue;
      expect([parameter.name, value, refusalOf(calculate, valid, index, value)]).toEqual([
        parameter.name,
        value,
        "domain",
      ]);
    }
    for (const value of [...(minIncluded ? [min] : []), ...(maxIncluded ? [max] : [])]) {
      expect([parameter.name, value, refusalOf(calculate, valid, index, value)]).not.toEqual([
        parameter.name,
        value,
        "domain",
      ]);
    }
  }
});

function refusalOf(
  calculate: CustomFunction,
  valid: readonly unknown[],
  index: number,
  value: number,
): string {
  const args = [...valid];
  args[index] = value;
  try {
    calculate(...args);
    return "answered";
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return error.kind;
  }
}

test("a function that can hurt someone says to take care", () => {
  const dangerous = docs.filter(({ id }) =>
    /^(TIRAGE\.(PRESSURE|RANGE|CURVE|PROGRESS|YIELD)|PRESSURE\.(SHIFT|FROMCO2)|DISGORGING\.FREEZING|RIDDLING\.SCHEDULE)$/.test(
      id,
    ),
  );
  expect(dangerous).toHaveLength(9);
  for (const { id, caution } of dangerous) expect([id, caution !== undefined]).toEqual([id, true]);
});

test("a doc comment without a needed part is an error that names both", () => {
  const whole = `/**\n * What it does.\n * @customfunction X.Y\n * @returns g\n * @equation a = b\n * @source s\n * @example X.Y() = 1\n */\nexport function xy(): number { return 1; }`;
  expect(functionDocs([{ file: "x.ts", text: whole }])).toHaveLength(1);
  for (const part of ["returns", "equation", "source", "example"]) {
    const without = whole.replace(new RegExp(` \\* @${part}.*\\n`), "");
    expect(() => functionDocs([{ file: "x.ts", text: without }])).toThrow(`X.Y has no @${part}`);
  }
  expect(() => functionDocs([{ file: "x.ts", text: whole.replace(" * What it does.\n", "") }])).toThrow(
    "X.Y has no description",
  );
});

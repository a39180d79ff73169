/**
 * The example in each adapter's comment gives what the comment says, to the last digit printed there.
 */
import { readFileSync } from "node:fs";
import { serialFromDate } from "../../src/cellar/ageing";
import { adapterFiles, allFunctions, type AllFunctions } from "../support/functions";
import { expectPrinted } from "../support/relative";

/** Of a long table the example shows one cell, INDEX(…, 1, 1). */
const EXAMPLE = /@example (?:INDEX\()?([A-Z0-9.]+)\((.*)\) = (.+)$/gmu;

const examples = adapterFiles.flatMap((file) =>
  [...readFileSync(file, "utf8").matchAll(EXAMPLE)].map(
    ([, name = "", args = "", result = ""]) => [name, args, result] as const,
  ),
);

const CELL = /"[^"]*"|DATE\(\d+, \d+, \d+\)|TRUE|FALSE|-?[\d.]+/gu;

/** The cells of a list: text in quotes, numbers as printed, dates as serials. */
function cellsOf(list: string): { readonly value: unknown; readonly printed: string }[] {
  return (list.match(CELL) ?? []).map((printed) => {
    if (printed.startsWith("DATE")) {
      const [year = 0, month = 0, day = 0] = (printed.match(/\d+/gu) ?? []).map(Number);
      const serial = serialFromDate(year, month, day);
      return { value: serial, printed: String(serial) };
    }
    return {
      value: JSON.parse(printed.toLowerCase().replace(/^"[^]*$/u, () => printed)) as unknown,
      printed,
    };
  });
}

let every: AllFunctions;
beforeAll(async () => {
  every = await allFunctions();
}, 60_000);

test("every function has one example", () => {
  expect(examples.map(([name]) => name).sort()).toEqual(every.metadata.map(({ id }) => id).sort());
});

test.each(examples)("%s(%s) = %s", (name, args, result) => {
  const calculate = every.implementations.get(name)!;
  const ofTable = args === "), 1, 1";
  const all = [calculate(...(ofTable ? [] : cellsOf(args).map(({ value }) => value)))].flat(2);
  const cells = ofTable ? all.slice(0, 1) : all;
  const expected = cellsOf(result);
  expect(cells).toHaveLength(expected.length);
  expected.forEach(({ value, printed }, index) => {
    if (typeof value === "number") expectPrinted(Number(cells[index]), printed);
    else expect(cells[index]).toBe(value);
  });
});

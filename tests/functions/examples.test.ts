/**
 * The example in each adapter's comment gives what the comment says, to the last digit printed there.
 */
import { serialFromDate } from "../../src/cellar/ageing";
import { adapters } from "../support/adapters";
import { expectPrinted } from "../support/relative";

/** Of a long table the example shows one cell, INDEX(…, 1, 1). */
const EXAMPLE = /^(?:INDEX\()?([A-Z0-9.]+)\((.*)\) = (.+)$/u;

const examples = adapters.map(({ example, calculate }) => {
  const [, name = "", args = "", result = ""] = EXAMPLE.exec(example)!;
  return [name, args, result, calculate] as const;
});

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

test("every function has one example, of itself", () =>
  expect(examples.map(([name]) => name)).toEqual(adapters.map(({ id }) => id)));

test.each(examples)("%s(%s) = %s", (_name, args, result, calculate) => {
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

/**
 * Names of new sheets, and rows laid out to a sheet.
 */
import { cell, plus } from "../../src/workbook/formula";
import { layOut, type Row } from "../../src/workbook/layout";
import { freeSheetName } from "../../src/workbook/sheet-names";

describe("names of new sheets", () => {
  test.each<[string, string, readonly string[], string]>([
    ["the batch's own", "Brut 2025", [], "Plan · Brut 2025"],
    ["one that is taken, in whatever case", "Brut", ["plan · brut"], "Plan · Brut (2)"],
    ["taken twice", "Brut", ["Plan · Brut", "Plan · Brut (2)"], "Plan · Brut (3)"],
    ["characters that a sheet's name may not hold", "a/b:c*?[x]\\", [], "Plan · a b c x"],
    ["a long one, seen to be cut", "Oxlip Hill Magnum Zero 2024", [], "Plan · Oxlip Hill Magnum Zero…"],
    ["an apostrophe at the end", "Brut'", [], "Plan · Brut"],
    ["text that looks like a formula", "=1+1", [], "Plan · =1+1"],
  ])("%s", (_name, batch, taken, expected) => expect(freeSheetName("Plan", batch, taken)).toBe(expected));

  test("never longer than 31 characters, never with half a character, never taken", () => {
    const taken: string[] = [];
    for (let count = 0; count < 30; count++) {
      const name = freeSheetName("Plan", "🍾".repeat(40), taken);
      expect(name.length).toBeLessThanOrEqual(31);
      expect(!/[\uD800-\uDBFF](?![\uDC00-\uDFFF])/.test(name)).toBe(true);
      expect(taken).not.toContain(name);
      taken.push(name);
    }
  });
});

describe("rows laid out", () => {
  const value = (name: string, number: number) => ({ value: number, style: "input", name }) as const;
  const page = { frozenRows: 1, pagesTall: 2, landscape: false };
  const laidOut = (rows: readonly Row[], columnWidths: readonly number[] = []) =>
    layOut({ name: "S", rows, columnWidths, page });

  test("formulas find cells by name, also those further down", () => {
    const rows: Row[] = [
      { cells: [{ value: 3, formula: plus(cell("one"), cell("two")), style: "result", name: "sum" }] },
      { cells: [undefined, value("one", 1)] },
      { cells: [{ value: 2, style: "result", key: "two" }] },
    ];
    const sheet = laidOut(rows, [10]);
    expect(sheet.cells[0]!.formula).toBe("B2+A3");
    expect(sheet.names).toEqual([
      { name: "sum", row: 0, column: 0 },
      { name: "one", row: 1, column: 1 },
    ]);
  });

  test("a name given twice, or asked for and not there, is an error of ours", () => {
    expect(() => laidOut([{ cells: [value("one", 1), value("one", 2)] }])).toThrow(/two cells are named one/);
    const asking: Row = { cells: [{ value: 0, formula: cell("none"), style: "result" }] };
    expect(() => laidOut([asking])).toThrow(/no cell is named none/);
  });
});

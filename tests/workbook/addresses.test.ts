/**
 * Addresses and texts as spreadsheets write them: columns by letters, sheets in quotes, numbers without exponents.
 */
import {
  areaAddress,
  cellAddress,
  columnCount,
  columnLetters,
  quotedSheet,
  rowCount,
} from "../../src/workbook/data";
import {
  cell,
  formulaText,
  isBlank,
  isNumber,
  minus,
  noAnswer,
  number,
  numberOf,
  operation,
  plus,
  range,
  times,
  type Expression,
  type Operator,
} from "../../src/workbook/formula";
import { layOut, type Row } from "../../src/workbook/layout";
import { addressIn } from "../../src/workbook/linked-plan";
import { cut } from "../../src/workbook/rule-text";
import { situations } from "../support/situations";

// 26 letters, then 26 times 26 pairs, then triples; a sheet's last column is XFD, the 16 384th
test.each([
  [0, "A"],
  [25, "Z"],
  [26, "AA"],
  [51, "AZ"],
  [52, "BA"],
  [701, "ZZ"],
  [702, "AAA"],
  [16_383, "XFD"],
])("column %d, counted from 0, is %s", (column, letters) => expect(columnLetters(column)).toBe(letters));

test("a cell by its row, counted from 1", () => expect(cellAddress(8, 27)).toBe("AB9"));

test("a sheet's name in quotes, every apostrophe twice", () =>
  expect(quotedSheet("Plan · d'été '25")).toBe("'Plan · d''été ''25'"));

test.each([
  ["several cells of the sheet itself", { row: 1, column: 1, lastRow: 8, lastColumn: 2 }, "'Own'!$B$2:$C$9"],
  ["one cell", { row: 1, column: 1, lastRow: 1, lastColumn: 1 }, "'Own'!$B$2"],
  ["one row", { row: 1, column: 1, lastRow: 1, lastColumn: 2 }, "'Own'!$B$2:$C$2"],
  ["one column", { row: 1, column: 1, lastRow: 2, lastColumn: 1 }, "'Own'!$B$2:$B$3"],
  ["another sheet", { sheet: "O'er", row: 0, column: 0, lastRow: 0, lastColumn: 0 }, "'O''er'!$A$1"],
])("an area: %s", (_name, area, text) => expect(areaAddress(area, "Own")).toBe(text));

describe("how far a sheet goes", () => {
  const sheet = (rows: readonly Row[], columnWidths: readonly number[]) =>
    layOut({
      name: "S",
      rows,
      columnWidths,
      page: { frozenRows: 0, pagesTall: 0, landscape: false },
    });
  const word = { value: "x", style: "label" } as const;

  test("to the last cell, or as far as columns have widths", () => {
    const filled = [{ cells: [undefined, undefined, word] }, { cells: [] }, { cells: [word] }, { cells: [] }];
    expect([rowCount(sheet(filled, [9])), columnCount(sheet(filled, [9]))]).toEqual([3, 3]);
    expect(columnCount(sheet(filled, [9, 9, 9, 9, 9]))).toBe(5);
    expect([rowCount(sheet([], [])), columnCount(sheet([], []))]).toEqual([0, 0]);
  });
});

describe("formulas", () => {
  const far = (name: string) => `'A!b'!${name}`;
  const written = (expression: Expression) => formulaText(expression, far);
  const plain = (expression: Expression) => formulaText(expression, (name) => name);

  test("a range on another sheet names it once", () =>
    expect(written(range("B2", "B9"))).toBe("'A!b'!B2:B9"));

  test.each<[number | boolean, string]>([
    [1e-12, "0.000000000001"],
    [-2.5e-7, "-0.00000025"],
    [0.25, "0.25"],
    [100, "100"],
    [1e21, "1E+21"],
  ])("%p is written %s", (value, text) =>
    expect(plain(operation(value, "*", cell("B1")))).toBe(`${text}*B1`),
  );
  test("truth is a word in capitals", () =>
    expect(plain(operation(cell("B1"), "=", false))).toBe("B1=FALSE"));
  test("text stays in its case", () => expect(plain(operation(cell("B1"), "=", "e-x"))).toBe('B1="e-x"'));

  // a spreadsheet takes ^ before * and /, those before + and -, and comparisons last, each from the left
  const LEVELS: readonly (readonly Operator[])[] = [
    ["=", "<>", "<", "<=", ">", ">="],
    ["+", "-"],
    ["*", "/"],
    ["^"],
  ];
  const pairs = LEVELS.flatMap((ones, outer) =>
    LEVELS.flatMap((others, inner) =>
      ones.flatMap((one) => others.map((other) => ({ one, other, outer, inner }))),
    ),
  );
  test.each(pairs)("$one over $other", ({ one, other, outer, inner }) => {
    const [x, y, z] = [cell("A1"), cell("A2"), cell("A3")];
    const side = inner < outer ? `(A1${other}A2)` : `A1${other}A2`;
    expect(plain(operation(operation(x, other, y), one, z))).toBe(`${side}${one}A3`);
    const right = inner <= outer ? `(A2${other}A3)` : `A2${other}A3`;
    expect(plain(operation(x, one, operation(y, other, z)))).toBe(`A1${one}${right}`);
  });

  test.each<[string, Expression, string]>([
    ["a call on either side", minus(isNumber(cell("A1")), isNumber(cell("A2"))), "ISNUMBER(A1)-ISNUMBER(A2)"],
    ["a blank cell", isBlank(cell("A1")), 'A1=""'],
    ["no answer", noAnswer, "NA()"],
    ["a number or no answer", numberOf(cell("A1")), "IF(ISNUMBER(A1), A1, NA())"],
    ["a sum of one", plus(cell("A1")), "A1"],
    ["a sum of numbers", plus(1, 2, 3), "1+2+3"],
    ["a product of three", times(2, cell("A1"), number(4)), "2*A1*4"],
  ])("%s", (_name, expression, text) => expect(plain(expression)).toBe(text));
});

test("a cell of a plan, from another sheet", () => {
  const { inputs, plan } = situations()[0]!;
  const linked = { inputs, plan, sheet: "Plan · d'or", places: new Map([["x", { row: 11, column: 1 }]]) };
  expect(addressIn(linked, "x")).toBe("'Plan · d''or'!B12");
  expect(addressIn(linked, "y")).toBeUndefined();
});

describe("texts of rules", () => {
  test.each([
    ["as long as is allowed", "abcdefgh", 8, "abcdefgh"],
    ["one too long, without a space", "abcdefghi", 8, "abcdefg…"],
    ["at a space", "abcde fgh", 8, "abcde…"],
    ["at the last of several spaces", "ab cd ef gh", 10, "ab cd ef…"],
    ["a space right behind what is kept", "abcdefg hij", 8, "abcdefg…"],
    ["a space beyond what fits is none", "abcdefgh ijk", 8, "abcdefg…"],
    ["a space in the first half would leave too little", "a bcdefghi", 8, "a bcdef…"],
    ["a space in the middle", "abcd efghi", 8, "abcd ef…"],
    ["never half a character", "abcdef🍾ij", 8, "abcdef…"],
    ["whole ones in between stay", "a🍾cdefghi", 8, "a🍾cdef…"],
  ])("%s", (_name, text, limit, kept) => {
    expect(cut(text, limit)).toBe(kept);
    expect(kept.length).toBeLessThanOrEqual(limit);
  });
});

/**
 * Calls found in a formula, with their arguments worked out from the cells that it names.
 */
import { callsIn, isOtherResult, referencesIn } from "../../src/explain/formula-calls";
import type { Explanation } from "../../src/explain/types";

const CELLS: Readonly<Record<string, readonly (readonly unknown[])[]>> = {
  B4: [[50]],
  B5: [[24]],
  B6: [[null]],
  B7: [["dry sugar"]],
  "'Plan · L''été'!$B$4": [[12.5]],
  "Sheet1!C3": [[3]],
  "A1:B2": [
    [1, 2],
    [3, null],
  ],
  dose: [[20]],
};
const calls = (formula: string) =>
  callsIn(
    formula,
    (reference) => CELLS[reference],
    (id, [first]) => (id === "SUGAR.SUCROSE" ? Number(first) * 0.95 : undefined),
  );

test.each<[string, unknown[]]>([
  ["=MOUSSE.TIRAGE.SUGAR(B4, B5)", [50, 24]],
  ["=mousse.tirage.sugar(B4,24,)", [50, 24, null]],
  ["=ROUND(INDEX(@MOUSSE.TIRAGE.SUGAR('Plan · L''été'!$B$4, , -2.5E-1), 1, 2)*1E3, 0)", [12.5, null, -0.25]],
  [
    "=MOUSSE.TIRAGE.SUGAR(A1:B2, {1, 2; 3, 4})",
    [
      [
        [1, 2],
        [3, null],
      ],
      [
        [1, 2],
        [3, 4],
      ],
    ],
  ],
  ['=MOUSSE.TIRAGE.SUGAR(IF(B6="", B4, B6), IF(B6=0, "a""b", 1))', [50, 'a"b']],
  ['=MOUSSE.TIRAGE.SUGAR(IF(B7="Dry Sugar", 0, IF(B7="liqueur", B5, NA())), B5>0)', [0, true]],
  ["=MOUSSE.TIRAGE.SUGAR(B4+B5*2-Sheet1!C3^2, (B4+B5)/2)", [50 + 48 - 9, 37]],
  ["=MOUSSE.TIRAGE.SUGAR(-B5, 50%, TRUE, dose)", [-24, 0.5, true, 20]],
  ["=MOUSSE.TIRAGE.SUGAR(IF(ISNUMBER(B6), B6, B4), MIN(B4, B5, 30))", [50, 24]],
  ['=MOUSSE.TIRAGE.SUGAR("x"&B4, AND(B4>=50, B5<>24))', ["x50", false]],
  ["=MOUSSE.TIRAGE.SUGAR(DATE(2024, 5, 31), SUM(A1:B2))", [45_443, 6]],
  ["=2-1-1+MOUSSE.TIRAGE.SUGAR(2-1-1, -2^2)", [0, 4]],
])("%s", (formula, args) => expect(calls(formula)).toEqual([{ id: "TIRAGE.SUGAR", args }]));

test.each<[string, unknown[]]>([
  ["=MOUSSE.X(MIN(B6), MAX(B6, B6), SUM(B6))", [0, 0, 0]],
  ["=MOUSSE.X(MIN(A1:B2), MAX(-3, -5))", [1, -3]],
  ["=MOUSSE.X(AND(TRUE, B6), OR(B6, 0), NOT(B6))", [true, false, true]],
  ["=MOUSSE.X(@B4)", [50]],
])("%s as a spreadsheet reckons it", (formula, args) => expect(calls(formula)).toEqual([{ id: "X", args }]));

test("of an IF only the branch that counts is looked into, both where that is not known", () => {
  expect(calls("=IF(B4>1, MOUSSE.X(1), MOUSSE.Y(2))")).toEqual([{ id: "X", args: [1] }]);
  expect(calls("=IF(B4<1, MOUSSE.X(1), MOUSSE.Y(2))")).toEqual([{ id: "Y", args: [2] }]);
  expect(calls("=IF(LOOKUP(1, 2), MOUSSE.X(1), MOUSSE.Y(2))")).toHaveLength(2);
});

test("a cell that shows another result than its one call is told apart", () => {
  const working = (result: number) => [{ kind: "working", result } as Explanation];
  const cell = (formula: string, value: unknown) => ({ formula, value });
  expect(isOtherResult(cell("=MOUSSE.X(1)", 9.88), working(9.86))).toBe(true);
  expect(isOtherResult(cell("=MOUSSE.X(1)", 9.86), working(9.86 * (1 + 1e-12)))).toBe(false);
  expect(isOtherResult(cell("=ROUND(MOUSSE.X(1), 1)", 9.9), working(9.86))).toBe(false);
});

test("a call within a call is worked out, and both are found", () =>
  expect(calls("=MOUSSE.DOSAGE.RECIPE(2, MOUSSE.SUGAR.SUCROSE(B5))")).toEqual([
    { id: "DOSAGE.RECIPE", args: [2, 24 * 0.95] },
    { id: "SUGAR.SUCROSE", args: [24] },
  ]));

test.each([
  ["=MOUSSE.X(LOOKUP(B4, A1:B2), 1)", /LOOKUP is worked out by the spreadsheet/],
  ["=MOUSSE.X(Z9)", /Z9 shows an error/],
  ["=MOUSSE.X(IF(ISNUMBER(B7), B7, NA()))", /an input is missing/],
  ["=MOUSSE.X(B4/B6)", /division by 0/],
  ["=MOUSSE.X(B7+1)", /a text stands/],
  ["=MOUSSE.X(MOUSSE.Y(1))", /MOUSSE\.Y, within it, refuses/],
  ["=MOUSSE.X(A1:B2=1)", /whole range/],
  ["=MOUSSE.X(#REF!)", /#REF! is not read here/],
  ["=MOUSSE.X(Sheet1!#REF!, 24)", /#REF! is not read here/],
  ["=MOUSSE.X([@Volume], 24)", /\[@Volume\] is not read here/],
  ["=MOUSSE.X(Table1[[#This Row],[Dose]])", /Table1\[\[#This Row\],\[Dose\]\] is not read/],
  ["=SUM(Table1[Dose])+MOUSSE.X(Table1[Dose])", /Table1\[Dose\] is not read/],
  ["=MOUSSE.X(A:A)", /A:A is not read here/],
  ["=MOUSSE.X($2:$4)", /\$2:\$4 is not read here/],
  ["=MOUSSE.X(E1#)", /E1# is not read here/],
  ["=MOUSSE.X('[other.xlsx]Sheet1'!A1)", /is not read here/],
  ["=MOUSSE.X('Plan · A'!dose)", /is not read here/],
  ["=MOUSSE.X(@A1:B2)", /@A1:B2 is not read here/],
  ['=MOUSSE.X(IF("abc", 1, 2))', /a text or a range stands where yes or no/],
  ['=MOUSSE.X(""*2)', /a text stands where a number/],
  ["=MOUSSE.X(1E400)", /./],
  ["=MOUSSE.X(IF())", /./],
])("%s: why it is not known is said", (formula, reason) => {
  expect(calls(formula)[0]).toMatchObject({ id: "X", unknown: expect.stringMatching(reason) as string });
});

test.each([
  "=B4+B5",
  "=SUM(A1:B2",
  "=",
  "no formula at all",
  '="MOUSSE.X(1)"',
  "=Table1[[#This Row],[Dose]]",
])("%s holds no call of ours, and nothing is thrown", (formula) => expect(calls(formula)).toEqual([]));

test("what has to be looked up, each once", () =>
  expect(referencesIn("=MOUSSE.X(B4, 'Plan · L''été'!$B$4, A1:B2, B4, dose, LOG10(2), TRUE)")).toEqual([
    "B4",
    "'Plan · L''été'!$B$4",
    "A1:B2",
    "dose",
  ]));

/**
 * Calls found in a formula, with their arguments worked out from the cells that it names.
 */
import { callsIn, referencesIn } from "../../src/explain/formula-calls";

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
  ["=MOUSSE.X(#REF!)", /./],
])("%s: why it is not known is said", (formula, reason) => {
  const [found] = calls(formula);
  if (formula.includes("#REF")) expect(found === undefined || "unknown" in found).toBe(true);
  else expect(found).toMatchObject({ id: "X", unknown: expect.stringMatching(reason) as string });
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

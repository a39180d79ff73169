/**
 * Expressions written out: precedence, quoting, addresses.
 */
import {
  formulaText,
  blank,
  builtin,
  cell,
  choose,
  divided,
  iff,
  minus,
  monthsAfter,
  mousse,
  nth,
  number,
  operation,
  plus,
  range,
  times,
  type Expression,
} from "../../src/workbook/formula";

const places: Readonly<Record<string, string>> = { a: "B1", b: "B2", c: "C3" };
const written = (expression: Expression) => formulaText(expression, (name) => places[name]!);
const [a, b, c] = [cell("a"), cell("b"), cell("c")];

test.each<[string, Expression, string]>([
  ["a sum of products", plus(times(a, b), c), "B1*B2+C3"],
  ["a product of sums", times(plus(a, b), c), "(B1+B2)*C3"],
  ["a difference taken from the right", minus(a, minus(b, c)), "B1-(B2-C3)"],
  ["a difference taken from the left", minus(minus(a, b), c), "B1-B2-C3"],
  ["a quotient under a quotient", divided(a, divided(b, c)), "B1/(B2/C3)"],
  ["a product over a quotient", times(a, divided(b, c)), "B1*(B2/C3)"],
  ["a comparison of sums", operation(plus(a, 1), "<=", c), "B1+1<=C3"],
  ["a comparison inside a product", times(operation(a, ">", 0), operation(b, "=", "")), '(B1>0)*(B2="")'],
  ["a function of ours", mousse("TIRAGE.SUGAR", a, b, 1), "MOUSSE.TIRAGE.SUGAR(B1, B2, 1)"],
  [
    "blank arguments in between",
    mousse("TIRAGE.RANGE", a, blank, blank, c),
    "MOUSSE.TIRAGE.RANGE(B1, , , C3)",
  ],
  ["one cell of a row", nth(mousse("DOSAGE.RECIPE", a, b), 2), "INDEX(MOUSSE.DOSAGE.RECIPE(B1, B2), 1, 2)"],
  [
    "text with quotes in it",
    iff(operation(a, "=", 'say "brut"'), "x", true),
    'IF(B1="say ""brut""", "x", TRUE)',
  ],
  ["a range", builtin("SUM", range("a", "b")), "SUM(B1:B2)"],
  ["a bare number", number(20), "20"],
  [
    "no option fits",
    choose(a, [
      ["x", 1],
      ["y", b],
    ]),
    'IF(B1="x", 1, IF(B1="y", B2, NA()))',
  ],
  [
    "months by the last-day rule",
    monthsAfter(a, b),
    "MIN(DATE(YEAR(B1), MONTH(B1)+B2, DAY(B1)), DATE(YEAR(B1), MONTH(B1)+B2+1, 0))",
  ],
])("%s", (_name, expression, text) => expect(written(expression)).toBe(text));

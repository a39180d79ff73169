/**
 * Formulas as an expression tree. A template names cells, not addresses; what is written is decided here, once for
 * each dialect.
 */
export type Expression =
  | { readonly kind: "literal"; readonly value: number | string | boolean }
  | { readonly kind: "cell"; readonly name: string }
  | { readonly kind: "range"; readonly first: string; readonly last: string }
  | { readonly kind: "blank" }
  | { readonly kind: "mousse"; readonly id: string; readonly args: readonly Expression[] }
  | { readonly kind: "builtin"; readonly id: string; readonly args: readonly Expression[] }
  | {
      readonly kind: "operation";
      readonly operator: Operator;
      readonly left: Expression;
      readonly right: Expression;
    };

export type Operator = "+" | "-" | "*" | "/" | "^" | "=" | "<>" | "<" | "<=" | ">" | ">=";

export type Operand = Expression | number | string | boolean;

/** Plain text is a literal; cells are always asked for with cell(). */
const asExpression = (operand: Operand): Expression =>
  typeof operand === "object" ? operand : { kind: "literal", value: operand };

export const cell = (name: string): Expression => ({ kind: "cell", name });
export const range = (first: string, last: string): Expression => ({ kind: "range", first, last });
export const number = (value: number): Expression => ({ kind: "literal", value });
export const blank: Expression = { kind: "blank" };

/** A call of one of our functions, by its id: mousse("TIRAGE.SUGAR", …). */
export function mousse(id: string, ...args: Operand[]): Expression {
  return { kind: "mousse", id, args: args.map(asExpression) };
}
/** A call of a function that every spreadsheet has. */
export function builtin(id: string, ...args: Operand[]): Expression {
  return { kind: "builtin", id, args: args.map(asExpression) };
}
export function operation(left: Operand, operator: Operator, right: Operand): Expression {
  return { kind: "operation", operator, left: asExpression(left), right: asExpression(right) };
}

export const iff = (condition: Operand, then: Operand, otherwise: Operand) =>
  builtin("IF", condition, then, otherwise);
export const equals = (left: Operand, right: Operand) => operation(left, "=", right);
export const isNumber = (value: Operand) => builtin("ISNUMBER", value);
/** No answer: an error that every formula built on it passes on, so that a missing input is never taken for 0. */
export const noAnswer = builtin("NA");
/** A number, or no answer: a blank cell would otherwise count as 0, and text as more than any number. */
export const numberOf = (value: Expression) => iff(isNumber(value), value, noAnswer);
/** One of several choices by the word in a cell; no answer for any other word, or none. */
export const choose = (
  chosen: Expression,
  options: readonly (readonly [word: string, value: Operand])[],
): Expression =>
  options.reduceRight<Expression>(
    (otherwise, [word, value]) => iff(equals(chosen, word), value, otherwise),
    noAnswer,
  );
export const isBlank = (value: Operand) => equals(value, "");
export const plus = (first: Operand, ...rest: Operand[]) =>
  rest.reduce<Expression>((sum, term) => operation(sum, "+", term), asExpression(first));
export const minus = (left: Operand, right: Operand) => operation(left, "-", right);
export const times = (first: Operand, ...rest: Operand[]) =>
  rest.reduce<Expression>((product, factor) => operation(product, "*", factor), asExpression(first));
export const divided = (left: Operand, right: Operand) => operation(left, "/", right);
/** One cell of a function that answers with a row; columns count from 1. */
export const nth = (row: Expression, column: number) => builtin("INDEX", row, 1, column);

/**
 * The end of a period of months by the last-day rule. EDATE says the same in Excel, but not in every engine: the
 * grid's (0.25.1) makes 31 March and six months the first of October.
 */
export function monthsAfter(date: Expression, months: Expression): Expression {
  const later = (extraMonths: number, day: Operand) =>
    builtin(
      "DATE",
      builtin("YEAR", date),
      plus(builtin("MONTH", date), months, ...(extraMonths ? [extraMonths] : [])),
      day,
    );
  return builtin("MIN", later(0, builtin("DAY", date)), later(1, 0));
}

/** Where a named cell is, as it stands in the formula being written. */
export type Locate = (name: string) => string;

/** Of what needs no brackets anywhere. */
const HIGHEST = 5;

const PRECEDENCE: Readonly<Record<Operator, number>> = {
  "=": 1,
  "<>": 1,
  "<": 1,
  "<=": 1,
  ">": 1,
  ">=": 1,
  "+": 2,
  "-": 2,
  "*": 3,
  "/": 3,
  "^": 4,
};

/** Decimal places that every number of ours needs when it is written out. */
const DECIMALS = 20;

function literalText(value: number | string | boolean): string {
  if (typeof value === "string") return `"${value.replaceAll('"', '""')}"`;
  const text = String(value).toUpperCase();
  // -1E-12 is not one number to every program
  return typeof value === "number" && text.includes("E-") ? value.toFixed(DECIMALS).replace(/0+$/, "") : text;
}

/** The formula as typed, our functions as =MOUSSE.…, without the leading "=". */
export function formulaText(expression: Expression, locate: Locate): string {
  const write = (node: Expression): string => {
    switch (node.kind) {
      case "literal":
        return literalText(node.value);
      case "cell":
        return locate(node.name);
      case "range":
        // the sheet is named once
        return `${locate(node.first)}:${locate(node.last).replace(/^.*!/, "")}`;
      case "blank":
        return "";
      case "mousse":
        return `MOUSSE.${node.id}(${node.args.map(write).join(", ")})`;
      case "builtin":
        return `${node.id}(${node.args.map(write).join(", ")})`;
      case "operation": {
        const own = PRECEDENCE[node.operator];
        const bracketed = (side: Expression, needed: boolean) => (needed ? `(${write(side)})` : write(side));
        const level = (side: Expression) => (side.kind === "operation" ? PRECEDENCE[side.operator] : HIGHEST);
        return `${bracketed(node.left, level(node.left) < own)}${node.operator}${bracketed(node.right, level(node.right) <= own)}`;
      }
    }
  };
  return write(expression);
}

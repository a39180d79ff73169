/**
 * Our functions as plain formulas. A form works one call out in steps, each a row of its own with label and unit, so
 * that any spreadsheet program calculates it and anyone can follow it.
 */
import type { Expression, Operand } from "../formula";

export interface Steps {
  /** A row of the workings: what it is, its unit and how it is worked out. Answers with its cell. */
  readonly step: (label: string, unit: string, formula: Operand) => Expression;
  /** A constant, in a row of its own. */
  readonly constant: (key: ConstantKey) => Expression;
  /** A cell of the Notes sheet. */
  readonly notes: (name: string) => Expression;
  readonly notesRange: (first: string, last: string) => Expression;
}

/** The arguments of a call, of which a form takes as many as its function has. */
export type Args = readonly [
  Expression,
  Expression,
  Expression,
  Expression,
  Expression,
  Expression,
  Expression,
];

/** One result, or several for a function that answers with a row. */
export type Form = (args: readonly Expression[], steps: Steps) => Expression | readonly Expression[];

/** One cell of a function that answers with a table, counted from 1. */
export type TableForm = (
  args: readonly Expression[],
  row: Expression,
  column: number,
  steps: Steps,
) => Expression;

export type ConstantKey = "inv" | "vol" | "co2" | "displaced" | "atmosphere" | "nitrogen" | "gas" | "ethanol";

/**
 * A cell explained, as data: the pane and the help pages show it, each in its own way.
 */
import type { Source } from "../cellar/rules/source";

export type Mark = Source["mark"] | "derived" | "exact";

/** A published text or a reason, how sure it is, and for regulation the day it was recorded here (ISO). */
export interface Cited {
  readonly text: string;
  readonly mark: Mark;
  readonly recorded?: string;
}

export type Cell = number | string | boolean;
/** What a function gives: one cell, or rows of cells. */
export type Answer = number | string | readonly (readonly Cell[])[];

export interface Step {
  /** A plain sentence or phrase. */
  readonly what: string;
  /** How later equations call it: "s". */
  readonly symbol?: string;
  /** "m = V0·(s − S0)/(1000 − s·d)" */
  readonly equation?: string;
  /** Its right-hand side with the numbers put in. */
  readonly numbers?: string;
  /** As calculated. */
  readonly result: number | string;
  /** As read: five significant digits, all of them where there are no more than seven. */
  readonly shown: string;
  readonly unit: string;
  /** Where the step is an argument: given in the call, or left blank and so the default. */
  readonly argument?: "given" | "default";
}

export interface Constant {
  readonly symbol: string;
  readonly value: number;
  readonly unit: string;
  readonly what: string;
  readonly source: Cited;
}

export interface Working {
  readonly kind: "working";
  /** "MOUSSE.TIRAGE.SUGAR(50, 24)" */
  readonly call: string;
  readonly steps: readonly Step[];
  readonly constants: readonly Constant[];
  /** Exactly what the cell holds. */
  readonly result: Answer;
  readonly unit: string;
  readonly sources: readonly Cited[];
  readonly caution?: string;
}

export interface Refused {
  readonly kind: "domain" | "unanswerable" | "unknown";
  readonly call: string;
  readonly argument: string;
  readonly given: unknown;
  readonly remedy: string;
  /** The cell's own message. */
  readonly sentence: string;
  /** What stands in the cell, and what that means. */
  readonly error: "#VALUE!" | "#N/A" | "#NAME?";
  readonly meaning: string;
}

export type Explanation = Working | Refused;

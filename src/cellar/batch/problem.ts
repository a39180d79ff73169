/**
 * One thing wrong with an input: where, what was given, what is allowed.
 */
import { wordGiven } from "../refusal";

export interface Problem {
  readonly field: string;
  readonly given: unknown;
  readonly remedy: string;
}

export const problemSentence = ({ field, given, remedy }: Problem) =>
  `${field} is ${wordGiven(given)}; ${remedy}`;

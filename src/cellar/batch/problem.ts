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
  `${field} is ${wordInFile(given)}; ${remedy}`;

/** A batch file can hold what no cell can. */
function wordInFile(given: unknown): string {
  if (Array.isArray(given)) return "a list";
  return typeof given === "object" && given !== null ? "a group of fields" : wordGiven(given);
}

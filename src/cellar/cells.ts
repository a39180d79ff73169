/**
 * What may stand in a cell, read: blanks and their defaults, yes or no, words from a list.
 */
import { isWithin, within, type Domain } from "./domains";
import type { LabelRuleSet } from "./label";
import { matcher } from "./matching";
import { Refusal } from "./refusal";
import { pressureRules } from "./rules/pressure-classes";
import { ruleSetsOf, type ByRules, type RuleSet } from "./rules/source";
import { sweetnessRules } from "./rules/sweetness-bands";

/** A blank argument arrives as null, undefined or "" (and, from some hosts, as 0). */
export const isBlank = (value: unknown): boolean => value === undefined || value === null || value === "";

/** Whether an optional number counts as blank: a 0 that the domain does not allow is a host's blank. */
export const isBlankNumber = (domain: Domain, value: unknown): boolean =>
  isBlank(value) || (value === 0 && !isWithin(domain, 0));

/** An optional number: blank means the default. */
export function optionalNumber<Default extends number | null>(
  domain: Domain,
  value: unknown,
  argument: string,
  whenBlank: Default,
): number | Default {
  // most cells hold a number that is allowed, which is no blank whatever it is
  if (typeof value === "number" && isWithin(domain, value)) return value;
  return isBlankNumber(domain, value) ? whenBlank : within(domain, value, argument);
}

/** Whether an optional word, or yes or no, counts as blank. */
export const isBlankWord = (value: unknown): boolean => isBlank(value) || value === 0;

/** An optional yes or no. A 0 is a host's blank, so it means the default: for added sugar TRUE, the careful side. */
export function optionalTruth(value: unknown, argument: string, whenBlank: boolean): boolean {
  if (isBlankWord(value)) return whenBlank;
  if (typeof value === "boolean") return value;
  if (value === 1) return true;
  throw new Refusal({ kind: "domain", argument, given: value, remedy: "give TRUE or FALSE" });
}

/** An optional word from a list, matched without regard to case, accents or blanks. */
export function optionalWord<Word extends string>(
  words: readonly Word[],
  value: unknown,
  argument: string,
  whenBlank: Word,
): Word {
  if (isBlankWord(value)) return whenBlank;
  // written as the list has it, it needs no folding
  for (const word of words) if (word === value) return word;
  return matcher(words, (word) => [word])(value, argument);
}

/** The rule sets that each kind of question can be asked by. */
export const ruleSets = {
  sweetness: ruleSetsOf(sweetnessRules),
  label: ruleSetsOf<LabelRuleSet>({ EU: true, US: true } satisfies ByRules<true, LabelRuleSet>),
  pressure: ruleSetsOf(pressureRules),
} as const satisfies Record<string, readonly RuleSet[]>;

/** The filled cells of a range, row by row; a single value is a range of one cell. */
export function filledCells(range: unknown): unknown[] {
  const filled: unknown[] = [];
  const add = (cell: unknown) => {
    if (!isBlank(cell)) filled.push(cell);
  };
  const addRow = (row: unknown) => {
    if (Array.isArray(row)) row.forEach(add);
    else add(row);
  };
  if (Array.isArray(range)) range.forEach(addRow);
  else add(range);
  return filled;
}

/**
 * Cells to cellar and back: arguments checked against their domains, blanks given their defaults, refusals
 * turned into cell errors.
 */
import { Refusal } from "../cellar/refusal";
import { isWithin, within, type Domain } from "../cellar/domains";
import type { LabelRuleSet } from "../cellar/label";
import { matchWord } from "../cellar/matching";
import { pressureRules } from "../cellar/rules/pressure-classes";
import { ruleSetsOf, type ByRules, type RuleSet } from "../cellar/rules/source";
import { LANGUAGES, sweetnessRules, type Language } from "../cellar/rules/sweetness-bands";

export { domains } from "../cellar/domains";

/** A blank argument reaches a function as null, undefined or "" (and, from some hosts, as 0). */
export const isBlank = (value: unknown): boolean => value === undefined || value === null || value === "";

/** An argument that must be given. */
export const given = within;

/** An optional argument: blank means the default. A 0 that the domain does not allow is a host's blank. */
export function optional<Default extends number | null>(
  domain: Domain,
  value: unknown,
  argument: string,
  whenBlank: Default,
): number | Default {
  if (isBlank(value) || (value === 0 && !isWithin(domain, 0))) return whenBlank;
  return within(domain, value, argument);
}

/**
 * An optional yes or no. A 0 is a blank cell of some hosts, so it means the default: for added sugar that is TRUE, the
 * careful side.
 */
export function optionalTruth(value: unknown, argument: string, whenBlank: boolean): boolean {
  if (isBlank(value) || value === 0) return whenBlank;
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
  return isBlank(value) || value === 0 ? whenBlank : matchWord(words, (word) => [word], value, argument);
}

/** Whose rules: one of those that a table has an entry for. */
const optionalRules =
  <Sets extends RuleSet>(table: ByRules<unknown, Sets>, whenBlank: Sets) =>
  (value: unknown): Sets =>
    optionalWord(ruleSetsOf(table), value, "rules", whenBlank);

export const optionalSweetnessRules = optionalRules(sweetnessRules, "EU");
export const optionalLabelRules = optionalRules<LabelRuleSet>({ EU: true, US: true }, "EU");
export const optionalPressureRules = optionalRules(pressureRules, "EU");
export const optionalLanguage = (value: unknown): Language =>
  optionalWord(LANGUAGES, value, "language", "en");

/** Runs one function's calculation: a refusal becomes the cell's error, and no NaN or Infinity leaves. */
export function answer<Result>(calculate: () => Result): Result {
  try {
    const result = calculate();
    if (typeof result === "number" && !Number.isFinite(result)) {
      throw new Refusal({
        kind: "unanswerable",
        argument: "the result",
        given: result,
        remedy: "give less extreme arguments",
      });
    }
    return result;
  } catch (error) {
    throw error instanceof Refusal ? cellError(error) : error;
  }
}

/** #VALUE! for an argument outside its domain, #N/A for a question with no answer; both carry the sentence. */
function cellError(refusal: Refusal): Error | CustomFunctions.Error {
  const host = typeof CustomFunctions === "undefined" ? undefined : CustomFunctions;
  if (host?.Error === undefined || host.ErrorCode === undefined) return refusal;
  const code = refusal.kind === "domain" ? host.ErrorCode.invalidValue : host.ErrorCode.notAvailable;
  return new host.Error(code, refusal.message);
}

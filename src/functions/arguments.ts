/**
 * Cells to cellar and back: arguments checked against their domains, blanks given their defaults, refusals
 * turned into cell errors.
 */
import { optionalWord, ruleSets } from "../cellar/cells";
import { within } from "../cellar/domains";
import { Refusal } from "../cellar/refusal";
import { LANGUAGES, type Language } from "../cellar/rules/sweetness-bands";

export { domains } from "../cellar/domains";
export { filledCells, optionalNumber as optional, optionalTruth, optionalWord } from "../cellar/cells";

/** An argument that must be given. */
export const given = within;

/** Whose rules: one of those that the data has an answer by. */
const optionalRules =
  <RuleSet extends string>(known: readonly RuleSet[], whenBlank: RuleSet) =>
  (value: unknown): RuleSet =>
    optionalWord(known, value, "rules", whenBlank);

export const optionalSweetnessRules = optionalRules(ruleSets.sweetness, "EU");
export const optionalLabelRules = optionalRules(ruleSets.label, "EU");
export const optionalPressureRules = optionalRules(ruleSets.pressure, "EU");
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

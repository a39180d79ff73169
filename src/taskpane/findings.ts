/**
 * What the checks found, in words.
 */
import { checkFound, checkWords, notFine } from "../cellar/batch/check-words";
import { CHECK_KEYS, type Check, type CheckKey, type Verdict } from "../cellar/batch/checks";
import type { BatchPlan } from "../cellar/batch/plan";
import { quantityOf, type Units } from "./units";

export interface Finding {
  readonly verdict: Verdict;
  readonly what: string;
}

/** The worst first: "Months on the lees at least 9 months: 3". */
export function findings(
  { checks }: BatchPlan,
  units: Units,
  keys: readonly CheckKey[] = CHECK_KEYS,
): Finding[] {
  return notFine(checks, keys).map((key) => {
    const check = inUnits(key, checks[key], units);
    return { verdict: check.verdict, what: checkFound(key, check, check.unit) };
  });
}

/** "Worst check: look again (3 to look at)." */
export function verdictSentence(found: readonly Finding[]): string {
  const stops = found.filter(({ verdict }) => verdict === "stop").length;
  if (found.length === 0) return "All checks are fine.";
  if (stops === 0) return `Look again: ${found.length} of the checks.`;
  return `Stop: ${stops} of the checks; ${found.length - stops} more to look at again.`;
}

/** A check with its figures in the unit that the person reads. */
function inUnits(key: CheckKey, check: Check, units: Units): Check & { readonly unit: string } {
  const { unit } = checkWords(key);
  const quantity = quantityOf("", unit);
  if (!quantity) return { ...check, unit };
  const { name, shown } = units.of(quantity);
  const own = (value: Check["value"]) =>
    typeof value === "number" ? Number(shown(value)!.toFixed(2)) : value;
  return { ...check, value: own(check.value), limit: own(check.limit), unit: name };
}

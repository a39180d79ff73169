/**
 * The kinds of limit and verdict that checks are made of. A verdict is "fine" only where two numbers were compared, or
 * where the rules say outright that there is no limit: blanks, texts and errors end as "stop".
 */
import { NO_LIMIT } from "../../cellar/batch/checks";
import { legalLimits, type LegalLimits } from "../../cellar/rules/limits";
import { ruleSetsOf, sourceText, type Source } from "../../cellar/rules/source";
import { sweetnessRules, type SweetnessRuleSet } from "../../cellar/rules/sweetness-bands";
import {
  builtin,
  choose,
  equals,
  iff,
  isBlank,
  isNumber,
  operation,
  type Expression,
  type Operator,
} from "../formula";
import { input } from "./rows";

export interface CheckRow {
  readonly value: Expression;
  readonly format?: string;
  /** An expression, a number of ours, or nothing where the verdict needs no limit. */
  readonly limit?: Expression | number;
  readonly verdict: (value: Expression, limit: Expression) => Expression;
  /** Fixed, or following the sheet's own Rules cell. */
  readonly source: string | ((ruleSet: SweetnessRuleSet) => string);
}

/** One value for each rule set that a batch can be planned by, chosen by the sheet's own Rules cell. */
export const byRules = (of: (ruleSet: SweetnessRuleSet) => number | string | Expression): Expression =>
  choose(
    input("batch.rules"),
    ruleSetsOf(sweetnessRules).map((ruleSet) => [ruleSet, of(ruleSet)] as const),
  );
export const legal = (of: (limits: LegalLimits) => { readonly value: number } | undefined) =>
  byRules((ruleSet) => of(legalLimits[ruleSet])?.value ?? NO_LIMIT);

/** A source that goes with the rules chosen. */
export const sourceByRules =
  (of: (ruleSet: SweetnessRuleSet) => Source | undefined) => (ruleSet: SweetnessRuleSet) => {
    const found = of(ruleSet);
    return found ? sourceText(found) : "these rules set no limit";
  };
export const legalSource = (of: (limits: LegalLimits) => { readonly source: Source } | undefined) =>
  sourceByRules((ruleSet) => of(legalLimits[ruleSet])?.source);

type Verdict = CheckRow["verdict"];

/** Compares two numbers; anything else is a stop. */
const compared =
  (operator: Operator, beyond: string | Expression): Verdict =>
  (value, limit) =>
    iff(
      builtin("AND", isNumber(value), isNumber(limit)),
      iff(operation(value, operator, limit), "fine", beyond),
      "stop",
    );

export const atMost =
  (beyond: string | Expression): Verdict =>
  (value, limit) =>
    iff(equals(limit, NO_LIMIT), "fine", compared("<=", beyond)(value, limit));
export const atLeast = (beyond: string | Expression): Verdict => compared(">=", beyond);

/** A value or a limit that the user may leave blank: then it is worth a look, but never fine. */
export const unlessBlank =
  (which: "value" | "limit", verdict: Verdict): Verdict =>
  (value, limit) =>
    iff(isBlank(which === "value" ? value : limit), "look again", verdict(value, limit));

export const blankAsText = (value: Expression) => iff(isBlank(value), "", value);

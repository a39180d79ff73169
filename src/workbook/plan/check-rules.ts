/**
 * The kinds of limit and verdict that checks are made of.
 */
import { legalLimits, type LegalLimits } from "../../cellar/rules/limits";
import { ruleSetsOf, sourceText, type Source } from "../../cellar/rules/source";
import { sweetnessRules, type SweetnessRuleSet } from "../../cellar/rules/sweetness-bands";
import { equals, iff, isBlank, operation, type Expression } from "../formula";
import { input } from "./rows";

export interface CheckRow {
  readonly what: string;
  readonly unit: string;
  readonly value: Expression;
  readonly format?: string;
  /** An expression, a number of ours, or nothing where the verdict needs no limit. */
  readonly limit?: Expression | number;
  readonly verdict: (value: Expression, limit: Expression) => Expression;
  /** Fixed, or following the sheet's own Rules cell. */
  readonly source: string | ((ruleSet: SweetnessRuleSet) => string);
}

export const rules = input("batch.rules");

/** One value for each rule set, chosen by the sheet's own Rules cell; "" where the rules say nothing. */
export function byRules(
  of: (ruleSet: SweetnessRuleSet) => number | string | Expression | undefined,
): Expression {
  const [first, ...others] = ruleSetsOf(sweetnessRules).map(
    (ruleSet) => [ruleSet, of(ruleSet) ?? ""] as const,
  );
  return others.reduce<Expression>(
    (otherwise, [ruleSet, value]) => iff(equals(rules, ruleSet), value, otherwise),
    iff(equals(rules, first![0]), first![1], ""),
  );
}
export const legal = (of: (limits: LegalLimits) => { readonly value: number } | undefined) =>
  byRules((ruleSet) => of(legalLimits[ruleSet])?.value);
/** A source that goes with the rules chosen. */
export const sourceByRules =
  (of: (ruleSet: SweetnessRuleSet) => Source | undefined) => (ruleSet: SweetnessRuleSet) => {
    const found = of(ruleSet);
    return found ? sourceText(found) : "these rules set no limit";
  };
export const legalSource = (of: (limits: LegalLimits) => { readonly source: Source } | undefined) =>
  sourceByRules((ruleSet) => of(legalLimits[ruleSet])?.source);

export const atMost = (beyond: string) => (value: Expression, limit: Expression) =>
  iff(isBlank(limit), "fine", iff(operation(value, "<=", limit), "fine", beyond));
export const atLeast = (beyond: string | Expression) => (value: Expression, limit: Expression) =>
  iff(operation(value, ">=", limit), "fine", beyond);
export const unlessBlank =
  (verdict: CheckRow["verdict"]): CheckRow["verdict"] =>
  (value, limit) =>
    iff(isBlank(value), "look again", verdict(value, limit));

export const blankAsText = (value: Expression) => iff(isBlank(value), "", value);

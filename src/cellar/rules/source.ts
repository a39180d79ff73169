/**
 * Where a regulation or practice figure comes from and how sure it is. Every row of every table here carries
 * one. Regulation changes: the figures are dated, and the sheets let the user overrule them.
 */
export interface Source {
  /** The published text, short enough to stand in a cell. */
  readonly text: string;
  /**
   * "read": seen in the published text or an official copy. "secondary": read in a text about it.
   * "memory": recalled, not seen again. "practice": common practice, no source.
   */
  readonly mark: "read" | "secondary" | "memory" | "practice";
  /** The day the figure was recorded here, ISO. */
  readonly recorded: string;
}

export const RECORDED = "2026-11-25";

export const source = (text: string, mark: Source["mark"]): Source => ({ text, mark, recorded: RECORDED });

export const commonPractice = source("common practice, no source", "practice");

/** "Regulation (EU) 1308/2013 annex VII part II (read)". */
export function sourceText({ text, mark }: Source): string {
  return mark === "practice" ? text : `${text} (${mark})`;
}

/**
 * The rule sets that the data speaks for. A country is added here, with an entry in each table in which it has
 * something to say; a table without an entry refuses that rule set and lists those it has.
 */
export const RULE_SETS = ["EU", "OIV", "US", "AU", "CA-QC"] as const;
export type RuleSet = (typeof RULE_SETS)[number];

/** A table by rule set. Those without an entry have nothing to say. */
export type ByRules<Entry, Sets extends RuleSet> = Readonly<Record<Sets, Entry>>;

export const ruleSetsOf = <Sets extends RuleSet>(table: ByRules<unknown, Sets>): Sets[] =>
  RULE_SETS.filter((ruleSet): ruleSet is Sets => ruleSet in table);

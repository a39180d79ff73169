/**
 * Which sweetness terms a sugar content permits, and how close the edge is. Sugar always as analysed:
 * g/L of glucose + fructose, sucrose counted as such.
 */
import { matcher } from "./matching";
import {
  sweetnessRules,
  type Language,
  type SweetnessBand,
  type SweetnessRuleSet,
} from "./rules/sweetness-bands";
import type { InvertGL } from "./units";

export type SweetnessVerdict = "permitted" | "within tolerance" | "not permitted";

const bands = (rules: SweetnessRuleSet) => sweetnessRules[rules].bands;

/** Every band that a sugar content permits, driest first; every sugar content has at least one. */
export function permittedBands(
  sugar: InvertGL,
  sugarAdded: boolean,
  rules: SweetnessRuleSet,
): SweetnessBand[] {
  return bands(rules).filter((band) => permits(band, sugar, sugarAdded));
}

/** The words permitted on a label, driest first. */
export function permittedTerms(
  sugar: InvertGL,
  sugarAdded: boolean,
  rules: SweetnessRuleSet,
  language: Language,
): string[] {
  const terms: string[] = [];
  for (const band of bands(rules)) if (permits(band, sugar, sugarAdded)) terms.push(band.terms[language][0]);
  return terms;
}

/** The driest of them. */
export function driestTerm(
  sugar: InvertGL,
  sugarAdded: boolean,
  rules: SweetnessRuleSet,
  language: Language,
): string {
  return bands(rules).find((band) => permits(band, sugar, sugarAdded))!.terms[language][0];
}

const bandNamed = (rules: SweetnessRuleSet) =>
  matcher(bands(rules), (band) => Object.values(band.terms).flat());
const namedBy: Readonly<Record<SweetnessRuleSet, ReturnType<typeof bandNamed>>> = {
  EU: bandNamed("EU"),
  OIV: bandNamed("OIV"),
};

/** The band a word stands for, in any language of the data. */
export function bandOfTerm(term: unknown, rules: SweetnessRuleSet, argument: string): SweetnessBand {
  return namedBy[rules](term, argument);
}

/** Whether a term fits; the tolerance of an analysis never lifts the no-sugar-added condition. */
export function sweetnessVerdict(
  band: SweetnessBand,
  sugar: InvertGL,
  sugarAdded: boolean,
): SweetnessVerdict {
  if (!conditionMet(band, sugarAdded)) return "not permitted";
  if (holds(band, sugar)) return "permitted";
  // without a tolerance the bound keeps its own "included or not"
  const { low, high, toleranceBelow, toleranceAbove } = band;
  const nearLow = aboveLow(band, sugar) || (toleranceBelow > 0 && sugar >= low - toleranceBelow);
  const nearHigh =
    belowHigh(band, sugar) || (toleranceAbove > 0 && high !== null && sugar <= high + toleranceAbove);
  return nearLow && nearHigh ? "within tolerance" : "not permitted";
}

/** g/L to the nearer bound of the band, negative outside. A low bound of 0 is no edge: sugar cannot fall past it. */
export function sweetnessMarginGL(band: SweetnessBand, sugar: InvertGL): number {
  const toLow = band.low === 0 ? Infinity : sugar - band.low;
  const toHigh = band.high === null ? Infinity : band.high - sugar;
  return Math.min(toLow, toHigh);
}

const aboveLow = ({ low, lowIncluded }: SweetnessBand, sugar: InvertGL) =>
  lowIncluded ? sugar >= low : sugar > low;

const belowHigh = ({ high, highIncluded }: SweetnessBand, sugar: InvertGL) =>
  high === null || (highIncluded ? sugar <= high : sugar < high);

const holds = (band: SweetnessBand, sugar: InvertGL) => aboveLow(band, sugar) && belowHigh(band, sugar);

const permits = (band: SweetnessBand, sugar: InvertGL, sugarAdded: boolean) =>
  holds(band, sugar) && conditionMet(band, sugarAdded);

function conditionMet(band: SweetnessBand, sugarAdded: boolean): boolean {
  return !(band.onlyWithoutAddedSugar && sugarAdded);
}

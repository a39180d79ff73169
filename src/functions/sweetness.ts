/**
 * SWEETNESS functions. Sugar always as analysed: g/L of glucose + fructose, sucrose counted as such.
 */
import * as sweetness from "../cellar/sweetness";
import { invertGL } from "../cellar/units";
import { answer, domains, given, optionalLanguage, optionalSweetnessRules, optionalTruth } from "./arguments";

/** What both functions of terms ask by. */
const asked = (sugar_gL: unknown, sugarAdded: unknown, rules: unknown, language: unknown) =>
  [
    invertGL(given(domains.strengthGL, sugar_gL, "sugar_gL")),
    optionalTruth(sugarAdded, "sugarAdded", true),
    optionalSweetnessRules(rules),
    optionalLanguage(language),
  ] as const;

/**
 * The driest sweetness term that a sugar content permits.
 * @customfunction SWEETNESS.TERM
 * @param sugar_gL Sugar as analysed, g/L of glucose + fructose (0 to 1000).
 * @param [sugarAdded] Whether sugar was added after the second fermentation, TRUE or FALSE; blank = TRUE. 0 counts as blank. Give it outright: some programs make a blank cell FALSE.
 * @param [rules] Whose terms, "EU" or "OIV"; blank = "EU".
 * @param [language] Language of the term: en, fr, de, es, it or pt; blank = "en".
 * @returns the term
 * @equation the first band whose bounds hold
 * @source Delegated Regulation (EU) 2019/33 annex III part A; OIV Code I.4.4
 * @caution Local law decides; the tolerance of an analysis is no target.
 * @example SWEETNESS.TERM(12) = "extra dry"
 */
export function sweetnessTerm(
  sugar_gL: number,
  sugarAdded?: boolean,
  rules?: string,
  language?: string,
): string {
  return answer(() => sweetness.driestTerm(...asked(sugar_gL, sugarAdded, rules, language)));
}

/**
 * Every sweetness term that a sugar content permits, driest first, in a row. Only one may be used.
 * @customfunction SWEETNESS.TERMS
 * @param sugar_gL Sugar as analysed, g/L of glucose + fructose (0 to 1000).
 * @param [sugarAdded] Whether sugar was added after the second fermentation, TRUE or FALSE; blank = TRUE. 0 counts as blank. Give it outright: some programs make a blank cell FALSE.
 * @param [rules] Whose terms, "EU" or "OIV"; blank = "EU".
 * @param [language] Language of the terms: en, fr, de, es, it or pt; blank = "en".
 * @returns one cell a term
 * @equation every band whose bounds hold
 * @source Delegated Regulation (EU) 2019/33 annex III part A; OIV Code I.4.4
 * @example SWEETNESS.TERMS(5) = "extra brut", "brut"
 */
export function sweetnessTerms(
  sugar_gL: number,
  sugarAdded?: boolean,
  rules?: string,
  language?: string,
): string[][] {
  return answer(() => [sweetness.permittedTerms(...asked(sugar_gL, sugarAdded, rules, language))]);
}

/**
 * Whether a term fits a sugar content: "permitted", "within tolerance" or "not permitted".
 * @customfunction SWEETNESS.CHECK
 * @param term The term, in English, French, German, Italian, Spanish or Portuguese.
 * @param sugar_gL Sugar as analysed, g/L of glucose + fructose (0 to 1000).
 * @param [sugarAdded] Whether sugar was added after the second fermentation, TRUE or FALSE; blank = TRUE. 0 counts as blank. Give it outright: some programs make a blank cell FALSE.
 * @param [rules] Whose terms, "EU" or "OIV"; blank = "EU".
 * @returns the verdict in words
 * @equation the band's bounds, then the bounds widened by the tolerance
 * @source Delegated Regulation (EU) 2019/33 annex III part A, tolerance 3 g/L (secondary); OIV Code I.4.4
 * @refuses #VALUE! with the known terms where the term is not known
 * @example SWEETNESS.CHECK("brut", 12) = "within tolerance"
 */
export function sweetnessCheck(term: string, sugar_gL: number, sugarAdded?: boolean, rules?: string): string {
  return answer(() =>
    sweetness.sweetnessVerdict(
      sweetness.bandOfTerm(term, optionalSweetnessRules(rules), "term"),
      invertGL(given(domains.strengthGL, sugar_gL, "sugar_gL")),
      optionalTruth(sugarAdded, "sugarAdded", true),
    ),
  );
}

/**
 * How far a sugar content lies from the nearer bound of a term, g/L; zero at a bound, negative outside.
 * @customfunction SWEETNESS.MARGIN
 * @param term The term, in English, French, German, Italian, Spanish or Portuguese.
 * @param sugar_gL Sugar as analysed, g/L of glucose + fructose (0 to 1000).
 * @param [rules] Whose terms, "EU" or "OIV"; blank = "EU".
 * @returns g/L
 * @equation the smaller of sugar − low and high − sugar
 * @source Delegated Regulation (EU) 2019/33 annex III part A; OIV Code I.4.4
 * @refuses #VALUE! with the known terms where the term is not known
 * @example SWEETNESS.MARGIN("brut", 9) = 3
 */
export function sweetnessMargin(term: string, sugar_gL: number, rules?: string): number {
  return answer(() =>
    sweetness.sweetnessMarginGL(
      sweetness.bandOfTerm(term, optionalSweetnessRules(rules), "term"),
      invertGL(given(domains.strengthGL, sugar_gL, "sugar_gL")),
    ),
  );
}

/**
 * The bounds of a sweetness term in a row: lowest and highest sugar, g/L; an empty text where it is open.
 * @customfunction SWEETNESS.LIMITS
 * @param term The term, in English, French, German, Italian, Spanish or Portuguese.
 * @param [rules] Whose terms, "EU" or "OIV"; blank = "EU".
 * @returns two cells: lowest, highest, g/L
 * @equation table look-up
 * @source Delegated Regulation (EU) 2019/33 annex III part A; OIV Code I.4.4
 * @refuses #VALUE! with the known terms where the term is not known
 * @example SWEETNESS.LIMITS("extra dry") = 12, 17
 */
export function sweetnessLimits(term: string, rules?: string): any[][] {
  return answer(() => {
    const { low, high } = sweetness.bandOfTerm(term, optionalSweetnessRules(rules), "term");
    return [[low, high ?? ""]];
  });
}

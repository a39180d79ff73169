/**
 * SWEETNESS workings: which rows of the regulation hold.
 */
import { ruleSets } from "../cellar/cells";
import { domains } from "../cellar/domains";
import {
  LANGUAGES,
  sweetnessRules,
  type SweetnessBand,
  type SweetnessRuleSet,
} from "../cellar/rules/sweetness-bands";
import {
  bandOfTerm,
  permittedBands,
  permittedTerms,
  sweetnessMarginGL,
  sweetnessVerdict,
} from "../cellar/sweetness";
import { invertGL } from "../cellar/units";
import { explainer, type Conclusion, type Notebook } from "./notebook";
import { inProse } from "./numbers";
import { LAW_CARE, ofRow } from "./sources";

const sugarOf = (on: Notebook) =>
  invertGL(on.number("sugar_gL", domains.strengthGL, "[s] Sugar as analysed, glucose + fructose"));
const added = (on: Notebook) => on.truth("sugarAdded", "Sugar was added after the second fermentation", true);
const rulesOf = (on: Notebook) => on.word("rules", ruleSets.sweetness, "Whose terms", "EU");

function termGiven(on: Notebook, rules: SweetnessRuleSet): SweetnessBand {
  const band = bandOfTerm(on.raw("term"), rules, "term");
  on.said("term", "The term", String(on.raw("term")).trim());
  return band;
}

const englishOf = (band: SweetnessBand) => band.terms.en[0];

/** "12 to 17 g/L, both included", "less than 3 g/L, only where no sugar was added". */
export function boundsText({
  low,
  lowIncluded,
  high,
  highIncluded,
  onlyWithoutAddedSugar,
}: SweetnessBand): string {
  const condition = onlyWithoutAddedSugar ? ", only where no sugar was added" : "";
  if (high === null) return `${lowIncluded ? "at least" : "more than"} ${low} g/L${condition}`;
  if (low === 0) return `${highIncluded ? "at most" : "less than"} ${high} g/L${condition}`;
  const both =
    lowIncluded === highIncluded
      ? `both ${lowIncluded ? "" : "not "}included`
      : `${lowIncluded ? low : high} included`;
  return `${low} to ${high} g/L, ${both}${condition}`;
}

const sourcesOf = (rules: SweetnessRuleSet) => [ofRow(sweetnessRules[rules].source)];

/** Every row, driest first, and whether it holds; one result, or all. */
function permitted(on: Notebook, onlyFirst: boolean): Conclusion {
  const sugar = sugarOf(on);
  const sugarAdded = added(on);
  const rules = rulesOf(on);
  const language = on.word("language", LANGUAGES, "Language", "en");
  const terms = permittedTerms(sugar, sugarAdded, rules, language);
  const holding = permittedBands(sugar, sugarAdded, rules);
  for (const band of sweetnessRules[rules].bands) {
    const holds = holding.includes(band);
    on.say(
      `Row "${englishOf(band)}": ${boundsText(band)}; the wine has ${inProse(sugar)} g/L`,
      holds ? "holds" : "does not hold",
    );
    if (holds && onlyFirst) break;
  }
  on.say(
    onlyFirst
      ? "The first row that holds, in that language"
      : "All rows that hold, in that language; only one may be used",
    onlyFirst ? terms[0]! : terms.join(", "),
  );
  return {
    result: onlyFirst ? terms[0]! : [terms],
    unit: onlyFirst ? "" : "one cell a term",
    sources: sourcesOf(rules),
    cautions: [LAW_CARE],
  };
}

function rowUsed(on: Notebook, band: SweetnessBand): void {
  on.say(`Row used: "${englishOf(band)}"`, boundsText(band));
}

export const sweetness = {
  "SWEETNESS.TERM": explainer("sugar_gL sugarAdded rules language", (on) => permitted(on, true)),
  "SWEETNESS.TERMS": explainer("sugar_gL sugarAdded rules language", (on) => permitted(on, false)),

  "SWEETNESS.CHECK": explainer("term sugar_gL sugarAdded rules", (on) => {
    const rules = rulesOf(on);
    const band = termGiven(on, rules);
    const sugar = sugarOf(on);
    const sugarAdded = added(on);
    const result = sweetnessVerdict(band, sugar, sugarAdded);
    rowUsed(on, band);
    if (band.onlyWithoutAddedSugar)
      on.say(
        "The term asks for no sugar added after the second fermentation, and no tolerance lifts that",
        sugarAdded ? "not met" : "met",
      );
    on.say(
      "Tolerance of an analysis, below the low and above the high bound",
      `${band.toleranceBelow} and ${band.toleranceAbove} g/L`,
    );
    on.say(`The wine has ${inProse(sugar)} g/L`, result);
    return { result, unit: "", sources: sourcesOf(rules), cautions: [LAW_CARE] };
  }),

  "SWEETNESS.MARGIN": explainer("term sugar_gL rules", (on) => {
    const rules = rulesOf(on);
    const band = termGiven(on, rules);
    const result = sweetnessMarginGL(band, sugarOf(on));
    rowUsed(on, band);
    const { low, high } = band;
    if (low !== 0) on.found("[l] Low bound", low, "g/L");
    if (high !== null) on.found("[g] High bound", high, "g/L");
    if (high === null) on.step("It is open above, so the low bound is the edge", "m = s − l", result, "g/L");
    else if (low === 0)
      on.step("Sugar cannot fall past 0, so the high bound is the edge", "m = g − s", result, "g/L");
    else on.step("To the nearer bound, negative outside", "m = min(s − l; g − s)", result, "g/L");
    return { result, unit: "g/L", sources: sourcesOf(rules), cautions: [LAW_CARE] };
  }),

  "SWEETNESS.LIMITS": explainer("term rules", (on) => {
    const rules = rulesOf(on);
    const band = termGiven(on, rules);
    rowUsed(on, band);
    return {
      result: [[band.low, band.high ?? ""]],
      unit: "lowest and highest, g/L",
      sources: sourcesOf(rules),
      cautions: [LAW_CARE],
    };
  }),
};

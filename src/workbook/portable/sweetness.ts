/**
 * Which sweetness terms a sugar content permits. Bounds and words are cells of the Notes sheet.
 */
import { ruleSetsOf } from "../../cellar/rules/source";
import {
  LANGUAGES,
  sweetnessRules,
  type SweetnessBand,
  type SweetnessRuleSet,
} from "../../cellar/rules/sweetness-bands";
import {
  builtin,
  choose,
  equals,
  iff,
  minus,
  noAnswer,
  operation,
  plus,
  times,
  type Expression,
} from "../formula";
import { boundName, wordName, wordsOf } from "../notes/names";
import type { Form, Steps } from "./form";

const ruleSets = ruleSetsOf(sweetnessRules);
const bandsOf = (ruleSet: SweetnessRuleSet) => sweetnessRules[ruleSet].bands;
const MOST_BANDS = Math.max(...ruleSets.map((ruleSet) => bandsOf(ruleSet).length));
const ordinals = Array.from({ length: MOST_BANDS }, (_, index) => index + 1);

/** One expression for each rule set, where it has so many bands. */
const byRules = (
  rules: Expression,
  ordinal: number,
  of: (band: SweetnessBand, ruleSet: SweetnessRuleSet) => Expression,
  otherwise: Expression,
) =>
  choose(
    rules,
    ruleSets.map((ruleSet) => {
      const band = bandsOf(ruleSet)[ordinal - 1];
      return [ruleSet, band ? of(band, ruleSet) : otherwise] as const;
    }),
  );

function bounds(band: SweetnessBand, ruleSet: SweetnessRuleSet, ordinal: number, { notes }: Steps) {
  return {
    low: notes(boundName(ruleSet, ordinal, "low")),
    high: band.high === null ? undefined : notes(boundName(ruleSet, ordinal, "high")),
  };
}

function holds(
  band: SweetnessBand,
  ruleSet: SweetnessRuleSet,
  ordinal: number,
  sugar: Expression,
  steps: Steps,
): Expression {
  const { low, high } = bounds(band, ruleSet, ordinal, steps);
  const isAbove = operation(sugar, band.lowIncluded ? ">=" : ">", low);
  return high ? builtin("AND", isAbove, operation(sugar, band.highIncluded ? "<=" : "<", high)) : isAbove;
}

const nameOf = (ordinal: number) => `sweetness term ${ordinal}, driest first`;

/** The words permitted, driest first; no answer beyond the last. */
const terms: Form = ([sugar, added, rules, language], steps) => {
  const { step, notes } = steps;
  const permitted = ordinals.map((ordinal) =>
    step(
      `Permitted: ${nameOf(ordinal)}`,
      "1 or 0",
      iff(
        byRules(
          rules!,
          ordinal,
          (band, ruleSet) => {
            const inside = holds(band, ruleSet, ordinal, sugar!, steps);
            return band.onlyWithoutAddedSugar ? builtin("AND", builtin("NOT", added!), inside) : inside;
          },
          builtin("FALSE"),
        ),
        1,
        0,
      ),
    ),
  );
  const ranks = permitted.map((each, index) =>
    step(
      `Place among those permitted: ${nameOf(index + 1)}`,
      "",
      times(each, plus(permitted[0]!, ...permitted.slice(1, index + 1))),
    ),
  );
  const words = ordinals.map((ordinal) =>
    step(
      `Word for ${nameOf(ordinal)}`,
      "",
      byRules(
        rules!,
        ordinal,
        (_, ruleSet) =>
          choose(
            language!,
            LANGUAGES.map((each) => [each, notes(wordName(ruleSet, ordinal, each))] as const),
          ),
        { kind: "literal", value: "" },
      ),
    ),
  );
  return ordinals.map((place) =>
    ranks.reduceRight<Expression>(
      (otherwise, rank, index) => iff(equals(rank, place), words[index]!, otherwise),
      noAnswer,
    ),
  );
};

/** Which band a word stands for, in any language; no answer for a word that is none. */
function bandOf(term: Expression, rules: Expression, { step, notesRange }: Steps): Expression {
  return step(
    "Place of the sweetness term wanted, driest first",
    "",
    choose(
      rules,
      ruleSets.map((ruleSet) => [
        ruleSet,
        bandsOf(ruleSet).reduceRight<Expression>((otherwise, _, index) => {
          const { first, last } = wordsOf(ruleSet, index + 1);
          return iff(
            operation(builtin("COUNTIF", notesRange(first, last), term), ">", 0),
            index + 1,
            otherwise,
          );
        }, noAnswer),
      ]),
    ),
  );
}

/** One value for the band of the term wanted. */
function ofBand(
  term: Expression,
  rules: Expression,
  steps: Steps,
  label: string,
  unit: string,
  of: (band: SweetnessBand, ruleSet: SweetnessRuleSet, ordinal: number) => Expression,
): Expression {
  const place = bandOf(term, rules, steps);
  const each = ordinals.map((ordinal) =>
    steps.step(
      `${label}: ${nameOf(ordinal)}`,
      unit,
      byRules(rules, ordinal, (band, ruleSet) => of(band, ruleSet, ordinal), { kind: "literal", value: "" }),
    ),
  );
  return builtin("CHOOSE", place, ...each);
}

const check: Form = ([term, sugar, added, rules], steps) =>
  ofBand(term!, rules!, steps, "Verdict", "", (band, ruleSet, ordinal) => {
    const { low, high } = bounds(band, ruleSet, ordinal, steps);
    const nearLow = operation(
      sugar!,
      band.toleranceBelow > 0 || band.lowIncluded ? ">=" : ">",
      minus(low, band.toleranceBelow),
    );
    const nearHigh = high
      ? [
          operation(
            sugar!,
            band.toleranceAbove > 0 || band.highIncluded ? "<=" : "<",
            plus(high, band.toleranceAbove),
          ),
        ]
      : [];
    const verdict = iff(
      holds(band, ruleSet, ordinal, sugar!, steps),
      "permitted",
      iff(builtin("AND", nearLow, ...nearHigh), "within tolerance", "not permitted"),
    );
    return band.onlyWithoutAddedSugar ? iff(added!, "not permitted", verdict) : verdict;
  });

const margin: Form = ([term, sugar, rules], steps) =>
  ofBand(term!, rules!, steps, "Margin", "g/L", (band, ruleSet, ordinal) => {
    const { low, high } = bounds(band, ruleSet, ordinal, steps);
    const edges = [...(band.low === 0 ? [] : [minus(sugar!, low)]), ...(high ? [minus(high, sugar!)] : [])];
    return edges.length === 1 ? edges[0]! : builtin("MIN", ...edges);
  });

export const sweetnessForms: Readonly<Record<string, Form>> = {
  "SWEETNESS.TERM": (args, steps) => (terms(args, steps) as readonly Expression[])[0]!,
  "SWEETNESS.TERMS": terms,
  "SWEETNESS.CHECK": check,
  "SWEETNESS.MARGIN": margin,
};

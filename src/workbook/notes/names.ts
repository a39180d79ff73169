/**
 * How the cells of the notes are called that formulas read.
 */
import {
  LANGUAGES,
  sweetnessRules,
  type Language,
  type SweetnessRuleSet,
} from "../../cellar/rules/sweetness-bands";

/** In which language the sheets of the workbook are. */
export const NOTES_LANGUAGE = "notes_language";

/** Counted from 1, as listed. */
export const designationName = (ordinal: number) => `notes_designation_${ordinal}`;
export const monthsName = (ordinal: number, kind: "lees" | "total") => `notes_months_${kind}_${ordinal}`;
export const gaugeName = (celsius: number) => `notes_gauge_${celsius}`;

/** Bands counted from 1, driest first. */
export const boundName = (ruleSet: SweetnessRuleSet, ordinal: number, which: "low" | "high") =>
  `notes_band_${ruleSet}_${ordinal}_${which}`;
/** The usual word of a language. */
export const wordName = (ruleSet: SweetnessRuleSet, ordinal: number, language: Language) =>
  `notes_word_${ruleSet}_${ordinal}_${language}`;
/** Another word that means the same, counted from 1. */
export const alsoName = (ruleSet: SweetnessRuleSet, ordinal: number, index: number) =>
  `notes_word_${ruleSet}_${ordinal}_also${index}`;

/** Words of a band beyond the usual one of each language. */
export const alsoWords = (ruleSet: SweetnessRuleSet, ordinal: number): string[] => {
  const { terms } = sweetnessRules[ruleSet].bands[ordinal - 1]!;
  const usual = new Set(LANGUAGES.map((language) => terms[language][0]));
  return [...new Set(LANGUAGES.flatMap((language) => terms[language].slice(1)))].filter(
    (word) => !usual.has(word),
  );
};

/** All words of a band stand one below the other. */
export function wordsOf(
  ruleSet: SweetnessRuleSet,
  ordinal: number,
): { readonly first: string; readonly last: string } {
  const also = alsoWords(ruleSet, ordinal).length;
  return {
    first: wordName(ruleSet, ordinal, LANGUAGES[0]),
    last:
      also > 0
        ? alsoName(ruleSet, ordinal, also)
        : wordName(ruleSet, ordinal, LANGUAGES[LANGUAGES.length - 1]!),
  };
}

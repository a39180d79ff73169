/**
 * Sweetness terms by rule set: bounds in g/L of glucose + fructose (sucrose counted as such), the words in each
 * language, and the tolerance of an analysis. Driest first; one sugar value can have several permitted terms.
 */
import { source, type ByRules, type Source } from "./source";

export const LANGUAGES = ["en", "fr", "de", "es", "it", "pt"] as const;
export type Language = (typeof LANGUAGES)[number];

export interface SweetnessBand {
  /** Lowest sugar, g/L, and whether that value itself belongs. */
  readonly low: number;
  readonly lowIncluded: boolean;
  /** Highest sugar, g/L; null where open. */
  readonly high: number | null;
  readonly highIncluded: boolean;
  /** Permitted only where no sugar was added after the second fermentation. */
  readonly onlyWithoutAddedSugar: boolean;
  /** How far an analysis may lie below the low and above the high bound, g/L. */
  readonly toleranceBelow: number;
  readonly toleranceAbove: number;
  /** The words that may stand on the label, the usual one first. */
  readonly terms: Readonly<Record<Language, readonly [string, ...string[]]>>;
}

export interface SweetnessRules {
  /** Of the bounds. */
  readonly source: Source;
  /** Of the words in each language. */
  readonly words: Source;
  readonly bands: readonly SweetnessBand[];
}

type Terms = SweetnessBand["terms"];

/** Words as listed in the EU annex (memory: Regulation (EC) 607/2009 annex XIV part A, carried into 2019/33). */
const words = {
  brutNature: {
    en: ["brut nature"],
    fr: ["brut nature", "pas dosé", "dosage zéro"],
    de: ["brut nature", "naturherb"],
    es: ["brut nature", "bruto natural"],
    it: ["dosaggio zero", "pas dosé", "brut nature"],
    pt: ["bruto natural", "brut nature"],
  },
  extraBrut: {
    en: ["extra brut"],
    fr: ["extra brut"],
    de: ["extra brut", "extra herb"],
    es: ["extra brut"],
    it: ["extra brut"],
    pt: ["extra bruto", "extra brut"],
  },
  brut: {
    en: ["brut"],
    fr: ["brut"],
    de: ["brut", "herb"],
    es: ["brut"],
    it: ["brut"],
    pt: ["bruto", "brut"],
  },
  extraDry: {
    en: ["extra dry"],
    fr: ["extra dry", "extra sec"],
    de: ["extra trocken"],
    es: ["extra seco"],
    it: ["extra dry"],
    pt: ["extra seco"],
  },
  sec: { en: ["dry"], fr: ["sec"], de: ["trocken"], es: ["seco"], it: ["secco", "asciutto"], pt: ["seco"] },
  demiSec: {
    en: ["medium dry"],
    fr: ["demi-sec"],
    de: ["halbtrocken"],
    es: ["semi seco"],
    it: ["abboccato"],
    pt: ["meio seco"],
  },
  doux: { en: ["sweet"], fr: ["doux"], de: ["mild"], es: ["dulce"], it: ["dolce"], pt: ["doce"] },
} as const satisfies Record<string, Terms>;

const WORDS = source("Reg. (EC) 607/2009 annex XIV part A, carried into 2019/33", "memory");

const BOTH_WAYS = { toleranceBelow: 3, toleranceAbove: 3 };
const UPWARD = { toleranceBelow: 0, toleranceAbove: 3 };
const NONE = { toleranceBelow: 0, toleranceAbove: 0 };

/** Which of the two bounds belong to the band. */
const BOTH = { lowIncluded: true, highIncluded: true };
const LOW = { lowIncluded: true, highIncluded: false };
const NEITHER = { lowIncluded: false, highIncluded: false };

type Ends = Pick<SweetnessBand, "lowIncluded" | "highIncluded">;
type Tolerance = Pick<SweetnessBand, "toleranceBelow" | "toleranceAbove">;

/** Every band has the same properties in the same order, which is what makes looking through them quick. */
const band = (
  low: number,
  high: number | null,
  { lowIncluded, highIncluded }: Ends,
  { toleranceBelow, toleranceAbove }: Tolerance,
  terms: Terms,
  onlyWithoutAddedSugar = false,
): SweetnessBand => ({
  low,
  lowIncluded,
  high,
  highIncluded,
  onlyWithoutAddedSugar,
  toleranceBelow,
  toleranceAbove,
  terms,
});

/** Bounds read in the predecessor of the regulation and in its German text; the tolerance of 3 g/L is secondary. */
const EU: SweetnessRules = {
  source: source("Delegated Reg. (EU) 2019/33 annex III part A", "read"),
  words: WORDS,
  bands: [
    band(0, 3, LOW, BOTH_WAYS, words.brutNature, true),
    band(0, 6, BOTH, BOTH_WAYS, words.extraBrut),
    band(0, 12, LOW, BOTH_WAYS, words.brut),
    band(12, 17, BOTH, BOTH_WAYS, words.extraDry),
    band(17, 32, BOTH, BOTH_WAYS, words.sec),
    band(32, 50, BOTH, BOTH_WAYS, words.demiSec),
    band(50, null, NEITHER, BOTH_WAYS, words.doux),
  ],
};

/** The OIV's own English word where it differs from the EU's. */
const oiv = (terms: Terms, english: string): Terms => ({ ...terms, en: [english] });

const OIV: SweetnessRules = {
  source: source("OIV Code of Oenological Practices I.4.4", "read"),
  words: WORDS,
  bands: [
    band(0, 12, BOTH, UPWARD, words.brut),
    band(12, 17, BOTH, UPWARD, oiv(words.extraDry, "extra-dry")),
    band(17, 32, BOTH, UPWARD, words.sec),
    band(32, 50, BOTH, NONE, oiv(words.demiSec, "demi-sec")),
    band(50, null, NEITHER, NONE, words.doux),
  ],
};

/** The rule sets that have sweetness terms, and so those that a batch can be planned by. */
export type SweetnessRuleSet = "EU" | "OIV";

export const sweetnessRules: ByRules<SweetnessRules, SweetnessRuleSet> = { EU, OIV };

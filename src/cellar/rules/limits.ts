/**
 * Limits of law and of practice that a batch is checked against. A rule set without a row has nothing to say.
 */
import { commonPractice, source, type RuleSet, type Source } from "./source";

export interface Limit {
  readonly value: number;
  readonly unit: string;
  readonly source: Source;
}

const limit = (value: number, unit: string, from: Source): Limit => ({ value, unit, source: from });

const EU_PRACTICES = "Delegated Reg. (EU) 2019/934 annex II";

export interface LegalLimits {
  /** Rise of total alcohol at tirage, measured as a difference, so dilution counts. */
  readonly tirageRiseVol?: Limit;
  /** Rise of actual alcohol at dosage. */
  readonly dosageRiseVol?: Limit;
  /** Total SO2 of a quality sparkling wine. */
  readonly totalSo2MgL?: Limit;
  /** How far the labelled alcohol may lie from the analysis. */
  readonly labelToleranceVol?: Limit;
  /** The only nominal volumes allowed within a span of sizes. */
  readonly bottleSizes?: {
    readonly spanMl: readonly [number, number];
    readonly allowedMl: readonly number[];
    readonly source: Source;
  };
}

export const legalLimits: Readonly<Record<RuleSet, LegalLimits>> = {
  EU: {
    tirageRiseVol: limit(1.5, "% vol", source(EU_PRACTICES, "read")),
    dosageRiseVol: limit(0.5, "% vol", source(EU_PRACTICES, "secondary")),
    totalSo2MgL: limit(185, "mg/L", source(`${EU_PRACTICES}; 235 if not a quality wine`, "secondary")),
    labelToleranceVol: limit(
      0.8,
      "% vol",
      source("Delegated Reg. (EU) 2019/33 art. 44, its predecessor", "read"),
    ),
    bottleSizes: {
      spanMl: [125, 1500],
      allowedMl: [125, 200, 375, 750, 1500],
      source: source("Directive 2007/45/EC annex", "read"),
    },
  },
  OIV: {},
};

/** Limits of practice: worth a second look, not a breach. */
export const practiceLimits = {
  drySugarGL: limit(2, "g/L", commonPractice),
  baseAlcoholLowVol: limit(9.5, "% vol", source("published practice", "read")),
  baseAlcoholHighVol: limit(11.5, "% vol", source("published practice", "read")),
  alcoholAfterVol: limit(13, "% vol", commonPractice),
  sweetnessMarginGL: limit(1, "g/L", commonPractice),
} as const;

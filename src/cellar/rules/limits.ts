/**
 * Limits of law and of practice that a batch is checked against. A rule set without a row has nothing to say.
 */
import { commonPractice, source, type ByRules, type Source } from "./source";

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
  /** Finishing dosage as a share of the finished volume. */
  readonly dosageShare?: Limit;
  /** Alcohol of the base wine and of the finished wine. */
  readonly alcoholVol?: Limit;
  /** Steps in which the alcohol stands on the label. */
  readonly labelStepVol?: Limit;
  /** How far the labelled alcohol may lie from the analysis. */
  readonly labelToleranceVol?: Limit;
  /** The only nominal volumes allowed within a span of sizes. */
  readonly bottleSizes?: {
    readonly spanMl: readonly [number, number];
    readonly allowedMl: readonly number[];
    readonly source: Source;
  };
}

export type LimitRuleSet = "EU" | "OIV" | "US";

export const legalLimits: ByRules<LegalLimits, LimitRuleSet> = {
  EU: {
    tirageRiseVol: limit(1.5, "% vol", source(EU_PRACTICES, "read")),
    dosageRiseVol: limit(0.5, "% vol", source(EU_PRACTICES, "secondary")),
    totalSo2MgL: limit(185, "mg/L", source(`${EU_PRACTICES}; 235 if not a quality wine`, "secondary")),
    labelToleranceVol: limit(
      0.8,
      "% vol",
      source("Delegated Reg. (EU) 2019/33 art. 44, its predecessor", "read"),
    ),
    labelStepVol: limit(0.5, "% vol", source("Delegated Reg. (EU) 2019/33 art. 44, its predecessor", "read")),
    bottleSizes: {
      spanMl: [125, 1500],
      allowedMl: [125, 200, 375, 750, 1500],
      source: source("Directive 2007/45/EC annex", "read"),
    },
  },
  OIV: {},
  US: {
    labelToleranceVol: limit(1.5, "% vol", source("27 CFR, wine up to 14 % vol", "secondary")),
    dosageShare: limit(0.1, "of the volume", source("27 CFR 24.192, without formula approval", "read")),
    alcoholVol: limit(14, "% vol", source("27 CFR, effervescent wine and its base", "read")),
  },
};

/** Limits of practice: worth a second look, not a breach. */
export const practiceLimits = {
  drySugarGL: limit(2, "g/L", commonPractice),
  baseAlcoholLowVol: limit(9.5, "% vol", source("published practice", "read")),
  baseAlcoholHighVol: limit(11.5, "% vol", source("published practice", "read")),
  alcoholAfterVol: limit(13, "% vol", commonPractice),
  /** Where the solubility at other temperatures than 20 °C has been compared with a published table, and where it ends. */
  modelLowC: limit(0, "°C", source("published solubility table, 0 to 25 °C", "memory")),
  modelHighC: limit(30, "°C", source("published solubility table, 0 to 25 °C", "memory")),
  modelEndC: limit(40, "°C", source("published solubility table, 0 to 25 °C", "memory")),
  /** What is filled at tirage, of the bottle size: beyond is worth a look, far beyond is another bottle. */
  filledLowPct: limit(95, "%", commonPractice),
  filledHighPct: limit(103, "%", commonPractice),
  filledFarPct: limit(20, "%", commonPractice),
  neckBathC: limit(-20, "°C", source("producers' baths run at −20 to −27 °C", "read")),
  sweetnessMarginGL: limit(1, "g/L", commonPractice),
} as const;

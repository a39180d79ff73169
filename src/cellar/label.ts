/**
 * What the label says: alcohol to the half unit, energy.
 */
import { ETHANOL_KG_PER_L } from "./constants";
import { unanswerable } from "./refusal";
import { legalLimits } from "./rules/limits";
import { wholeUp } from "./whole";

/** Alcohol for the label, nearest whole or half unit. */
export function labelAlcoholVol(alcoholVol: number): number {
  return Math.round(alcoholVol * 2) / 2;
}

export type LabelRuleSet = "EU" | "US";

/** The tolerance of each set of rules, and where it ends, % vol. */
const TOLERANCES: Readonly<Record<LabelRuleSet, { toleranceVol: number; highestVol: number }>> = {
  EU: { toleranceVol: legalLimits.EU.labelToleranceVol!.value, highestVol: Infinity },
  US: { toleranceVol: legalLimits.US.labelToleranceVol!.value, highestVol: 14 },
};

export function labelAlcoholVerdict(
  labelVol: number,
  measuredVol: number,
  rules: LabelRuleSet,
): "within tolerance" | "outside tolerance" {
  const { toleranceVol, highestVol } = TOLERANCES[rules];
  if (measuredVol > highestVol) {
    throw unanswerable(
      "measured_vol",
      measuredVol,
      `the ${rules} tolerance known here holds up to ${highestVol} % vol; give no more`,
    );
  }
  // 12 and 11.2 differ by 0.8 to a person, and by a little more to a float
  return Math.abs(labelVol - measuredVol) <= toleranceVol + 1e-9 ? "within tolerance" : "outside tolerance";
}

/** The error of sizes up to one, in mL or as a percentage of the volume. */
export interface FillError {
  readonly uptoMl: number;
  readonly ml?: number;
  readonly pct?: number;
}

/**
 * Negative error that one bottle of a batch may have, mL (memory: Directive 76/211/EEC annex I, 2.4; the same
 * table read: FPackV § 9). It ends at 10 L; above, OIML R 87 (memory). Percentages are rounded up to a tenth of a mL.
 */
const FILL_ERRORS: readonly FillError[] = [
  { uptoMl: 50, pct: 9 },
  { uptoMl: 100, ml: 4.5 },
  { uptoMl: 200, pct: 4.5 },
  { uptoMl: 300, ml: 9 },
  { uptoMl: 500, pct: 3 },
  { uptoMl: 1000, ml: 15 },
  { uptoMl: 10_000, pct: 1.5 },
  { uptoMl: 15_000, ml: 150 },
  { uptoMl: Infinity, pct: 1 },
];

/** The row of the directive's table for this size. */
export const fillErrorRow = (bottleMl: number): FillError =>
  FILL_ERRORS.find(({ uptoMl }) => bottleMl <= uptoMl)!;

export function fillErrorMl(bottleMl: number): number {
  const { ml, pct } = fillErrorRow(bottleMl);
  return ml ?? wholeUp((bottleMl * pct!) / 10) / 10;
}

/** Energy of 1 g (read: Regulation (EU) 1169/2011 annex XIV). kJ and kcal are separate tables, not a conversion. */
export const ENERGY_PER_G = {
  kJ: { alcohol: 29, carbohydrate: 17, organicAcid: 13, polyol: 10 },
  kcal: { alcohol: 7, carbohydrate: 4, organicAcid: 3, polyol: 2.4 },
} as const;

/** Energy of 100 mL, unrounded; sugar, acids and glycerol in g/L. */
export function energyPer100Ml(
  alcoholVol: number,
  sugarGL: number,
  acidGL: number,
  glycerolGL: number,
  unit: keyof typeof ENERGY_PER_G,
): number {
  const per = ENERGY_PER_G[unit];
  return (
    alcoholVol * ETHANOL_KG_PER_L * per.alcohol +
    (sugarGL * per.carbohydrate + acidGL * per.organicAcid + glycerolGL * per.polyol) / 10
  );
}

/**
 * Pressure classes by rule set: excess pressure at 20 °C, bar. Strongest class first; the first that holds is
 * the class. Between or below them belongs nowhere.
 */
import { source, type RuleSet, type Source } from "./source";

export interface PressureClass {
  readonly name: string;
  readonly lowBar: number;
  /** null where open. */
  readonly highBar: number | null;
  /** In bottles below this size the low bound is smaller. */
  readonly smallBottle?: { readonly belowMl: number; readonly lowBar: number };
  readonly source: Source;
}

const EU_CLASSES = source("Reg. (EU) 1308/2013 annex VII part II", "memory");
const SMALL = { belowMl: 250, lowBar: 3 };

export const QUALITY_SPARKLING = "quality sparkling wine";

export const pressureClasses: Readonly<Record<RuleSet, readonly PressureClass[]>> = {
  EU: [
    { name: QUALITY_SPARKLING, lowBar: 3.5, highBar: null, smallBottle: SMALL, source: EU_CLASSES },
    { name: "sparkling wine", lowBar: 3, highBar: null, source: EU_CLASSES },
    { name: "semi-sparkling wine", lowBar: 1, highBar: 2.5, source: EU_CLASSES },
  ],
  OIV: [
    {
      name: "sparkling wine",
      lowBar: 3.5,
      highBar: null,
      smallBottle: SMALL,
      source: source("OIV Code of Oenological Practices I.4.4", "read"),
    },
  ],
};

export const BETWEEN_CLASSES = "between classes";

/** Lowest excess pressure at 20 °C for a class in a bottle of this size. */
export function classLowBar({ lowBar, smallBottle }: PressureClass, bottleMl: number): number {
  return smallBottle && bottleMl < smallBottle.belowMl ? smallBottle.lowBar : lowBar;
}

export function pressureClass(pressureAt20Bar: number, bottleMl: number, rules: RuleSet): string {
  const found = pressureClasses[rules].find(
    (each) =>
      pressureAt20Bar >= classLowBar(each, bottleMl) &&
      (each.highBar === null || pressureAt20Bar <= each.highBar),
  );
  return found?.name ?? BETWEEN_CLASSES;
}

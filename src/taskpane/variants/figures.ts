/**
 * A setting's figures beside those of the form.
 */
import { CHECK_KEYS, type CheckKey, type Verdict } from "../../cellar/batch/checks";
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import { changeOf, outcomeOf, type OutcomeKey } from "../../cellar/batch/what-if";
import { findings, type Finding } from "../findings";
import { shownResult } from "../typed-numbers";
import type { Units } from "../units";

export interface Line {
  readonly label: string;
  /** The same without the circumstances, and those: variants of different forms may stand side by side. */
  readonly what: string;
  readonly circumstance: string;
  readonly own: string;
  readonly now: string;
  readonly change: string;
}

interface Kind {
  readonly key: OutcomeKey;
  readonly what: (pressureUnit: string) => string;
  readonly under?: {
    readonly circumstance: (inputs: BatchInputs, units: Units) => string;
    readonly label: (pressureUnit: string, circumstance: string) => string;
  };
  readonly decimals: number;
  readonly isPressure?: boolean;
}

const cellar = ({ tirage }: BatchInputs, units: Units) => units.degrees(tirage.cellar_C);
const hottest = ({ tirage }: BatchInputs, units: Units) => units.degrees(tirage.hottest_C);
const currency = ({ batch }: BatchInputs) => batch.currency;

const KINDS: readonly Kind[] = [
  { key: "bottles", what: () => "Bottles", decimals: 0 },
  { key: "sugarKg", what: () => "Sugar to weigh, kg", decimals: 2 },
  {
    key: "cellarBar",
    what: (bar) => `Excess pressure in the cellar, ${bar}`,
    under: { circumstance: cellar, label: (bar, at) => `Excess pressure in the cellar at ${at}, ${bar}` },
    decimals: 2,
    isPressure: true,
  },
  { key: "cellarHighBar", what: (bar) => `… its high end, ${bar}`, decimals: 2, isPressure: true },
  {
    key: "hottestBar",
    what: (bar) => `Excess pressure on the hottest day, ${bar}`,
    under: {
      circumstance: hottest,
      label: (bar, at) => `Excess pressure on the hottest day, ${at}, ${bar}`,
    },
    decimals: 2,
    isPressure: true,
  },
  { key: "hottestHighBar", what: (bar) => `… its high end, ${bar}`, decimals: 2, isPressure: true },
  { key: "dosageMl", what: () => "Dosage a bottle, mL", decimals: 2 },
  {
    key: "perBottle",
    what: () => "Cost of a saleable bottle",
    under: { circumstance: currency, label: (_, money) => `Cost of a saleable bottle, ${money}` },
    decimals: 2,
  },
  {
    key: "total",
    what: () => "Total cost",
    under: { circumstance: currency, label: (_, money) => `Total cost, ${money}` },
    decimals: 0,
  },
];

const driest = ({ dosage }: BatchPlan) => dosage.terms[0]!;
const words = (label: string, own: string, now: string): Line => ({
  label,
  what: label,
  circumstance: "",
  own,
  now,
  change: own === now ? SAME : CHANGED,
});
const SAME = "same";
const CHANGED = "changed";

/** The form's figures, those of the setting, and the difference; `inputs` are the form's. */
export function linesOf(inputs: BatchInputs, own: BatchPlan, now: BatchPlan, units: Units): Line[] {
  const numbers = KINDS.map(({ key, what, under, decimals, isPressure }) => {
    const shown = (kept: number) =>
      isPressure ? units.parts("pressure", kept, decimals).value : shownResult(kept, decimals);
    const bar = units.of("pressure").name;
    const circumstance = under?.circumstance(inputs, units) ?? "";
    const before = shown(outcomeOf(own)[key]);
    const after = shown(outcomeOf(now)[key]);
    return {
      label: under?.label(bar, circumstance) ?? what(bar),
      what: what(bar),
      circumstance,
      own: before,
      now: after,
      change: before === after ? SAME : signed(changeOf(own, now, key), shown),
    };
  });
  const money = numbers.length - 2;
  return [
    ...numbers.slice(0, money),
    words("Driest term permitted", driest(own), driest(now)),
    ...numbers.slice(money),
    words("Worst check", own.worst, now.worst),
  ];
}

const signed = (change: number, shown: (value: number) => string) =>
  `${change < 0 ? "−" : "+"}${shown(Math.abs(change))}`;

const RANK: Readonly<Record<Verdict, number>> = { fine: 0, "look again": 1, stop: 2 };

/** Checks that are worse than in the form, and those that are better, each as it is now. */
export function checksMoved(
  own: BatchPlan,
  now: BatchPlan,
  units: Units,
): { worse: Finding[]; better: Finding[] } {
  const moved = (way: 1 | -1): CheckKey[] =>
    CHECK_KEYS.filter((key) => (RANK[now.checks[key].verdict] - RANK[own.checks[key].verdict]) * way > 0);
  // what is fine now has nothing to report, so it is named as it stood in the form
  return { worse: findings(now, units, moved(1)), better: findings(own, units, moved(-1)) };
}

/** What a listener is told once the slider rests. */
export function spokenOf(now: BatchPlan, units: Units): string {
  const { bottles, sugarKg, hottestHighBar } = outcomeOf(now);
  const highest = units.text("pressure", hottestHighBar, 2);
  return `${shownResult(bottles, 0)} bottles, ${shownResult(sugarKg, 2)} kg of sugar, up to ${highest} on the hottest day, ${driest(now)}; worst check: ${now.worst}.`;
}

/**
 * Other sizes of the same batch, other doses and pressures, and other sweetness.
 */
import { GLASS_ML, dosageMl } from "../dosage";
import { sweetnessRules } from "../rules/sweetness-bands";
import { UnplannableBatch } from "./attempt";
import type { BatchInputs } from "./fields";
import { planBatch, type BatchPlan } from "./plan";
import { planDosage, type DosagePlan } from "./plan-dosage";
import type { TiragePlan } from "./plan-tirage";
import type { Problem } from "./problem";

/** Sizes to look at, % of the plan, and how far the hours grow with them. */
export const USUAL_SIZES_PCT = [50, 60, 75, 90, 100, 110, 125, 140, 150] as const;
export const USUAL_LABOUR_PCT = 100;

/** Without the tail of a float, which somebody would have to read. */
const tailless = (value: number) => Number(value.toPrecision(12));

/**
 * The batch at another size. What is typed as an amount of the whole batch grows with it: wine, hours as far as they
 * are said to grow, other materials. Prices, rates, stock and the bottles held back stay.
 */
export function atSize(inputs: BatchInputs, sizePct: number, labourPct: number): BatchInputs {
  const size = sizePct / 100;
  const grown = 1 + (labourPct / 100) * (size - 1);
  const { baseWine, costs, materials } = inputs;
  return {
    ...inputs,
    baseWine: { ...baseWine, volume_hL: baseWine.volume_hL * size },
    costs: {
      ...costs,
      tirage_hours: tailless(costs.tirage_hours * grown),
      riddling_hours: costs.riddling_hours === null ? null : tailless(costs.riddling_hours * grown),
      disgorging_hours: tailless(costs.disgorging_hours * grown),
      finishing_hours: tailless(costs.finishing_hours * grown),
    },
    materials: {
      ...materials,
      other1: { ...materials.other1, need: materials.other1.need * size },
      other2: { ...materials.other2, need: materials.other2.need * size },
    },
  };
}

/** The batch dosed to another sweetness, g/L glucose + fructose. */
export const atSweetness = (inputs: BatchInputs, targetGL: number): BatchInputs => ({
  ...inputs,
  dosage: { ...inputs.dosage, target_gL: targetGL },
});

/** What may be set otherwise; what is left out stays as in the inputs. */
export interface Settings {
  readonly volume_hL?: number;
  /** How far the hours grow with the volume, %. */
  readonly labour_pct?: number;
  readonly pressure_bar?: number;
  readonly dose_gL?: number;
  readonly target_gL?: number;
}

export function atSettings(inputs: BatchInputs, settings: Settings): BatchInputs {
  const { volume_hL, labour_pct = USUAL_LABOUR_PCT, pressure_bar, dose_gL, target_gL } = settings;
  const { tirage, dosage } = inputs;
  const changed = {
    ...inputs,
    tirage: {
      ...tirage,
      pressure_bar: pressure_bar ?? tirage.pressure_bar,
      dose_gL: dose_gL ?? tirage.dose_gL,
    },
    dosage: { ...dosage, target_gL: target_gL ?? dosage.target_gL },
  };
  if (volume_hL === undefined) return changed;
  const sized = atSize(changed, (volume_hL / inputs.baseWine.volume_hL) * 100, labour_pct);
  // the volume as it was given, without the tail of a float
  return { ...sized, baseWine: { ...sized.baseWine, volume_hL } };
}

/** A plan, or the fields to mend before there is one. */
export type Attempt = { readonly plan: BatchPlan } | { readonly problems: readonly Problem[] };

/** What becomes of changed inputs, or why they cannot be planned. */
export const attemptPlan = (inputs: BatchInputs): Attempt => answered(() => ({ plan: planBatch(inputs) }));

/** The same, or nothing where they cannot be planned. */
export function planIf(inputs: BatchInputs): BatchPlan | null {
  const attempt = attemptPlan(inputs);
  return "plan" in attempt ? attempt.plan : null;
}

function answered<T>(figure: () => T): T | { readonly problems: readonly Problem[] } {
  try {
    return figure();
  } catch (error) {
    if (!(error instanceof UnplannableBatch)) throw error;
    return { problems: error.problems };
  }
}

/** What is looked at first when a setting changes. */
export const outcomeOf = ({ tirage, dosage, costs }: BatchPlan) => ({
  bottles: tirage.bottles,
  sugarKg: tirage.sugarKg,
  cellarBar: tirage.pressures.cellar.expected,
  cellarHighBar: tirage.pressures.cellar.high,
  hottestBar: tirage.pressures.hottest.expected,
  hottestHighBar: tirage.pressures.hottest.high,
  dosageMl: dosage.eachMl,
  perBottle: costs.perBottle,
  total: costs.total,
});
export type Outcome = ReturnType<typeof outcomeOf>;
export type OutcomeKey = keyof Outcome;

export const changeOf = (before: BatchPlan, after: BatchPlan, key: OutcomeKey): number =>
  outcomeOf(after)[key] - outcomeOf(before)[key];

/** One sweetness tried at the bench, and what it would mean for the batch. */
export interface BenchRow {
  readonly dosage: DosagePlan;
  /** Liqueur in the glass, mL. */
  readonly glassMl: number;
  /** Room that the liqueur leaves, mL, negative where it does not fit; null where there is no room at all. */
  readonly spareMl: number | null;
  /** Stock left once the batch's liqueur is made, L, negative where it is short; null where nothing limits it. */
  readonly stockLeftL: number | null;
}

/** The batch without liqueur, whatever its liqueur was to be. */
export const atZeroDosage = (inputs: BatchInputs): BatchInputs => ({
  ...inputs,
  dosage: { ...inputs.dosage, kind: "none" },
});

/** The tirage is that of the plan: what is tried at the bench comes after it. */
export function benchRow(
  inputs: BatchInputs,
  tirage: TiragePlan,
  glassMl = GLASS_ML,
): BenchRow | { readonly problems: readonly Problem[] } {
  return answered(() => {
    const dosage = planDosage(inputs, tirage);
    const { kind, residual_gL, target_gL, stock_L } = inputs.dosage;
    return {
      dosage,
      glassMl: kind === "none" ? 0 : dosageMl(glassMl, residual_gL, target_gL!, dosage.liqueurGL),
      spareMl: dosage.spaceMl === null ? null : dosage.spaceMl - dosage.eachMl,
      stockLeftL: stock_L === null ? null : stock_L - dosage.batchL,
    };
  });
}

/**
 * Sweetness to try, g/L, besides the one that is wanted: the middle of each stretch between two bounds of the rules,
 * up to the stretch above the one wanted.
 */
export function usualTrialsGL({ batch, dosage }: BatchInputs): number[] {
  const { kind, target_gL: wanted, residual_gL } = dosage;
  if (kind === "none" || wanted === null) return [];
  const bounds = [
    ...new Set(sweetnessRules[batch.rules].bands.flatMap(({ low, high }) => [low, high ?? low])),
  ];
  const below = bounds.filter((bound) => bound <= wanted).length;
  return bounds
    .slice(1)
    .map((bound, index) => ({ middle: (bounds[index]! + bound) / 2, place: index + 1 }))
    .filter(({ middle, place }) => place !== below && place <= below + 1 && middle > residual_gL)
    .map(({ middle }) => middle);
}

/**
 * The checks of a batch: what, value, limit, verdict in words, source.
 */
import { legalLimits, practiceLimits } from "../rules/limits";
import { BETWEEN_CLASSES, classLow, pressureRules } from "../rules/pressure-classes";
import type { Designation } from "../rules/designations";
import type { BatchInputs } from "./fields";
import type { CostPlan } from "./plan-costs";
import { NO_TERM, type DosagePlan } from "./plan-dosage";
import type { TiragePlan } from "./plan-tirage";

export type Verdict = "fine" | "look again" | "stop";

/** What stands for a limit where more wine is left in the bottle than is wanted. */
export const NO_ROOM = "no room";

export interface Check {
  /** null where nothing was given. */
  readonly value: number | string | null;
  /** null where the rules say nothing, or where the user has not given one. */
  readonly limit: number | string | null;
  readonly verdict: Verdict;
}

export const CHECK_KEYS = [
  "dryness",
  "baseAlcohol",
  "totalSo2",
  "tirageRise",
  "alcoholAfter",
  "hottest",
  "pressureClass",
  "leesMonths",
  "totalMonths",
  "neckBath",
  "room",
  "stock",
  "dosageRise",
  "term",
  "termMargin",
  "labelAlcohol",
  "bottleSize",
  "prices",
] as const;
export type CheckKey = (typeof CHECK_KEYS)[number];

type Beyond = Exclude<Verdict, "fine">;

const atMost = (value: number, limit: number | null | undefined, beyond: Beyond): Check => ({
  value,
  limit: limit ?? null,
  verdict: limit === null || limit === undefined || value <= limit ? "fine" : beyond,
});
const atLeast = (value: number, limit: number, beyond: Beyond): Check => ({
  value,
  limit,
  verdict: value >= limit ? "fine" : beyond,
});

export function checkBatch(
  inputs: BatchInputs,
  designation: Designation,
  tirage: TiragePlan,
  dosage: DosagePlan,
  costs: CostPlan,
): Record<CheckKey, Check> {
  const { batch, baseWine, lees, disgorging } = inputs;
  const law = legalLimits[batch.rules];
  const high = practiceLimits.baseAlcoholHighVol.value;
  return {
    dryness: atMost(baseWine.sugar_gL, practiceLimits.drySugarGL.value, "look again"),
    baseAlcohol:
      baseWine.alcohol_vol < practiceLimits.baseAlcoholLowVol.value
        ? { value: baseWine.alcohol_vol, limit: high, verdict: "look again" }
        : atMost(baseWine.alcohol_vol, high, "look again"),
    totalSo2:
      baseWine.totalSO2_mgL === null
        ? { value: null, limit: law.totalSo2MgL?.value ?? null, verdict: "look again" }
        : atMost(baseWine.totalSO2_mgL, law.totalSo2MgL?.value, "stop"),
    tirageRise: atMost(tirage.alcoholRiseVol, law.tirageRiseVol?.value, "stop"),
    alcoholAfter: atMost(tirage.alcoholAfterVol, practiceLimits.alcoholAfterVol.value, "look again"),
    hottest: glassCheck(tirage.pressures.hottest.high, inputs.tirage.glassRating_bar),
    pressureClass: classCheck(dosage, batch),
    leesMonths: atLeast(lees.lees_months, designation.leesMonths, "stop"),
    totalMonths: atLeast(lees.lees_months + lees.rest_months, designation.totalMonths, "stop"),
    neckBath: atMost(disgorging.neckBath_C, dosage.freezingPointC, "stop"),
    room:
      dosage.spaceMl === null
        ? { value: dosage.eachMl, limit: NO_ROOM, verdict: "stop" }
        : atMost(dosage.eachMl, dosage.spaceMl, "stop"),
    stock: atMost(dosage.bottlesFinished, dosage.stockBottles, "stop"),
    dosageRise: atMost(dosage.alcoholRiseVol, law.dosageRiseVol?.value, "stop"),
    term: termCheck(dosage),
    termMargin:
      dosage.termMarginGL === null
        ? { value: NO_TERM, limit: practiceLimits.sweetnessMarginGL.value, verdict: "look again" }
        : atLeast(dosage.termMarginGL, practiceLimits.sweetnessMarginGL.value, "look again"),
    labelAlcohol: atMost(Math.abs(dosage.labelVol - dosage.alcoholVol), law.labelToleranceVol?.value, "stop"),
    bottleSize: sizeCheck(batch),
    prices: atMost(costs.unpriced, 0, "look again"),
  };
}

function glassCheck(highBar: number, ratingBar: number | null): Check {
  return ratingBar === null
    ? { value: highBar, limit: null, verdict: "look again" }
    : atMost(highBar, ratingBar, "stop");
}

function classCheck(
  { pressureAt20, pressureClass }: DosagePlan,
  { bottle_mL, rules }: BatchInputs["batch"],
): Check {
  return atLeast(
    pressureAt20,
    classLow(pressureRules[rules].classes[0], bottle_mL),
    pressureClass === BETWEEN_CLASSES ? "stop" : "look again",
  );
}

const VERDICT_OF_TERM = {
  permitted: "fine",
  "within tolerance": "look again",
  "not permitted": "stop",
} as const;

function termCheck({ termVerdict }: DosagePlan): Check {
  return {
    value: termVerdict ?? NO_TERM,
    limit: null,
    verdict: termVerdict === null ? "look again" : VERDICT_OF_TERM[termVerdict],
  };
}

function sizeCheck({ bottle_mL, rules }: BatchInputs["batch"]): Check {
  const sizes = legalLimits[rules].bottleSizes;
  const regulated = sizes !== undefined && bottle_mL >= sizes.spanMl[0] && bottle_mL <= sizes.spanMl[1];
  return {
    value: bottle_mL,
    limit: null,
    verdict: regulated && !sizes.allowedMl.includes(bottle_mL) ? "stop" : "fine",
  };
}

export function worstVerdict(checks: Record<CheckKey, Check>): Verdict {
  const verdicts = Object.values(checks).map((check) => check.verdict);
  return verdicts.includes("stop") ? "stop" : verdicts.includes("look again") ? "look again" : "fine";
}

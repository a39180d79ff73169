/**
 * The checks of a batch: what, value, limit, verdict in words, source.
 */
import type { Designation } from "../rules/designations";
import { legalLimits, practiceLimits } from "../rules/limits";
import { classLow, lowestSparkling, pressureRules } from "../rules/pressure-classes";
import { READING_KEYS, type ReadingKey } from "./cellar-book";
import type { BatchInputs } from "./fields";
import type { CostPlan } from "./plan-costs";
import { NO_TERM, type DosagePlan } from "./plan-dosage";
import { READING_STATES, type ReadingPlan, type ReadingState, type RiddlingPlan } from "./plan-lees";
import type { TiragePlan } from "./plan-tirage";

export type Verdict = "fine" | "look again" | "stop";

/** What stands for a limit where the rules say nothing, or nothing limits. A blank limit is never that. */
export const NO_LIMIT = "none";
/** What stands for a limit where more wine is left in the bottle than is wanted. */
export const NO_ROOM = "no room";

export interface Check {
  /** "" where nothing was given. */
  readonly value: number | string;
  readonly limit: number | string;
  readonly verdict: Verdict;
}

/** One check for the inputs of each section, in the order of the fields. */
export const INPUT_CHECKS = [
  "batchInputs",
  "baseWineInputs",
  "tirageInputs",
  "leesInputs",
  "readingsInputs",
  "riddlingInputs",
  "disgorgingInputs",
  "dosageInputs",
  "materialsInputs",
  "costsInputs",
  "actualInputs",
] as const;

export const CHECK_KEYS = [
  "dryness",
  "baseAlcohol",
  "totalSo2",
  "tirageRise",
  "alcoholAfter",
  "yeast",
  "filled",
  "modelRange",
  "hottest",
  "pressureClass",
  "leesMonths",
  "totalMonths",
  "riddlingStart",
  "readingsState",
  "neckBath",
  "room",
  "stock",
  "dosageRise",
  "term",
  "termMargin",
  "labelAlcohol",
  "bottleSize",
  "forSale",
  "prices",
  ...INPUT_CHECKS,
] as const;
export type InputCheck = (typeof INPUT_CHECKS)[number];
export type CheckKey = (typeof CHECK_KEYS)[number];

type Beyond = Exclude<Verdict, "fine">;

const atMost = (value: number, limit: number | undefined, beyond: Beyond): Check =>
  limit === undefined
    ? { value, limit: NO_LIMIT, verdict: "fine" }
    : { value, limit, verdict: value <= limit ? "fine" : beyond };
const atLeast = (value: number, limit: number, beyond: Beyond): Check => ({
  value,
  limit,
  verdict: value >= limit ? "fine" : beyond,
});

interface Reckoned {
  readonly tirage: TiragePlan;
  readonly readings: Readonly<Record<ReadingKey, ReadingPlan>>;
  readonly riddling: RiddlingPlan;
  readonly dosage: DosagePlan;
  readonly costs: CostPlan;
}

export function checkBatch(
  inputs: BatchInputs,
  designation: Designation,
  { tirage, readings, riddling, dosage, costs }: Reckoned,
): Record<CheckKey, Check> {
  const { batch, baseWine, lees } = inputs;
  const law = legalLimits[batch.rules];
  const practice = practiceLimits;
  const so2Limit = law.totalSo2MgL?.value;
  return {
    // inputs that were parsed are sound; in the sheet these rows count those that no longer are
    ...(Object.fromEntries(INPUT_CHECKS.map((key) => [key, atMost(0, 0, "stop")])) as Record<
      InputCheck,
      Check
    >),
    dryness: atMost(baseWine.sugar_gL, practice.drySugarGL.value, "look again"),
    baseAlcohol: {
      ...atMost(baseWine.alcohol_vol, practice.baseAlcoholHighVol.value, "look again"),
      ...(baseWine.alcohol_vol < practice.baseAlcoholLowVol.value && { verdict: "look again" }),
    },
    totalSo2:
      baseWine.totalSO2_mgL === null
        ? { value: "", limit: so2Limit ?? NO_LIMIT, verdict: "look again" }
        : atMost(baseWine.totalSO2_mgL, so2Limit, "stop"),
    tirageRise: atMost(tirage.alcoholRiseVol, law.tirageRiseVol?.value, "stop"),
    alcoholAfter: atMost(tirage.alcoholAfterVol, practice.alcoholAfterVol.value, "look again"),
    yeast: yeastCheck(inputs.tirage),
    filled: filledCheck(dosage.filledMl / batch.bottle_mL),
    modelRange: modelRangeCheck(inputs.tirage),
    hottest: glassCheck(tirage, inputs.tirage.glassRating_bar),
    pressureClass: classCheck(dosage, batch),
    leesMonths: atLeast(lees.lees_months, designation.leesMonths, "stop"),
    totalMonths: atLeast(lees.lees_months + lees.rest_months, designation.totalMonths, "stop"),
    riddlingStart: atLeast(riddling.daysFromTirage, 1, "stop"),
    readingsState: readingsCheck(readings),
    neckBath: atMost(
      inputs.disgorging.neckBath_C,
      practice.neckBathC.value,
      inputs.disgorging.neckBath_C <= dosage.freezingPointC ? "look again" : "stop",
    ),
    room:
      dosage.spaceMl === null
        ? { value: dosage.eachMl, limit: NO_ROOM, verdict: "stop" }
        : atMost(dosage.eachMl, dosage.spaceMl, "stop"),
    stock: atMost(dosage.batchL, inputs.dosage.stock_L ?? undefined, "stop"),
    dosageRise: atMost(dosage.alcoholRiseVol, law.dosageRiseVol?.value, "stop"),
    term: termCheck(dosage),
    termMargin:
      dosage.termMarginGL === null
        ? { value: NO_TERM, limit: practice.sweetnessMarginGL.value, verdict: "look again" }
        : atLeast(dosage.termMarginGL, practice.sweetnessMarginGL.value, "look again"),
    labelAlcohol: labelCheck(dosage, batch),
    bottleSize: sizeCheck(batch),
    forSale: atLeast(costs.saleableBottles, 1, "stop"),
    prices: atMost(costs.unpriced, 0, "look again"),
  };
}

/** What stands for a value where neither yeast nor a starter was given, or one of them. */
export const YEAST_WORDS = { given: "given", missing: "not given" } as const;

function yeastCheck({ yeast_gHL, starter_Mcells_mL }: BatchInputs["tirage"]): Check {
  const isGiven = (yeast_gHL ?? 0) > 0 || starter_Mcells_mL !== null;
  return isGiven
    ? { value: YEAST_WORDS.given, limit: NO_LIMIT, verdict: "fine" }
    : { value: YEAST_WORDS.missing, limit: NO_LIMIT, verdict: "look again" };
}

/** What stands for a state where no gauge has been read yet. */
export const NOT_READ = "none yet";

/** The latest reading counts, but one that was too high is never passed over. */
function readingsCheck(readings: Readonly<Record<ReadingKey, ReadingPlan>>): Check {
  const states = READING_KEYS.map((key) => readings[key].state);
  const { tooHigh, stuck, check } = READING_STATES;
  const latest = states.includes(tooHigh) ? tooHigh : states.filter((state) => state !== "").at(-1);
  const verdict = (state: ReadingState | undefined): Verdict =>
    state === tooHigh ? "stop" : state === stuck || state === check ? "look again" : "fine";
  return { value: latest ?? NOT_READ, limit: NO_LIMIT, verdict: verdict(latest) };
}

function filledCheck(share: number): Check {
  const { filledLowPct, filledHighPct, filledFarPct } = practiceLimits;
  const pct = share * 100;
  const isNear = pct >= filledLowPct.value && pct <= filledHighPct.value;
  const isFar = Math.abs(pct - 100) > filledFarPct.value;
  return { value: pct, limit: filledHighPct.value, verdict: isNear ? "fine" : isFar ? "stop" : "look again" };
}

function modelRangeCheck({ cellar_C, hottest_C }: BatchInputs["tirage"]): Check {
  const { modelLowC, modelHighC, modelEndC } = practiceLimits;
  const warmest = Math.max(cellar_C, hottest_C);
  const coldest = Math.min(cellar_C, hottest_C);
  const inside = warmest <= modelHighC.value && coldest >= modelLowC.value;
  return {
    value: warmest,
    limit: modelHighC.value,
    verdict: inside ? "fine" : warmest <= modelEndC.value ? "look again" : "stop",
  };
}

function glassCheck({ pressures }: TiragePlan, ratingBar: number | null): Check {
  const highest = Math.max(pressures.cellar.high, pressures.hottest.high);
  return ratingBar === null
    ? { value: highest, limit: "", verdict: "look again" }
    : atMost(highest, ratingBar, "stop");
}

/** The bottles at the low end must still belong to the class; a batch that is not sparkling at all is a stop. */
function classCheck(
  { pressureAt20, lowPressureAt20 }: DosagePlan,
  { bottle_mL, rules }: BatchInputs["batch"],
): Check {
  const sparkling = pressureAt20 >= lowestSparkling(rules, bottle_mL);
  return atLeast(
    lowPressureAt20,
    classLow(pressureRules[rules].classes[0], bottle_mL),
    sparkling ? "look again" : "stop",
  );
}

const VERDICT_OF_TERM = {
  permitted: "fine",
  "within tolerance": "look again",
  "not permitted": "stop",
} as const;

function termCheck({ termVerdict }: DosagePlan): Check {
  return termVerdict === null
    ? { value: NO_TERM, limit: NO_LIMIT, verdict: "look again" }
    : { value: termVerdict, limit: NO_LIMIT, verdict: VERDICT_OF_TERM[termVerdict] };
}

/** The label's alcohol close to the analysis, and in the steps that the rules allow. */
function labelCheck({ labelVol, alcoholVol }: DosagePlan, { rules }: BatchInputs["batch"]): Check {
  const { labelToleranceVol, labelStepVol } = legalLimits[rules];
  const check = atMost(Math.abs(labelVol - alcoholVol), labelToleranceVol?.value, "stop");
  const inSteps = labelStepVol === undefined || Number.isInteger(labelVol / labelStepVol.value);
  return inSteps ? check : { ...check, verdict: "stop" };
}

function sizeCheck({ bottle_mL, rules }: BatchInputs["batch"]): Check {
  const sizes = legalLimits[rules].bottleSizes;
  const regulated = sizes !== undefined && bottle_mL >= sizes.spanMl[0] && bottle_mL <= sizes.spanMl[1];
  return {
    value: bottle_mL,
    limit: NO_LIMIT,
    verdict: regulated && !sizes.allowedMl.includes(bottle_mL) ? "stop" : "fine",
  };
}

export function worstVerdict(checks: Record<CheckKey, Check>): Verdict {
  return worstOf(Object.values(checks).map((check) => check.verdict));
}

export function worstOf(verdicts: readonly Verdict[]): Verdict {
  return verdicts.includes("stop") ? "stop" : verdicts.includes("look again") ? "look again" : "fine";
}

/**
 * Checks of the base wine, the tirage and the time on the lees.
 */
import { READING_KEYS } from "../../cellar/batch/cellar-book";
import { NOT_READ, YEAST_WORDS, type CheckKey } from "../../cellar/batch/checks";
import { READING_STATES } from "../../cellar/batch/plan-lees";
import { practiceLimits } from "../../cellar/rules/limits";
import { classLow, lowestSparkling, pressureRules } from "../../cellar/rules/pressure-classes";
import { sourceText } from "../../cellar/rules/source";
import type { SweetnessRuleSet } from "../../cellar/rules/sweetness-bands";
import {
  builtin,
  cell,
  choose,
  divided,
  equals,
  iff,
  isNumber,
  minus,
  mousse,
  numberOf,
  operation,
  plus,
  range,
  times,
  type Expression,
} from "../formula";
import {
  atLeast,
  atMost,
  blankAsText,
  byRules,
  legal,
  legalSource,
  sourceByRules,
  unlessBlank,
  type CheckRow,
} from "./check-rules";
import { stateName } from "./readings";
import { FORMATS, filledMl, input } from "./rows";

const {
  drySugarGL,
  baseAlcoholLowVol,
  baseAlcoholHighVol,
  alcoholAfterVol,
  modelLowC,
  modelHighC,
  modelEndC,
  filledLowPct,
  filledHighPct,
  filledFarPct,
} = practiceLimits;
const bottle = input("batch.bottle_mL");
const storage = [numberOf(input("tirage.cellar_C")), numberOf(input("tirage.hottest_C"))] as const;

/** A bound that is smaller in small bottles, as the sheet works it out. */
function bySize(ruleSet: SweetnessRuleSet, bound: (bottleMl: number) => number): Expression | number {
  const small = pressureRules[ruleSet].classes.find((each) => each.smallBottle)?.smallBottle;
  if (!small) return bound(Infinity);
  return iff(operation(bottle, "<", small.belowMl), bound(small.belowMl - 1), bound(small.belowMl));
}
const lowestClass = byRules((ruleSet) =>
  bySize(ruleSet, (size) => classLow(pressureRules[ruleSet].classes[0], size)),
);
const lowestBound = byRules((ruleSet) => bySize(ruleSet, (size) => lowestSparkling(ruleSet, size)));

const states = READING_KEYS.map((key) => cell(stateName(key)));
/** One that was too high is never passed over; otherwise the last line that was filled in. */
const latestState = iff(
  operation(
    builtin(
      "COUNTIF",
      range(stateName(READING_KEYS[0]), stateName(READING_KEYS.at(-1)!)),
      READING_STATES.tooHigh,
    ),
    ">",
    0,
  ),
  READING_STATES.tooHigh,
  states.reduce<Expression | string>((earlier, state) => iff(equals(state, ""), earlier, state), NOT_READ),
);

/** Which source it is depends on the designation; the function lists them. */
const designationSource = "secondary or memory: see MOUSSE.AGEING.DESIGNATIONS; the local text decides";

type Key =
  | "dryness"
  | "baseAlcohol"
  | "totalSo2"
  | "tirageRise"
  | "alcoholAfter"
  | "yeast"
  | "filled"
  | "modelRange"
  | "hottest"
  | "pressureClass"
  | "leesMonths"
  | "totalMonths"
  | "riddlingStart"
  | "readingsState";

export const tirageChecks: Readonly<Record<Extract<CheckKey, Key>, CheckRow>> = {
  dryness: {
    value: numberOf(input("baseWine.sugar_gL")),
    limit: drySugarGL.value,
    verdict: atMost("look again"),
    source: sourceText(drySugarGL.source),
  },
  baseAlcohol: {
    value: numberOf(input("baseWine.alcohol_vol")),
    limit: baseAlcoholHighVol.value,
    verdict: (value, limit) =>
      iff(operation(value, "<", baseAlcoholLowVol.value), "look again", atMost("look again")(value, limit)),
    source: sourceText(baseAlcoholHighVol.source),
  },
  totalSo2: {
    value: blankAsText(input("baseWine.totalSO2_mgL")),
    limit: legal((law) => law.totalSo2MgL),
    verdict: unlessBlank("value", atMost("stop")),
    source: legalSource((law) => law.totalSo2MgL),
  },
  tirageRise: {
    format: FORMATS.two,
    value: cell("plan_alcoholRise_vol"),
    limit: legal((law) => law.tirageRiseVol),
    verdict: atMost("stop"),
    source: legalSource((law) => law.tirageRiseVol),
  },
  alcoholAfter: {
    format: FORMATS.two,
    value: cell("plan_alcoholAfter_vol"),
    limit: alcoholAfterVol.value,
    verdict: atMost("look again"),
    source: sourceText(alcoholAfterVol.source),
  },
  yeast: {
    value: iff(
      builtin(
        "OR",
        operation(builtin("N", input("tirage.yeast_gHL")), ">", 0),
        isNumber(input("tirage.starter_Mcells_mL")),
      ),
      YEAST_WORDS.given,
      YEAST_WORDS.missing,
    ),
    verdict: (value) => iff(equals(value, YEAST_WORDS.given), "fine", "look again"),
    source: "nothing ferments without it",
  },
  filled: {
    format: FORMATS.one,
    value: times(divided(filledMl, bottle), 100),
    limit: filledHighPct.value,
    verdict: (value, limit) =>
      iff(
        builtin(
          "AND",
          isNumber(value),
          operation(builtin("ABS", minus(value, 100)), "<=", filledFarPct.value),
        ),
        iff(operation(value, "<", filledLowPct.value), "look again", atMost("look again")(value, limit)),
        "stop",
      ),
    source: sourceText(filledHighPct.source),
  },
  modelRange: {
    value: builtin("MAX", ...storage),
    limit: modelHighC.value,
    verdict: (value, limit) =>
      iff(
        operation(builtin("MIN", ...storage), "<", modelLowC.value),
        iff(operation(value, "<=", modelEndC.value), "look again", "stop"),
        atMost(iff(operation(value, "<=", modelEndC.value), "look again", "stop"))(value, limit),
      ),
    source: `${sourceText(modelHighC.source)}; ends at ${modelEndC.value} °C`,
  },
  hottest: {
    format: FORMATS.two,
    value: builtin("MAX", cell("plan_pressure_cellar_high_bar"), cell("plan_pressure_hottest_high_bar")),
    limit: blankAsText(input("tirage.glassRating_bar")),
    verdict: (value, limit) =>
      iff(
        operation(input("tirage.hottest_C"), "<", input("tirage.cellar_C")),
        "stop",
        unlessBlank("limit", atMost("stop"))(value, limit),
      ),
    source: "the glass maker's own sheet; blank is never fine; hottest at least the cellar",
  },
  pressureClass: {
    format: FORMATS.two,
    value: cell("plan_finishedPressure20_low_bar"),
    limit: lowestClass,
    verdict: atLeast(
      iff(operation(cell("plan_finishedPressure20_bar"), ">=", lowestBound), "look again", "stop"),
    ),
    source: sourceByRules((ruleSet) => pressureRules[ruleSet].source),
  },
  leesMonths: {
    format: FORMATS.whole,
    value: numberOf(input("lees.lees_months")),
    limit: mousse("AGEING.MINIMUM", input("batch.designation"), "lees"),
    verdict: atLeast("stop"),
    source: designationSource,
  },
  totalMonths: {
    format: FORMATS.whole,
    value: plus(numberOf(input("lees.lees_months")), numberOf(input("lees.rest_months"))),
    limit: mousse("AGEING.MINIMUM", input("batch.designation"), "total"),
    verdict: atLeast("stop"),
    source: designationSource,
  },
  riddlingStart: {
    format: FORMATS.whole,
    value: minus(cell("plan_riddlingStart"), input("batch.tirageDate")),
    limit: 1,
    verdict: atLeast("stop"),
    source: "this plan: riddling is counted back from disgorging",
  },
  readingsState: {
    value: latestState,
    verdict: (value) =>
      builtin(
        "IFERROR",
        choose(value, [
          [NOT_READ, "fine"],
          [READING_STATES.finished, "fine"],
          [READING_STATES.working, "fine"],
          [READING_STATES.stuck, "look again"],
          [READING_STATES.check, "look again"],
        ]),
        "stop",
      ),
    source: "common practice, no source: rules beside the readings",
  },
};

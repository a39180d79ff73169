/**
 * Checks of disgorging, dosage, label and money.
 */
import { NO_LIMIT, type CheckKey } from "../../cellar/batch/checks";
import { NO_TERM } from "../../cellar/batch/plan-dosage";
import { legalLimits, practiceLimits } from "../../cellar/rules/limits";
import { sourceText } from "../../cellar/rules/source";
import { sweetnessRules } from "../../cellar/rules/sweetness-bands";
import {
  builtin,
  cell,
  choose,
  divided,
  equals,
  iff,
  isBlank,
  isNumber,
  minus,
  numberOf,
  operation,
  type Expression,
} from "../formula";
import { atLeast, atMost, byRules, legal, legalSource, sourceByRules, type CheckRow } from "./check-rules";
import { FORMATS, input } from "./rows";

const label = cell("plan_label_vol");
const sizes = legalLimits.EU.bottleSizes!;

/** A value in whole steps: 12.5 in halves. */
const inSteps = (value: Expression, step: number) =>
  equals(builtin("ROUND", divided(value, step), 0), divided(value, step));

type Key =
  | "neckBath"
  | "room"
  | "stock"
  | "dosageRise"
  | "term"
  | "termMargin"
  | "labelAlcohol"
  | "bottleSize"
  | "forSale"
  | "prices";

export const finishChecks: Readonly<Record<Extract<CheckKey, Key>, CheckRow>> = {
  neckBath: {
    format: FORMATS.one,
    value: numberOf(input("disgorging.neckBath_C")),
    limit: practiceLimits.neckBathC.value,
    verdict: (value, limit) =>
      atMost(iff(operation(value, "<=", cell("plan_freezing_C")), "look again", "stop"))(value, limit),
    source: `${sourceText(practiceLimits.neckBathC.source)}; it must freeze the wine`,
  },
  room: {
    format: FORMATS.two,
    value: cell("plan_dosage_mL"),
    limit: cell("plan_space_mL"),
    verdict: atMost("stop"),
    source: "this plan",
  },
  stock: {
    format: FORMATS.two,
    value: cell("plan_dosageBatch_L"),
    limit: iff(isBlank(input("dosage.stock_L")), NO_LIMIT, input("dosage.stock_L")),
    verdict: atMost("stop"),
    source: "this plan, its reserve counted; blank stock: as needed",
  },
  dosageRise: {
    format: FORMATS.two,
    value: cell("plan_dosageRise_vol"),
    limit: legal((law) => law.dosageRiseVol),
    verdict: atMost("stop"),
    source: legalSource((law) => law.dosageRiseVol),
  },
  term: {
    value: cell("plan_termVerdict"),
    verdict: (value) =>
      builtin(
        "IFERROR",
        choose(value, [
          ["permitted", "fine"],
          ["within tolerance", "look again"],
          [NO_TERM, "look again"],
        ]),
        "stop",
      ),
    source: sourceByRules((ruleSet) => sweetnessRules[ruleSet].source),
  },
  termMargin: {
    format: FORMATS.two,
    value: cell("plan_termMargin_gL"),
    limit: practiceLimits.sweetnessMarginGL.value,
    verdict: (value, limit) => iff(equals(value, NO_TERM), "look again", atLeast("look again")(value, limit)),
    source: sourceText(practiceLimits.sweetnessMarginGL.source),
  },
  labelAlcohol: {
    format: FORMATS.two,
    value: builtin("ABS", minus(label, cell("plan_finishedAlcohol_vol"))),
    limit: legal((law) => law.labelToleranceVol),
    verdict: (value, limit) =>
      iff(
        byRules((ruleSet) => {
          const step = legalLimits[ruleSet].labelStepVol;
          return step ? inSteps(label, step.value) : builtin("TRUE");
        }),
        atMost("stop")(value, limit),
        "stop",
      ),
    source: legalSource((law) => law.labelToleranceVol),
  },
  bottleSize: {
    format: FORMATS.whole,
    value: numberOf(input("batch.bottle_mL")),
    verdict: (value) =>
      iff(
        byRules((ruleSet) => (ruleSet === "EU" ? euSize(value) : isNumber(value))),
        "fine",
        "stop",
      ),
    source: `EU: ${sizes.allowedMl.join(", ")} mL, free outside; ${sourceText(sizes.source)}`,
  },
  forSale: {
    format: FORMATS.whole,
    value: cell("plan_saleable_bottles"),
    limit: 1,
    verdict: atLeast("stop"),
    source: "this plan: filled, less broken, less held back",
  },
  prices: {
    format: FORMATS.whole,
    value: cell("plan_unpriced"),
    limit: 0,
    verdict: (value, limit) =>
      iff(isNumber(cell("plan_cost_total")), atMost("look again")(value, limit), "stop"),
    source: "the costs count them as nothing",
  },
};

function euSize(value: Expression): Expression {
  return builtin(
    "AND",
    isNumber(value),
    builtin(
      "OR",
      operation(value, "<", sizes.spanMl[0]),
      operation(value, ">", sizes.spanMl[1]),
      ...sizes.allowedMl.map((size) => equals(value, size)),
    ),
  );
}

/**
 * Section Checks: what, value, limit, verdict in words, source. The limits stand in cells of their own and can be
 * overruled there; regulation changes and the user may know better.
 */
import { CHECK_KEYS, NO_ROOM, type CheckKey } from "../../cellar/batch/checks";
import { legalLimits, practiceLimits, type LegalLimits } from "../../cellar/rules/limits";
import { BETWEEN_CLASSES, pressureClasses, type PressureClass } from "../../cellar/rules/pressure-classes";
import { RECORDED, RULE_SETS, sourceText, type RuleSet, type Source } from "../../cellar/rules/source";
import { sweetnessRules } from "../../cellar/rules/sweetness-bands";
import type { Row } from "../layout";
import {
  builtin,
  cell,
  equals,
  iff,
  isBlank,
  minus,
  mousse,
  operation,
  plus,
  range,
  type Expression,
} from "../formula";
import { FORMATS, columnHeads, heading, input, resultCell, text, type Batch, type Section } from "./rows";

interface CheckRow {
  readonly what: string;
  readonly unit: string;
  readonly value: Expression;
  readonly format?: string;
  /** An expression, a number of ours, or nothing where the verdict needs no limit. */
  readonly limit?: Expression | number;
  readonly verdict: (value: Expression, limit: Expression) => Expression;
  /** Fixed, or following the sheet's own Rules cell. */
  readonly source: string | ((ruleSet: RuleSet) => string);
}

const rules = input("batch.rules");

/** One value for each rule set, chosen by the sheet's own Rules cell; "" where the rules say nothing. */
function byRules(of: (ruleSet: RuleSet) => number | string | Expression | undefined): Expression {
  const [first, ...others] = RULE_SETS.map((ruleSet) => [ruleSet, of(ruleSet) ?? ""] as const);
  return others.reduce<Expression>(
    (otherwise, [ruleSet, value]) => iff(equals(rules, ruleSet), value, otherwise),
    iff(equals(rules, first![0]), first![1], ""),
  );
}
const legal = (of: (limits: LegalLimits) => { readonly value: number } | undefined) =>
  byRules((ruleSet) => of(legalLimits[ruleSet])?.value);
/** A source that goes with the rules chosen. */
const sourceByRules = (of: (ruleSet: RuleSet) => Source | undefined) => (ruleSet: RuleSet) => {
  const found = of(ruleSet);
  return found ? sourceText(found) : "these rules set no limit";
};
const legalSource = (of: (limits: LegalLimits) => { readonly source: Source } | undefined) =>
  sourceByRules((ruleSet) => of(legalLimits[ruleSet])?.source);

const atMost = (beyond: string) => (value: Expression, limit: Expression) =>
  iff(isBlank(limit), "fine", iff(operation(value, "<=", limit), "fine", beyond));
const atLeast = (beyond: string | Expression) => (value: Expression, limit: Expression) =>
  iff(operation(value, ">=", limit), "fine", beyond);
const unlessBlank =
  (verdict: CheckRow["verdict"]): CheckRow["verdict"] =>
  (value, limit) =>
    iff(isBlank(value), "look again", verdict(value, limit));

const blankAsText = (value: Expression) => iff(isBlank(value), "", value);

const classLow = ({ lowBar, smallBottle }: PressureClass): Expression | number =>
  smallBottle
    ? iff(operation(input("batch.bottle_mL"), "<", smallBottle.belowMl), smallBottle.lowBar, lowBar)
    : lowBar;

const designationSource = "pages of the trade bodies (secondary); the local text decides";

const sizes = legalLimits.EU.bottleSizes!;
const bottle = input("batch.bottle_mL");

const checkRows: Readonly<Record<CheckKey, CheckRow>> = {
  dryness: {
    what: "Base wine is dry: glucose + fructose at most",
    unit: "g/L",
    value: input("baseWine.sugar_gL"),
    limit: practiceLimits.drySugarGL.value,
    verdict: atMost("look again"),
    source: sourceText(practiceLimits.drySugarGL.source),
  },
  baseAlcohol: {
    what: `Base wine's alcohol between ${practiceLimits.baseAlcoholLowVol.value} and`,
    unit: "% vol",
    value: input("baseWine.alcohol_vol"),
    limit: practiceLimits.baseAlcoholHighVol.value,
    verdict: (value, limit) =>
      iff(
        operation(value, "<", practiceLimits.baseAlcoholLowVol.value),
        "look again",
        atMost("look again")(value, limit),
      ),
    source: sourceText(practiceLimits.baseAlcoholHighVol.source),
  },
  totalSo2: {
    what: "Total SO2 at most",
    unit: "mg/L",
    value: blankAsText(input("baseWine.totalSO2_mgL")),
    limit: legal((law) => law.totalSo2MgL),
    verdict: unlessBlank(atMost("stop")),
    source: legalSource((law) => law.totalSo2MgL),
  },
  tirageRise: {
    what: "Rise of alcohol at tirage at most",
    unit: "% vol",
    format: FORMATS.two,
    value: cell("plan_alcoholRise_vol"),
    limit: legal((law) => law.tirageRiseVol),
    verdict: atMost("stop"),
    source: legalSource((law) => law.tirageRiseVol),
  },
  alcoholAfter: {
    what: "Alcohol that yeast can still finish at, at most",
    unit: "% vol",
    format: FORMATS.two,
    value: cell("plan_alcoholAfter_vol"),
    limit: practiceLimits.alcoholAfterVol.value,
    verdict: atMost("look again"),
    source: sourceText(practiceLimits.alcoholAfterVol.source),
  },
  hottest: {
    what: "High pressure on the hottest day, glass rating",
    unit: "bar",
    format: FORMATS.two,
    value: cell("plan_pressure_hottest_high_bar"),
    limit: blankAsText(input("tirage.glassRating_bar")),
    verdict: (value, limit) =>
      iff(isBlank(limit), "look again", iff(operation(value, "<=", limit), "fine", "stop")),
    source: "the glass maker's own sheet; blank is never fine",
  },
  pressureClass: {
    what: "Finished pressure at 20 °C at least",
    unit: "bar",
    format: FORMATS.two,
    value: cell("plan_finishedPressure20_bar"),
    limit: byRules((ruleSet) => classLow(pressureClasses[ruleSet][0]!)),
    verdict: atLeast(iff(equals(cell("plan_pressureClass"), BETWEEN_CLASSES), "stop", "look again")),
    source: sourceByRules((ruleSet) => pressureClasses[ruleSet][0]!.source),
  },
  leesMonths: {
    what: "Months on the lees at least",
    unit: "months",
    format: FORMATS.whole,
    value: input("lees.lees_months"),
    limit: mousse("AGEING.MINIMUM", input("batch.designation"), "lees"),
    verdict: atLeast("stop"),
    source: designationSource,
  },
  totalMonths: {
    what: "Months from tirage to release at least",
    unit: "months",
    format: FORMATS.whole,
    value: plus(input("lees.lees_months"), input("lees.rest_months")),
    limit: mousse("AGEING.MINIMUM", input("batch.designation"), "total"),
    verdict: atLeast("stop"),
    source: designationSource,
  },
  neckBath: {
    what: "Neck bath colder than the wine's freezing point",
    unit: "°C",
    format: FORMATS.one,
    value: input("disgorging.neckBath_C"),
    limit: cell("plan_freezing_C"),
    verdict: atMost("stop"),
    source: "estimate; baths run at −20 to −27 °C (read)",
  },
  room: {
    what: "Liqueur a bottle fits the room in the neck",
    unit: "mL",
    format: FORMATS.two,
    value: cell("plan_dosage_mL"),
    limit: builtin("IFERROR", cell("plan_space_mL"), NO_ROOM),
    verdict: (value, limit) => iff(builtin("ISNUMBER", limit), atMost("stop")(value, limit), "stop"),
    source: "this plan",
  },
  stock: {
    what: "Stock of liqueur covers the bottles",
    unit: "bottles",
    format: FORMATS.whole,
    value: cell("plan_finished_bottles"),
    limit: builtin("IF", builtin("ISNUMBER", cell("plan_stock_bottles")), cell("plan_stock_bottles"), ""),
    verdict: atMost("stop"),
    source: "this plan; blank stock: as needed",
  },
  dosageRise: {
    what: "Rise of alcohol at dosage at most",
    unit: "% vol",
    format: FORMATS.two,
    value: cell("plan_dosageRise_vol"),
    limit: legal((law) => law.dosageRiseVol),
    verdict: atMost("stop"),
    source: legalSource((law) => law.dosageRiseVol),
  },
  term: {
    what: "The sweetness term wanted is",
    unit: "",
    value: cell("plan_termVerdict"),
    verdict: (value) =>
      iff(equals(value, "permitted"), "fine", iff(equals(value, "not permitted"), "stop", "look again")),
    source: sourceByRules((ruleSet) => sweetnessRules[ruleSet].source),
  },
  termMargin: {
    what: "Sugar away from the term's nearer bound by at least",
    unit: "g/L",
    format: FORMATS.two,
    value: cell("plan_termMargin_gL"),
    limit: practiceLimits.sweetnessMarginGL.value,
    verdict: (value, limit) =>
      iff(builtin("ISNUMBER", value), atLeast("look again")(value, limit), "look again"),
    source: sourceText(practiceLimits.sweetnessMarginGL.source),
  },
  labelAlcohol: {
    what: "Label and analysis of alcohol differ by at most",
    unit: "% vol",
    format: FORMATS.two,
    value: builtin("ABS", minus(cell("plan_label_vol"), cell("plan_finishedAlcohol_vol"))),
    limit: legal((law) => law.labelToleranceVol),
    verdict: atMost("stop"),
    source: legalSource((law) => law.labelToleranceVol),
  },
  bottleSize: {
    what: "Bottle size is one that may be sold",
    unit: "mL",
    format: FORMATS.whole,
    value: bottle,
    verdict: (value) =>
      iff(
        builtin(
          "AND",
          equals(rules, "EU"),
          operation(value, ">=", sizes.spanMl[0]),
          operation(value, "<=", sizes.spanMl[1]),
          ...sizes.allowedMl.map((size) => operation(value, "<>", size)),
        ),
        "stop",
        "fine",
      ),
    source: `EU: ${sizes.allowedMl.join(", ")} mL, free outside; ${sourceText(sizes.source)}`,
  },
  prices: {
    what: "Items needed that have no price, at most",
    unit: "items",
    format: FORMATS.whole,
    value: cell("plan_unpriced"),
    limit: 0,
    verdict: atMost("look again"),
    source: "the costs below count them as nothing",
  },
};

export const checksSection: Section = (batch) => [
  ...heading("Checks"),
  {
    cells: [
      text(`Limits recorded ${RECORDED}; regulation changes. Overrule one by typing over its cell.`, "note"),
    ],
  },
  columnHeads("What", ">Value", "~Unit", ">Limit", "~Verdict", "Source"),
  ...CHECK_KEYS.map((key) => checkRow(key, batch)),
];

const verdictName = (key: CheckKey) => `plan_check_${key}`;

function checkRow(key: CheckKey, { inputs, plan }: Batch): Row {
  const { what, unit, value, format, limit, verdict, source } = checkRows[key];
  const check = plan.checks[key];
  const valueName = `plan_check_${key}_value`;
  const limitName = `plan_check_${key}_limit`;
  const numberFormat = format === undefined ? {} : { format };
  const limitCell =
    typeof limit === "number"
      ? { key: limitName, value: limit, style: "result" as const, ...numberFormat }
      : resultCell({ key: limitName, value: check.limit ?? "", formula: limit!, ...numberFormat });
  return {
    cells: [
      text(what, "label"),
      resultCell({ key: valueName, value: check.value ?? "", formula: value, ...numberFormat }),
      text(unit, "unit"),
      limit === undefined ? undefined : limitCell,
      resultCell({
        name: verdictName(key),
        value: check.verdict,
        style: "verdict",
        formula: builtin("IFERROR", verdict(cell(valueName), cell(limitName)), "stop"),
      }),
      typeof source === "string"
        ? text(source, "note")
        : { value: source(inputs.batch.rules), formula: byRules(source), style: "note" },
    ],
  };
}

/** The worst of all verdicts, in words. */
export function worstOf(): Expression {
  const verdicts = range(verdictName(CHECK_KEYS[0]), verdictName(CHECK_KEYS[CHECK_KEYS.length - 1]!));
  const any = (word: string) => operation(builtin("COUNTIF", verdicts, word), ">", 0);
  return iff(any("stop"), "stop", iff(any("look again"), "look again", "fine"));
}

/** What a check is about, in words. */
export const checkTitle = (key: CheckKey): string => checkRows[key].what;

/**
 * What each check compares, and how it comes to its verdict. The limits stand in cells of their own and can be
 * overruled there; regulation changes and the user may know better.
 */
import { NO_ROOM, type CheckKey } from "../../cellar/batch/checks";
import { legalLimits, practiceLimits } from "../../cellar/rules/limits";
import { BETWEEN_CLASSES, pressureRules, type PressureClass } from "../../cellar/rules/pressure-classes";
import { sourceText } from "../../cellar/rules/source";
import { sweetnessRules } from "../../cellar/rules/sweetness-bands";
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
  type Expression,
} from "../formula";
import {
  atLeast,
  atMost,
  blankAsText,
  byRules,
  legal,
  legalSource,
  rules,
  sourceByRules,
  unlessBlank,
  type CheckRow,
} from "./check-rules";
import { FORMATS, input } from "./rows";

const designationSource = "pages of the trade bodies (secondary); the local text decides";
const bottle = input("batch.bottle_mL");
const sizes = legalLimits.EU.bottleSizes!;

const classLow = ({ low, smallBottle }: PressureClass): Expression | number =>
  smallBottle
    ? iff(operation(input("batch.bottle_mL"), "<", smallBottle.belowMl), smallBottle.low, low)
    : low;

export const checkRows: Readonly<Record<CheckKey, CheckRow>> = {
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
    limit: byRules((ruleSet) => classLow(pressureRules[ruleSet].classes[0])),
    verdict: atLeast(iff(equals(cell("plan_pressureClass"), BETWEEN_CLASSES), "stop", "look again")),
    source: sourceByRules((ruleSet) => pressureRules[ruleSet].source),
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

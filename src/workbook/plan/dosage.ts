/**
 * Section Disgorging and dosage, to the words on the label.
 */
import { NO_ROOM } from "../../cellar/batch/checks";
import { UNLIMITED } from "../../cellar/batch/plan-dosage";
import {
  builtin,
  cell,
  choose,
  equals,
  iff,
  isBlank,
  minus,
  mousse,
  noAnswer,
  nth,
  times,
  type Operand,
} from "../formula";
import type { Row } from "../layout";
import { disgorgingResults } from "./disgorging-results";
import { labelResults } from "./label-results";
import { FORMATS, heading, input, inputRow, resultRow, type Batch, type Section, gap } from "./rows";

const DISGORGING = ["filled_mL", "lost_mL", "pressureLost_bar", "neckBath_C"] as const;
const DOSAGE = [
  "kind",
  "residual_gL",
  "target_gL",
  "strength_gL",
  "liqueur_vol",
  "carrier_gL",
  "stock_L",
  "reserve_pct",
  "term",
  "label_vol",
] as const;

const bottle = input("batch.bottle_mL");
const kind = input("dosage.kind");
/** By the kind of dosage; the sheet's own cell decides. */
const byKind = (none: Operand, sugarInWine: Operand, asItIs: Operand) =>
  choose(kind, [
    ["none", none],
    ["sugar in wine", sugarInWine],
    ["concentrate", asItIs],
    ["sweet reserve wine", asItIs],
  ]);
/** The same for what any dosage does alike. */
const ifDosed = (none: Operand, dosed: Operand) =>
  iff(equals(kind, "none"), none, iff(byKind(false, true, true), dosed, noAnswer));
const residual = input("dosage.residual_gL");
const strength = input("dosage.strength_gL");
const carrier = mousse("SUGAR.SUCROSE", input("dosage.carrier_gL"));
const each = cell("plan_dosage_mL");
const liqueur = cell("plan_liqueur_gL");

export const dosageSection: Section = (batch) => [
  ...heading("Disgorging and dosage"),
  ...DISGORGING.map((key) => inputRow(`disgorging.${key}`, batch)),
  ...DOSAGE.map((key) => inputRow(`dosage.${key}`, batch)),
  gap,
  ...disgorgingResults(batch),
  ...dosageResults(batch),
  ...labelResults(batch),
];

function dosageResults({ plan: { dosage } }: Batch): Row[] {
  const recipe = mousse("DOSAGE.RECIPE", cell("plan_dosageBatch_L"), strength, carrier);
  return [
    resultRow({
      name: "plan_liqueur_gL",
      label: "Strength as glucose + fructose",
      unit: "g/L",
      format: FORMATS.one,
      value: dosage.liqueurGL,
      formula: byKind(0, mousse("SUGAR.INVERT", strength), strength),
      note: "1 g of weighed sugar analyses as 1.0526 g",
    }),
    resultRow({
      name: "plan_dosage_mL",
      label: "Liqueur a bottle",
      unit: "mL",
      format: FORMATS.two,
      value: dosage.eachMl,
      style: "key",
      formula: ifDosed(0, mousse("DOSAGE.VOLUME", bottle, residual, input("dosage.target_gL"), liqueur)),
    }),
    resultRow({
      name: "plan_topUp_mL",
      label: "Wine to top up with, a bottle",
      unit: "mL",
      format: FORMATS.two,
      value: dosage.topUpMl ?? NO_ROOM,
      formula: builtin("IFERROR", mousse("DOSAGE.TOPUP", cell("plan_space_mL"), each), NO_ROOM),
    }),
    resultRow({
      name: "plan_dosageBatch_L",
      label: "Liqueur for the batch, with reserve",
      unit: "L",
      format: FORMATS.two,
      value: dosage.batchL,
      formula: mousse("DOSAGE.BATCH", cell("plan_finished_bottles"), each, input("dosage.reserve_pct")),
    }),
    resultRow({
      name: "plan_dosageSugar_kg",
      label: "… sugar to weigh for it",
      unit: "kg",
      format: FORMATS.two,
      value: dosage.sugarKg,
      formula: byKind(0, nth(recipe, 1), 0),
      note: "0 unless sugar in wine",
    }),
    resultRow({
      name: "plan_dosageWine_L",
      label: "… wine to dissolve it in",
      unit: "L",
      format: FORMATS.two,
      value: dosage.wineL,
      formula: byKind(0, nth(recipe, 2), 0),
      note: "0 unless sugar in wine",
    }),
    resultRow({
      name: "plan_stock_bottles",
      label: "Bottles that the stock can dose",
      unit: "bottles",
      format: FORMATS.whole,
      value: dosage.stockBottles ?? UNLIMITED,
      formula: iff(
        builtin("OR", isBlank(input("dosage.stock_L")), equals(each, 0)),
        UNLIMITED,
        mousse("DOSAGE.STOCK", input("dosage.stock_L"), bottle, residual, input("dosage.target_gL"), liqueur),
      ),
    }),
    resultRow({
      name: "plan_liqueur_vol",
      label: "Alcohol of the liqueur",
      unit: "% vol",
      format: FORMATS.two,
      value: dosage.liqueurVol,
      formula: byKind(
        0,
        times(input("dosage.liqueur_vol"), nth(mousse("DOSAGE.RECIPE", 1, strength, carrier), 2)),
        input("dosage.liqueur_vol"),
      ),
      note: "sugar in wine: the wine's, by its share of the liqueur",
    }),
    resultRow({
      name: "plan_sugar_gL",
      label: "Sugar reached, as analysed",
      unit: "g/L",
      format: FORMATS.two,
      value: dosage.sugarGL,
      formula: ifDosed(residual, mousse("DOSAGE.SUGAR", bottle, residual, each, liqueur)),
      note: "glucose + fructose",
    }),
    resultRow({
      name: "plan_finishedAlcohol_vol",
      label: "Alcohol after dosage",
      unit: "% vol",
      format: FORMATS.two,
      value: dosage.alcoholVol,
      formula: ifDosed(
        cell("plan_alcoholAfter_vol"),
        mousse("DOSAGE.ALCOHOL", bottle, cell("plan_alcoholAfter_vol"), each, cell("plan_liqueur_vol")),
      ),
    }),
    resultRow({
      name: "plan_dosageRise_vol",
      label: "Rise of alcohol at dosage",
      unit: "% vol",
      format: FORMATS.two,
      value: dosage.alcoholRiseVol,
      formula: minus(cell("plan_finishedAlcohol_vol"), cell("plan_alcoholAfter_vol")),
    }),
  ];
}

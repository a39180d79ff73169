/**
 * Section Costs: the user's rates, then where the money goes.
 */
import { LITRES_PER_HL, ML_PER_LITRE } from "../../cellar/units";
import {
  builtin,
  cell,
  divided,
  iff,
  isBlank,
  isNumber,
  minus,
  mousse,
  plus,
  range,
  times,
  type Expression,
} from "../formula";
import type { CellStyle } from "../data";
import type { Row } from "../layout";
import { PARTS, partLabel, partName, type Part } from "./cost-parts";
import {
  FORMATS,
  columnHeads,
  currencyUnit,
  heading,
  input,
  inputRow,
  resultCell,
  resultRow,
  text,
  type Batch,
  type Section,
  type Unit,
  gap,
} from "./rows";

const RATES = [
  "baseWine_perL",
  "labour_perHour",
  "tirage_hours",
  "riddling_hours",
  "disgorging_hours",
  "finishing_hours",
  "duty_perBottle",
  "duty_perL",
  "storage_perBottleMonth",
  "interest_pct",
  "breakage_pct",
  "heldBack_bottles",
  "decimals",
] as const;

export const costsSection: Section = (batch) => {
  const { plan } = batch;
  const { costs } = plan;
  const total = cell("plan_cost_total");
  const saleable = cell("plan_saleable_bottles");
  const perBottle = (cost: number) => cost / costs.saleableBottles;

  const row = (key: Part | "total", label: string, formula: Expression, style: CellStyle): Row => ({
    cells: [
      {
        ...text(label, style === "total" ? "total" : "label"),
        ...(key !== "total" && { key: partLabel(key) }),
      },
      resultCell({
        name: key === "total" ? "plan_cost_total" : partName(key),
        value: costs[key],
        formula,
        format: FORMATS.two,
        style,
      }),
      currencyUnit(batch),
      resultCell({
        key: `plan_cost_${key}_perBottle`,
        value: perBottle(costs[key]),
        format: FORMATS.three,
        style,
        formula: mousse("COST.BOTTLE", cell(`plan_cost_${key}`), saleable, 0),
      }),
      resultCell({
        key: `plan_cost_${key}_share`,
        value: costs.total === 0 ? 0 : costs[key] / costs.total,
        format: FORMATS.percent,
        style,
        formula: builtin(
          "IF",
          { kind: "operation", operator: "=", left: total, right: { kind: "literal", value: 0 } },
          0,
          divided(cell(`plan_cost_${key}`), total),
        ),
      }),
    ],
  });
  return [
    ...heading("Costs"),
    ...RATES.map((key) => inputRow(`costs.${key}`, batch, rateUnit(key, batch))),
    resultRow({
      name: "plan_tirageWine_L",
      label: "Wine used at tirage",
      unit: "L",
      format: FORMATS.whole,
      value: costs.tirageWineL,
      formula: plus(times(cell("plan_wineWithStarter_hL"), LITRES_PER_HL), cell("plan_liqueurWine_L")),
      note: "tank, starter, tirage liqueur",
    }),
    resultRow({
      name: "plan_finishingWine_L",
      label: "Wine used at dosage",
      unit: "L",
      format: FORMATS.whole,
      value: costs.finishingWineL,
      formula: plus(
        cell("plan_dosageWine_L"),
        divided(
          times(
            iff(isNumber(cell("plan_topUp_mL")), cell("plan_topUp_mL"), 0),
            cell("plan_finished_bottles"),
          ),
          ML_PER_LITRE,
        ),
      ),
      note: "dosage liqueur, topping up",
    }),
    resultRow({
      name: "plan_costs_riddling_hours",
      label: "Hours at riddling, counted",
      unit: "h",
      format: FORMATS.one,
      value: costs.riddlingHours,
      formula: iff(
        isBlank(input("costs.riddling_hours")),
        iff(isNumber(cell("plan_riddling_hours")), cell("plan_riddling_hours"), 0),
        input("costs.riddling_hours"),
      ),
    }),
    resultRow({
      name: "plan_saleable_bottles",
      label: "Bottles for sale: not broken, not held back",
      unit: "bottles",
      format: FORMATS.whole,
      value: costs.saleableBottles,
      formula: minus(cell("plan_finished_bottles"), input("costs.heldBack_bottles")),
    }),
    gap,
    columnHeads("Part", ">Cost", "", ">A bottle", ">Share"),
    ...PARTS.map(([key, label, formula]) => row(key, label, formula, "result")),
    row("total", "Total", builtin("SUM", range("plan_cost_baseWine", "plan_cost_duty")), "total"),
    resultRow({
      name: "plan_perBottle",
      label: "Cost of a saleable bottle",
      unit: currencyUnit(batch),
      format: FORMATS.two,
      value: costs.perBottle,
      style: "key",
      formula: mousse("COST.BOTTLE", total, saleable, 0),
      note: "those sold pay for those broken and held back; the total divided, not rounded",
    }),
    resultRow({
      name: "plan_perCase",
      label: "Cost of a case",
      unit: currencyUnit(batch),
      format: FORMATS.two,
      value: costs.perCase,
      formula: times(cell("plan_perBottle"), input("batch.bottlesPerCase")),
    }),
  ];
};

const PER: Partial<Record<(typeof RATES)[number], string>> = {
  baseWine_perL: " a litre",
  labour_perHour: " an hour",
  duty_perBottle: " a bottle",
  duty_perL: " a litre",
  storage_perBottleMonth: " a bottle, month",
};

function rateUnit(key: (typeof RATES)[number], batch: Batch): Unit | undefined {
  const per = PER[key];
  return per === undefined ? undefined : currencyUnit(batch, per);
}

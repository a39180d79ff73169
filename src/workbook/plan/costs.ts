/**
 * Section Costs: the user's rates, then where the money goes.
 */
import { OTHER_KEYS, materialKeys, materials } from "../../cellar/batch/materials";
import type { CostPlan } from "../../cellar/batch/plan-costs";
import { LITRES_PER_HL, ML_PER_LITRE } from "../../cellar/units";
import { builtin, cell, divided, mousse, plus, range, times, type Expression } from "../formula";
import type { CellStyle } from "../data";
import type { Row } from "../layout";
import { costName } from "./materials";
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
] as const;

type Part = Exclude<
  keyof CostPlan,
  "lines" | "unpriced" | "tirageWineL" | "finishingWineL" | "total" | "perBottle" | "perCase"
>;

const part = (key: Part) => cell(`plan_cost_${key}`);
const ofPhase = (phase: "tirage" | "finishing") =>
  materialKeys.filter((key) => materials[key].phase === phase);
const tirageKeys = ofPhase("tirage");
const finishingKeys = ofPhase("finishing");
const labour = (hours: string) => times(input(`costs.${hours}`), input("costs.labour_perHour"));
const allMonths = plus(input("lees.lees_months"), input("lees.rest_months"));

const PARTS: readonly (readonly [Part, string, Expression])[] = [
  ["baseWine", "Base wine", times(cell("plan_tirageWine_L"), input("costs.baseWine_perL"))],
  [
    "tirageMaterials",
    "Materials for the tirage",
    builtin("SUM", range(costName(tirageKeys[0]!), costName(tirageKeys.at(-1)!))),
  ],
  ["tirageLabour", "Labour at tirage", labour("tirage_hours")],
  ["riddlingLabour", "Labour at riddling", labour("riddling_hours")],
  ["disgorgingLabour", "Labour at disgorging and dosage", labour("disgorging_hours")],
  [
    "finishingMaterials",
    "Materials for finishing, and others",
    builtin("SUM", range(costName(finishingKeys[0]!), costName(OTHER_KEYS.at(-1)!))),
  ],
  [
    "finishingWine",
    "Wine for dosage and topping up",
    times(cell("plan_finishingWine_L"), input("costs.baseWine_perL")),
  ],
  ["finishingLabour", "Labour at labelling and packing", labour("finishing_hours")],
  ["storage", "Storage", times(cell("plan_bottles"), input("costs.storage_perBottleMonth"), allMonths)],
  [
    "moneyTiedUp",
    "Money tied up until release",
    plus(
      mousse(
        "COST.HOLDING",
        plus(part("baseWine"), part("tirageMaterials"), part("tirageLabour")),
        allMonths,
        input("costs.interest_pct"),
      ),
      mousse(
        "COST.HOLDING",
        plus(
          part("finishingWine"),
          part("finishingMaterials"),
          part("riddlingLabour"),
          part("disgorgingLabour"),
        ),
        input("lees.rest_months"),
        input("costs.interest_pct"),
      ),
    ),
  ],
  [
    "duty",
    "Duty",
    times(
      cell("plan_finished_bottles"),
      plus(
        input("costs.duty_perBottle"),
        times(input("costs.duty_perL"), divided(input("batch.bottle_mL"), ML_PER_LITRE)),
      ),
    ),
  ],
];

export const costsSection: Section = (batch) => {
  const { plan } = batch;
  const { costs } = plan;
  const total = cell("plan_cost_total");
  const perBottle = (cost: number) => cost / plan.dosage.bottlesFinished;

  const row = (key: Part | "total", label: string, formula: Expression, style: CellStyle): Row => ({
    cells: [
      text(label, style === "total" ? "total" : "label"),
      resultCell({ name: `plan_cost_${key}`, value: costs[key], formula, format: FORMATS.two, style }),
      currencyUnit(batch),
      resultCell({
        key: `plan_cost_${key}_perBottle`,
        value: perBottle(costs[key]),
        format: FORMATS.three,
        style,
        formula: mousse("COST.BOTTLE", cell(`plan_cost_${key}`), cell("plan_finished_bottles"), 0),
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
          times(builtin("IFERROR", cell("plan_topUp_mL"), 0), cell("plan_finished_bottles")),
          ML_PER_LITRE,
        ),
      ),
      note: "dosage liqueur, topping up",
    }),
    { cells: [] },
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
      formula: mousse("COST.BOTTLE", total, cell("plan_finished_bottles"), 0),
      note: "those that remain pay for those that break",
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

/**
 * The parts that a batch's cost is made of. Each is rounded by itself and the total is their sum, so that the parts
 * shown add up to the total shown.
 */
import { OTHER_KEYS, materialKeys, materials } from "../../cellar/batch/materials";
import type { CostPlan } from "../../cellar/batch/plan-costs";
import { ML_PER_LITRE } from "../../cellar/units";
import { builtin, cell, divided, mousse, plus, range, times, type Expression } from "../formula";
import { costName } from "./materials";
import { input } from "./rows";

export type Part = Exclude<
  keyof CostPlan,
  | "lines"
  | "unpriced"
  | "tirageWineL"
  | "finishingWineL"
  | "total"
  | "saleableBottles"
  | "riddlingHours"
  | "perBottle"
  | "perCase"
>;

export const partName = (key: Part) => `plan_cost_${key}`;
export const partLabel = (key: Part) => `${partName(key)}_label`;

export const rounded = (amount: Expression) => builtin("ROUND", amount, input("costs.decimals"));

const part = (key: Part) => cell(partName(key));
const ofPhase = (phase: "tirage" | "finishing") =>
  materialKeys.filter((key) => materials[key].phase === phase);
const tirageKeys = ofPhase("tirage");
const finishingKeys = ofPhase("finishing");
const labour = (hours: Expression) => rounded(times(hours, input("costs.labour_perHour")));
const allMonths = plus(input("lees.lees_months"), input("lees.rest_months"));

export const PARTS: readonly (readonly [key: Part, label: string, formula: Expression])[] = [
  ["baseWine", "Base wine", rounded(times(cell("plan_tirageWine_L"), input("costs.baseWine_perL")))],
  [
    "tirageMaterials",
    "Materials for the tirage",
    builtin("SUM", range(costName(tirageKeys[0]!), costName(tirageKeys.at(-1)!))),
  ],
  ["tirageLabour", "Labour at tirage", labour(input("costs.tirage_hours"))],
  ["riddlingLabour", "Labour at riddling", labour(cell("plan_costs_riddling_hours"))],
  ["disgorgingLabour", "Labour at disgorging and dosage", labour(input("costs.disgorging_hours"))],
  [
    "finishingMaterials",
    "Materials for finishing, and others",
    builtin("SUM", range(costName(finishingKeys[0]!), costName(OTHER_KEYS.at(-1)!))),
  ],
  [
    "finishingWine",
    "Wine for dosage and topping up",
    rounded(times(cell("plan_finishingWine_L"), input("costs.baseWine_perL"))),
  ],
  ["finishingLabour", "Labour at labelling and packing", labour(input("costs.finishing_hours"))],
  [
    "storage",
    "Storage",
    rounded(times(cell("plan_bottles"), input("costs.storage_perBottleMonth"), allMonths)),
  ],
  [
    "moneyTiedUp",
    "Money tied up until release",
    rounded(
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
    ),
  ],
  [
    "duty",
    "Duty",
    rounded(
      times(
        cell("plan_finished_bottles"),
        plus(
          input("costs.duty_perBottle"),
          times(input("costs.duty_perL"), divided(input("batch.bottle_mL"), ML_PER_LITRE)),
        ),
      ),
    ),
  ],
];

export const PART_KEYS: readonly Part[] = PARTS.map(([key]) => key);

/**
 * Materials to order and what the batch costs. Packs are whole, so what is ordered is what is paid for.
 */
import { costPerBottle, holdingCost, packsToOrder, roundedMoney } from "../costing";
import { LITRES_PER_HL, ML_PER_LITRE } from "../units";
import { wholeUp } from "../whole";
import { required } from "./attempt";
import type { BatchInputs } from "./fields";
import { OTHER_KEYS, materialKeys, materials, type MaterialKey, type OtherKey } from "./materials";
import type { DosagePlan } from "./plan-dosage";
import type { RiddlingPlan } from "./plan-lees";
import type { TiragePlan } from "./plan-tirage";
import { unanswerable } from "../refusal";

const G_PER_KG = 1000;

export interface MaterialLine {
  readonly need: number;
  readonly packs: number;
  readonly cost: number;
}

export interface CostPlan {
  readonly lines: Readonly<Record<MaterialKey | OtherKey, MaterialLine>>;
  /** Materials, wine and labour that are needed and have no price; riddling, if its hours are not known. */
  readonly unpriced: number;
  readonly tirageWineL: number;
  readonly finishingWineL: number;
  readonly baseWine: number;
  readonly finishingWine: number;
  readonly tirageMaterials: number;
  readonly finishingMaterials: number;
  readonly tirageLabour: number;
  readonly riddlingLabour: number;
  readonly disgorgingLabour: number;
  readonly finishingLabour: number;
  readonly duty: number;
  readonly storage: number;
  readonly moneyTiedUp: number;
  readonly total: number;
  /** After breakage and after the stock held back. */
  readonly saleableBottles: number;
  readonly riddlingHours: number;
  readonly perBottle: number;
  readonly perCase: number;
}

function materialNeeds(
  { batch, baseWine, tirage: given, dosage: wanted }: BatchInputs,
  tirage: TiragePlan,
  dosage: DosagePlan,
) {
  const byRate = (rateGHl: number | null) => ((rateGHl ?? 0) * baseWine.volume_hL) / G_PER_KG;
  const finished = dosage.bottlesFinished;
  return {
    tirageSugar: tirage.sugarKg,
    yeast: byRate(given.yeast_gHL),
    nutrient: byRate(given.nutrient_gHL),
    riddlingAid: byRate(given.riddlingAid_gHL),
    bottles: tirage.bottles,
    crownCaps: tirage.bottles,
    bidules: tirage.bottles,
    dosageSugar: dosage.sugarKg,
    dosageLiqueur: wanted.kind === "concentrate" || wanted.kind === "sweet reserve wine" ? dosage.batchL : 0,
    corks: finished,
    muselets: finished,
    capsules: finished,
    labels: finished,
    cartons: wholeUp(finished / batch.bottlesPerCase),
  } satisfies Record<MaterialKey, number>;
}

export function planCosts(
  inputs: BatchInputs,
  tirage: TiragePlan,
  riddling: RiddlingPlan,
  dosage: DosagePlan,
): CostPlan {
  const { batch, lees, costs, materials: orders } = inputs;
  const rounded = (amount: number) => roundedMoney(amount, costs.decimals);
  const needs = {
    ...materialNeeds(inputs, tirage, dosage),
    other1: orders.other1.need,
    other2: orders.other2.need,
  };
  const keys = [...materialKeys, ...OTHER_KEYS];

  const lines = Object.fromEntries(
    keys.map((key): [string, MaterialLine] => {
      const { pack, spare_pct, price } = orders[key];
      const packs = required(`materials.${key}.pack`, pack, () => packsToOrder(needs[key], pack, spare_pct));
      return [key, { need: needs[key], packs, cost: rounded(packs * pack * (price ?? 0)) }];
    }),
  ) as CostPlan["lines"];
  const sumOf = (phase: "tirage" | "finishing") =>
    materialKeys
      .filter((key) => materials[key].phase === phase)
      .reduce((sum, key) => sum + lines[key].cost, 0);

  const labour = (hours: number) => rounded(hours * (costs.labour_perHour ?? 0));
  const riddlingHours = costs.riddling_hours ?? (riddling.hours === "" ? 0 : riddling.hours);
  const hours = costs.tirage_hours + riddlingHours + costs.disgorging_hours + costs.finishing_hours;
  const tirageLabour = labour(costs.tirage_hours);
  const riddlingLabour = labour(riddlingHours);
  const disgorgingLabour = labour(costs.disgorging_hours);
  const finishingLabour = labour(costs.finishing_hours);
  // all wine that goes in is paid for: tank and starter, both liqueurs, and what bottles are topped up with
  const topUpL = ((dosage.topUpMl ?? 0) * dosage.bottlesFinished) / ML_PER_LITRE;
  const tirageWineL = tirage.wineHl * LITRES_PER_HL + tirage.liqueurWineL;
  const finishingWineL = dosage.wineL + topUpL;
  const baseWineCost = rounded(tirageWineL * (costs.baseWine_perL ?? 0));
  const finishingWine = rounded(finishingWineL * (costs.baseWine_perL ?? 0));
  const tirageMaterials = sumOf("tirage");
  const finishingMaterials = sumOf("finishing") + lines.other1.cost + lines.other2.cost;
  const litresABottle = batch.bottle_mL / ML_PER_LITRE;
  const duty = rounded(dosage.bottlesFinished * (costs.duty_perBottle + costs.duty_perL * litresABottle));
  const allMonths = lees.lees_months + lees.rest_months;
  const storage = rounded(tirage.bottles * costs.storage_perBottleMonth * allMonths);
  const moneyTiedUp = rounded(
    holdingCost(baseWineCost + tirageMaterials + tirageLabour, allMonths, costs.interest_pct) +
      holdingCost(
        finishingWine + finishingMaterials + riddlingLabour + disgorgingLabour,
        lees.rest_months,
        costs.interest_pct,
      ),
  );
  const total =
    baseWineCost +
    finishingWine +
    tirageMaterials +
    finishingMaterials +
    tirageLabour +
    riddlingLabour +
    disgorgingLabour +
    finishingLabour +
    duty +
    storage +
    moneyTiedUp;
  if (dosage.bottlesFinished === 0) {
    required("costs.breakage_pct", costs.breakage_pct, () => {
      throw unanswerable("breakage_pct", costs.breakage_pct, "no bottle is left to sell; give less");
    });
  }
  const saleableBottles = dosage.bottlesFinished - costs.heldBack_bottles;
  if (saleableBottles < 1) {
    required("costs.heldBack_bottles", costs.heldBack_bottles, () => {
      throw unanswerable(
        "heldBack_bottles",
        costs.heldBack_bottles,
        `no bottle is left to sell; give less than ${dosage.bottlesFinished}`,
      );
    });
  }
  const perBottle = costPerBottle(total, saleableBottles, 0);
  return {
    lines,
    unpriced:
      keys.filter((key) => needs[key] > 0 && orders[key].price === null).length +
      (costs.baseWine_perL === null ? 1 : 0) +
      (costs.labour_perHour === null && hours > 0 ? 1 : 0) +
      (costs.riddling_hours === null && riddling.hours === "" ? 1 : 0),
    tirageWineL,
    finishingWineL,
    baseWine: baseWineCost,
    finishingWine,
    tirageMaterials,
    finishingMaterials,
    tirageLabour,
    riddlingLabour,
    disgorgingLabour,
    finishingLabour,
    duty,
    storage,
    moneyTiedUp,
    total,
    saleableBottles,
    riddlingHours,
    perBottle,
    perCase: perBottle * batch.bottlesPerCase,
  };
}

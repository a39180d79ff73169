/**
 * The lines of a cellar register as they are planned: what goes in and out of the tank, then of the bottles.
 */
import { LITRES_PER_HL, ML_PER_LITRE } from "../units";
import type { BatchInputs } from "./fields";
import type { BatchPlan } from "./plan";

export const REGISTER_KEYS = [
  "baseWine",
  "starter",
  "tirageSugar",
  "tirageLiqueurWine",
  "tirageLiqueur",
  "yeast",
  "nutrient",
  "riddlingAid",
  "fillingLoss",
  "filling",
  "breakage",
  "disgorging",
  "disgorgingLoss",
  "dosageSugar",
  "dosageWine",
  "dosageLiqueur",
  "dosageLeft",
  "topUp",
  "finished",
  "release",
] as const;
export type RegisterKey = (typeof REGISTER_KEYS)[number];

export interface RegisterLine {
  readonly date: number;
  /** In the line's own unit; "" where nothing goes that way. */
  readonly in: number | "";
  readonly out: number | "";
  /** hL in the tank, or in bottles once they are filled. */
  readonly volumeHl: number;
  readonly bottles: number | "";
}

type Amounts = { readonly in?: number; readonly out?: number };

export function registerLines(inputs: BatchInputs, plan: BatchPlan): Record<RegisterKey, RegisterLine> {
  const { baseWine, tirage: given, disgorging, costs: rates } = inputs;
  const { dates, tirage, dosage, costs } = plan;
  const { lines } = costs;
  const finished = dosage.bottlesFinished;
  const held = rates.heldBack_bottles;
  const hlOf = (bottles: number, ml: number) => (bottles * ml) / ML_PER_LITRE / LITRES_PER_HL;
  const litresOf = (mlABottle: number) => (mlABottle * finished) / ML_PER_LITRE;

  const line = (
    date: number,
    { in: comes = -1, out: goes = -1 }: Amounts,
    volumeHl: number,
    bottles: number | "",
  ) => ({
    date,
    in: comes < 0 ? ("" as const) : comes,
    out: goes < 0 ? ("" as const) : goes,
    volumeHl,
    bottles,
  });
  const tank = (amounts: Amounts, volumeHl: number) => line(dates.tirage, amounts, volumeHl, "");
  const cellar = (amounts: Amounts, volumeHl: number) => line(dates.disgorging, amounts, volumeHl, finished);

  const inBottles = hlOf(tirage.bottles, dosage.filledMl);
  const unbroken = hlOf(finished, dosage.filledMl);
  const afterLoss = unbroken - litresOf(disgorging.lost_mL) / LITRES_PER_HL;
  const dosed = afterLoss + litresOf(dosage.eachMl) / LITRES_PER_HL;
  const toppedUp = dosed + litresOf(dosage.topUpMl ?? 0) / LITRES_PER_HL;
  return {
    baseWine: tank({ in: baseWine.volume_hL }, baseWine.volume_hL),
    starter: tank({ in: tirage.starterL }, tirage.wineHl),
    tirageSugar: tank(
      { in: tirage.sugarKg },
      given.sugarForm === "dry sugar" ? tirage.volumeHl : tirage.wineHl,
    ),
    tirageLiqueurWine: tank(
      { in: tirage.liqueurWineL },
      given.sugarForm === "dry sugar" ? tirage.volumeHl : tirage.wineHl,
    ),
    tirageLiqueur: tank({ in: tirage.liqueurL }, tirage.volumeHl),
    yeast: tank({ in: lines.yeast.need }, tirage.volumeHl),
    nutrient: tank({ in: lines.nutrient.need }, tirage.volumeHl),
    riddlingAid: tank({ in: lines.riddlingAid.need }, tirage.volumeHl),
    fillingLoss: tank({ out: tirage.volumeHl - inBottles }, inBottles),
    filling: { ...tank({ out: inBottles }, inBottles), bottles: tirage.bottles },
    breakage: cellar({ out: tirage.bottles - finished }, unbroken),
    disgorging: cellar({ out: finished }, unbroken),
    disgorgingLoss: cellar({ out: litresOf(disgorging.lost_mL) }, afterLoss),
    dosageSugar: cellar({ in: dosage.sugarKg }, afterLoss),
    dosageWine: cellar({ in: dosage.wineL }, afterLoss),
    dosageLiqueur: cellar({ in: litresOf(dosage.eachMl) }, dosed),
    dosageLeft: cellar({ out: dosage.batchL - litresOf(dosage.eachMl) }, dosed),
    topUp: cellar({ in: litresOf(dosage.topUpMl ?? 0) }, toppedUp),
    finished: cellar({ in: finished }, toppedUp),
    release: line(dates.release, { out: costs.saleableBottles }, (toppedUp * held) / finished, held),
  };
}

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
  "dosageLiqueur",
  "topUp",
  "finished",
  "heldBack",
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

export function registerLines(inputs: BatchInputs, plan: BatchPlan): Record<RegisterKey, RegisterLine> {
  const { batch, baseWine, tirage: given, disgorging, costs } = inputs;
  const { dates, tirage, dosage } = plan;
  const { lines } = plan.costs;
  const hlOf = (bottles: number) => (bottles * batch.bottle_mL) / ML_PER_LITRE / LITRES_PER_HL;
  const inBottles = hlOf(tirage.bottles);
  const broken = tirage.bottles - dosage.bottlesFinished;
  const finished = dosage.bottlesFinished;
  const left = hlOf(finished);

  const tank = (key: "in" | "out", amount: number, volumeHl: number): RegisterLine => ({
    date: dates.tirage,
    in: key === "in" ? amount : "",
    out: key === "out" ? amount : "",
    volumeHl,
    bottles: "",
  });
  const cellar = (
    date: number,
    volumeHl: number,
    bottles: number,
    amounts: { in?: number; out?: number } = {},
  ): RegisterLine => ({ date, in: amounts.in ?? "", out: amounts.out ?? "", volumeHl, bottles });
  const litresOf = (mlABottle: number) => (mlABottle * finished) / ML_PER_LITRE;

  return {
    baseWine: tank("in", baseWine.volume_hL, baseWine.volume_hL),
    starter: tank("in", tirage.starterL, tirage.wineHl),
    tirageSugar: tank(
      "in",
      tirage.sugarKg,
      given.sugarForm === "dry sugar" ? tirage.volumeHl : tirage.wineHl,
    ),
    tirageLiqueur: tank("in", tirage.liqueurL, tirage.volumeHl),
    yeast: tank("in", lines.yeast.need, tirage.volumeHl),
    nutrient: tank("in", lines.nutrient.need, tirage.volumeHl),
    riddlingAid: tank("in", lines.riddlingAid.need, tirage.volumeHl),
    filling: { ...tank("out", inBottles, inBottles), bottles: tirage.bottles },
    fillingLoss: tank("out", tirage.volumeHl - inBottles, inBottles),
    breakage: cellar(dates.disgorging, left, finished, { out: broken }),
    disgorging: cellar(dates.disgorging, left, finished, { out: finished }),
    disgorgingLoss: cellar(dates.disgorging, left - litresOf(disgorging.lost_mL) / LITRES_PER_HL, finished, {
      out: litresOf(disgorging.lost_mL),
    }),
    dosageSugar: cellar(dates.disgorging, left - litresOf(disgorging.lost_mL) / LITRES_PER_HL, finished, {
      in: dosage.sugarKg,
    }),
    dosageLiqueur: cellar(
      dates.disgorging,
      left - (litresOf(disgorging.lost_mL) - litresOf(dosage.eachMl)) / LITRES_PER_HL,
      finished,
      { in: litresOf(dosage.eachMl) },
    ),
    topUp: cellar(
      dates.disgorging,
      left -
        (litresOf(disgorging.lost_mL) - litresOf(dosage.eachMl) - litresOf(dosage.topUpMl ?? 0)) /
          LITRES_PER_HL,
      finished,
      { in: litresOf(dosage.topUpMl ?? 0) },
    ),
    finished: cellar(dates.disgorging, left, finished, { in: finished }),
    heldBack: cellar(
      dates.release,
      hlOf(finished - costs.heldBack_bottles),
      finished - costs.heldBack_bottles,
      {
        out: costs.heldBack_bottles,
      },
    ),
    release: cellar(
      dates.release,
      hlOf(finished - costs.heldBack_bottles),
      finished - costs.heldBack_bottles,
      {
        out: finished - costs.heldBack_bottles,
      },
    ),
  };
}

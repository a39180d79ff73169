/**
 * What each line of the register says and how it is worked out.
 */
import type { RegisterKey } from "../../cellar/batch/register";
import { LITRES_PER_HL, ML_PER_LITRE } from "../../cellar/units";
import { cell, choose, divided, iff, isNumber, minus, times, type Expression } from "../formula";
import { input } from "../plan/rows";

export interface LineRules {
  readonly operation: string;
  readonly product: string;
  readonly unit: "hL" | "L" | "kg" | "bottles";
  readonly way: "in" | "out";
  readonly date: Expression;
  readonly amount: Expression;
  readonly volumeHl: Expression;
  readonly bottles?: Expression;
  /** The plan's own cell for what really came of it; others are filled in here. */
  readonly actual?: string;
  readonly note?: string;
}

const tirageDay = input("batch.tirageDate");
const disgorgingDay = cell("plan_disgorging");
const releaseDay = cell("plan_release");
const wine = cell("plan_wineWithStarter_hL");
const filledWine = cell("plan_volume_hL");
const filled = cell("plan_bottles");
const finished = cell("plan_finished_bottles");
const saleable = cell("plan_saleable_bottles");

const hlOf = (bottles: Expression) =>
  divided(divided(times(bottles, input("batch.bottle_mL")), ML_PER_LITRE), LITRES_PER_HL);
const litresOf = (mlABottle: Expression) => divided(times(mlABottle, finished), ML_PER_LITRE);
const topUp = iff(isNumber(cell("plan_topUp_mL")), cell("plan_topUp_mL"), 0);
const lost = litresOf(input("disgorging.lost_mL"));
const dosed = litresOf(cell("plan_dosage_mL"));
const toppedUp = litresOf(topUp);
const without = (litres: Expression) => minus(hlOf(finished), divided(litres, LITRES_PER_HL));

const tank = (
  operation: string,
  product: string,
  unit: LineRules["unit"],
  amount: Expression,
  volumeHl: Expression = filledWine,
  more: Partial<LineRules> = {},
): LineRules => ({ operation, product, unit, way: "in", date: tirageDay, amount, volumeHl, ...more });
const cellar = (
  operation: string,
  product: string,
  unit: LineRules["unit"],
  way: LineRules["way"],
  amount: Expression,
  volumeHl: Expression,
  more: Partial<LineRules> = {},
): LineRules => ({
  operation,
  product,
  unit,
  way,
  date: disgorgingDay,
  amount,
  volumeHl,
  bottles: finished,
  ...more,
});

export const registerRules: Readonly<Record<RegisterKey, LineRules>> = {
  baseWine: tank(
    "Base wine into the tirage tank",
    "base wine",
    "hL",
    input("baseWine.volume_hL"),
    input("baseWine.volume_hL"),
  ),
  starter: tank("Yeast starter added", "starter", "L", cell("plan_starter_L"), wine),
  tirageSugar: tank(
    "Sugar for the tirage",
    "sucrose",
    "kg",
    cell("plan_tirageSugar_kg"),
    choose(input("tirage.sugarForm"), [
      ["dry sugar", filledWine],
      ["liqueur", wine],
    ]),
    { actual: "actual_tirageSugar_kg", note: "into the tank, or into the liqueur below" },
  ),
  tirageLiqueur: tank("Tirage liqueur mixed in", "liqueur", "L", cell("plan_tirageLiqueur_L"), filledWine, {
    note: "0 with dry sugar",
  }),
  yeast: tank("Yeast added", "yeast", "kg", cell("plan_yeast_need")),
  nutrient: tank("Nutrient added", "nutrient", "kg", cell("plan_nutrient_need")),
  riddlingAid: tank("Riddling aid added", "riddling aid", "kg", cell("plan_riddlingAid_need")),
  filling: tank("Filled into bottles", "wine for second fermentation", "hL", hlOf(filled), hlOf(filled), {
    way: "out",
    bottles: filled,
    note: "from here on the volume is that in bottles",
  }),
  fillingLoss: tank("Lost at filling", "wine", "hL", minus(filledWine, hlOf(filled)), hlOf(filled), {
    way: "out",
  }),
  breakage: cellar(
    "Broken on the lees",
    "bottles",
    "bottles",
    "out",
    minus(filled, finished),
    hlOf(finished),
    {
      actual: "actual_bottlesBroken",
      note: "day of each loss: as it happens",
    },
  ),
  disgorging: cellar("Disgorged", "bottles", "bottles", "out", finished, hlOf(finished), {
    actual: "actual_bottlesDisgorged",
    note: "out of the stock on the lees",
  }),
  disgorgingLoss: cellar("Wine lost at disgorging", "wine and sediment", "L", "out", lost, without(lost)),
  dosageSugar: cellar(
    "Sugar for the dosage liqueur",
    "sucrose",
    "kg",
    "in",
    cell("plan_dosageSugar_kg"),
    without(lost),
    { note: "with reserve; 0 unless sugar in wine" },
  ),
  dosageLiqueur: cellar("Dosage", "dosage liqueur", "L", "in", dosed, without(minus(lost, dosed))),
  topUp: cellar("Topped up", "wine", "L", "in", toppedUp, without(minus(minus(lost, dosed), toppedUp))),
  finished: cellar("Finished wine in bottles", "sparkling wine", "bottles", "in", finished, hlOf(finished), {
    actual: "actual_bottlesFinished",
  }),
  heldBack: cellar(
    "Held back, not for sale",
    "sparkling wine",
    "bottles",
    "out",
    input("costs.heldBack_bottles"),
    hlOf(saleable),
    { date: releaseDay, bottles: saleable },
  ),
  release: cellar("Released for sale", "sparkling wine", "bottles", "out", saleable, hlOf(saleable), {
    date: releaseDay,
    bottles: saleable,
  }),
};

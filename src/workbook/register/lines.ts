/**
 * What each line of the register says and how it is worked out.
 */
import type { RegisterKey } from "../../cellar/batch/register";
import { LITRES_PER_HL, ML_PER_LITRE } from "../../cellar/units";
import { cell, choose, divided, iff, isNumber, minus, plus, times, type Expression } from "../formula";
import { filledMl, input } from "../plan/rows";

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
const wine = cell("plan_wineWithStarter_hL");
const filledWine = cell("plan_volume_hL");
const filled = cell("plan_bottles");
const finished = cell("plan_finished_bottles");

const hl = (litres: Expression) => divided(litres, LITRES_PER_HL);
const hlOf = (bottles: Expression) => hl(divided(times(bottles, filledMl), ML_PER_LITRE));
const litresOf = (mlABottle: Expression) => divided(times(mlABottle, finished), ML_PER_LITRE);
const lost = litresOf(input("disgorging.lost_mL"));
const dosed = litresOf(cell("plan_dosage_mL"));
const toppedUp = litresOf(iff(isNumber(cell("plan_topUp_mL")), cell("plan_topUp_mL"), 0));
/** The volume of the line before, with what this line adds or takes. */
const before = (key: RegisterKey) => cell(`register_${key}_after_hL`);
/** Dry sugar swells the tank at once, sugar in a liqueur with the liqueur. */
const withSugar = choose(input("tirage.sugarForm"), [
  ["dry sugar", filledWine],
  ["liqueur", wine],
]);

const tank = (
  operation: string,
  product: string,
  unit: LineRules["unit"],
  amount: Expression,
  more: Partial<LineRules> = {},
): LineRules => ({
  operation,
  product,
  unit,
  way: "in",
  date: tirageDay,
  amount,
  volumeHl: filledWine,
  ...more,
});
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
  baseWine: tank("Base wine into the tirage tank", "base wine", "hL", input("baseWine.volume_hL"), {
    volumeHl: input("baseWine.volume_hL"),
  }),
  starter: tank("Yeast starter added", "starter", "L", cell("plan_starter_L"), { volumeHl: wine }),
  tirageSugar: tank("Sugar for the tirage", "sucrose", "kg", cell("plan_tirageSugar_kg"), {
    volumeHl: withSugar,
    actual: "actual_tirageSugar_kg",
    note: "into the tank, or into the liqueur",
  }),
  tirageLiqueurWine: tank("Wine into the tirage liqueur", "wine", "L", cell("plan_liqueurWine_L"), {
    volumeHl: withSugar,
    note: "beside the tank; 0 with dry sugar",
  }),
  tirageLiqueur: tank("Tirage liqueur mixed in", "liqueur", "L", cell("plan_tirageLiqueur_L"), {
    note: "0 with dry sugar",
  }),
  yeast: tank("Yeast added", "yeast", "kg", cell("plan_yeast_need")),
  nutrient: tank("Nutrient added", "nutrient", "kg", cell("plan_nutrient_need")),
  riddlingAid: tank("Riddling aid added", "riddling aid", "kg", cell("plan_riddlingAid_need")),
  fillingLoss: tank("Lost at filling", "wine", "hL", minus(filledWine, hlOf(filled)), {
    way: "out",
    volumeHl: hlOf(filled),
  }),
  filling: tank("Filled into bottles", "wine for second fermentation", "hL", hlOf(filled), {
    way: "out",
    volumeHl: hlOf(filled),
    bottles: filled,
    note: "from here on the volume is that in bottles",
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
  disgorgingLoss: cellar(
    "Wine lost at disgorging",
    "wine and sediment",
    "L",
    "out",
    lost,
    minus(before("disgorging"), hl(lost)),
  ),
  dosageSugar: cellar(
    "Sugar into the dosage liqueur",
    "sucrose",
    "kg",
    "in",
    cell("plan_dosageSugar_kg"),
    before("disgorgingLoss"),
    { note: "beside the bottles, with reserve; 0 unless sugar in wine" },
  ),
  dosageWine: cellar(
    "Wine into the dosage liqueur",
    "wine",
    "L",
    "in",
    cell("plan_dosageWine_L"),
    before("dosageSugar"),
    { note: "beside the bottles, with reserve; 0 unless sugar in wine" },
  ),
  dosageLiqueur: cellar("Dosage", "dosage liqueur", "L", "in", dosed, plus(before("dosageWine"), hl(dosed))),
  dosageLeft: cellar(
    "Dosage liqueur left over",
    "dosage liqueur",
    "L",
    "out",
    minus(cell("plan_dosageBatch_L"), dosed),
    before("dosageLiqueur"),
    { note: "the reserve; not in these bottles" },
  ),
  topUp: cellar("Topped up", "wine", "L", "in", toppedUp, plus(before("dosageLeft"), hl(toppedUp))),
  finished: cellar("Finished wine in bottles", "sparkling wine", "bottles", "in", finished, before("topUp"), {
    actual: "actual_bottlesFinished",
  }),
  release: cellar(
    "Released for sale",
    "sparkling wine",
    "bottles",
    "out",
    cell("plan_saleable_bottles"),
    divided(times(before("finished"), input("costs.heldBack_bottles")), finished),
    {
      date: cell("plan_release"),
      bottles: input("costs.heldBack_bottles"),
      note: "what is held back stays in stock",
    },
  ),
};

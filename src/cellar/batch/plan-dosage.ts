/**
 * Disgorging, dosage and what the label may say.
 */
import { ATMOSPHERE_BAR } from "../constants";
import { freezingPointC, spaceMl } from "../disgorging";
import { batchLiqueurL, bottlesFromStock, dosageMl, dosedAlcoholVol, dosedSugarGL, topUpMl } from "../dosage";
import { domains, isWithin } from "../domains";
import { energyPer100Ml, labelAlcoholVol } from "../label";
import { pressureClass } from "../rules/pressure-classes";
import { liqueurRecipe } from "../sugar";
import {
  bandOfTerm,
  permittedTerms,
  sweetnessMarginGL,
  sweetnessVerdict,
  type SweetnessVerdict,
} from "../sweetness";
import {
  excessBar,
  invertGL,
  invertToSucrose,
  sucroseGL,
  sucroseToInvert,
  type ExcessBar,
  type InvertGL,
} from "../units";
import { wholeDown } from "../whole";
import { UnplannableBatch, orNull, required } from "./attempt";
import type { BatchInputs } from "./fields";
import type { TiragePlan } from "./plan-tirage";

/** What stands in place of a verdict or margin where no sweetness term was chosen. */
export const NO_TERM = "no term chosen";

/** What stands in place of a number of bottles where no stock limits them. */
export const UNLIMITED = "as needed";

export interface DosagePlan {
  readonly bottlesFinished: number;
  readonly freezingPointC: number;
  readonly filledMl: number;
  readonly spaceMl: number | null;
  readonly liqueurGL: InvertGL;
  readonly liqueurVol: number;
  readonly eachMl: number;
  readonly topUpMl: number | null;
  readonly batchL: number;
  readonly sugarKg: number;
  readonly wineL: number;
  /** Bottles that a limited stock can dose; null where nothing limits it. */
  readonly stockBottles: number | null;
  readonly sugarGL: InvertGL;
  readonly alcoholVol: number;
  readonly alcoholRiseVol: number;
  readonly sugarAdded: boolean;
  readonly terms: readonly string[];
  readonly termVerdict: SweetnessVerdict | null;
  readonly termMarginGL: number | null;
  /** After disgorging: expected, and the low end of the spread. */
  readonly pressureAt20: ExcessBar;
  readonly lowPressureAt20: ExcessBar;
  readonly pressureClass: string | null;
  readonly labelVol: number;
  readonly energyKj: number;
  readonly energyKcal: number;
}

export function planDosage(inputs: BatchInputs, tirage: TiragePlan): DosagePlan {
  const { batch, baseWine, disgorging, dosage, costs } = inputs;
  const bottlesFinished = wholeDown(tirage.bottles * (1 - costs.breakage_pct / 100));
  const residual = invertGL(dosage.residual_gL);
  const filledMl = disgorging.filled_mL ?? batch.bottle_mL;
  const space = orNull(() => spaceMl(filledMl, disgorging.lost_mL, batch.bottle_mL));

  const dosed = dosage.kind !== "none";
  const fromSugar = dosage.kind === "sugar in wine";
  const strength = dosage.strength_gL ?? 0;
  const carrier = invertToSucrose(invertGL(dosage.carrier_gL));
  const recipeFor = (litres: number) =>
    required("dosage.strength_gL", dosage.strength_gL, () =>
      liqueurRecipe(litres, sucroseGL(strength), carrier),
    );

  const liqueurGL = fromSugar ? sucroseToInvert(sucroseGL(strength)) : invertGL(dosed ? strength : 0);
  const tooDry = dosed && dosage.target_gL! < residual;
  const [doseField, doseGiven] = tooDry
    ? (["dosage.target_gL", dosage.target_gL] as const)
    : (["dosage.strength_gL", dosage.strength_gL] as const);
  const eachMl = dosed
    ? required(doseField, doseGiven, () => dosageMl(batch.bottle_mL, residual, dosage.target_gL!, liqueurGL))
    : 0;
  const liqueurVol = dosed ? dosage.liqueur_vol! * (fromSugar ? recipeFor(1).carrierL : 1) : 0;
  const batchL = batchLiqueurL(bottlesFinished, eachMl, dosage.reserve_pct);
  const recipe = fromSugar ? recipeFor(batchL) : { sugarKg: 0, carrierL: 0 };

  const sugarGL = invertGL(dosed ? dosedSugarGL(batch.bottle_mL, residual, eachMl, liqueurGL) : residual);
  const alcoholVol = dosed
    ? dosedAlcoholVol(batch.bottle_mL, tirage.alcoholAfterVol, eachMl, liqueurVol)
    : tirage.alcoholAfterVol;
  const sugarAdded = eachMl > 0;
  const band = dosage.term === "" ? null : bandOfTerm(dosage.term, batch.rules, "dosage.term");
  const afterLoss = (before: ExcessBar) => excessBar(before - disgorging.pressureLost_bar);
  const pressureAt20 = afterLoss(tirage.pressures.at20.expected);
  if (pressureAt20 < -ATMOSPHERE_BAR) {
    throw new UnplannableBatch([
      {
        field: "disgorging.pressureLost_bar",
        given: disgorging.pressureLost_bar,
        remedy: `only ${(pressureAt20 + disgorging.pressureLost_bar).toFixed(2)} bar are there at 20 °C; give less`,
      },
    ]);
  }
  const energy = (unit: "kJ" | "kcal") =>
    energyPer100Ml(alcoholVol, sugarGL, baseWine.acidity_gL ?? 0, 0, unit);
  return {
    bottlesFinished,
    freezingPointC: freezingPointC(tirage.alcoholAfterVol, residual),
    filledMl,
    spaceMl: space,
    liqueurGL,
    liqueurVol,
    eachMl,
    topUpMl: space === null ? null : orNull(() => topUpMl(space, eachMl)),
    batchL,
    sugarKg: recipe.sugarKg,
    wineL: recipe.carrierL,
    stockBottles:
      dosage.stock_L === null || eachMl === 0
        ? null
        : required("dosage.stock_L", dosage.stock_L, () =>
            bottlesFromStock(dosage.stock_L!, batch.bottle_mL, residual, dosage.target_gL!, liqueurGL),
          ),
    sugarGL,
    alcoholVol,
    alcoholRiseVol: alcoholVol - tirage.alcoholAfterVol,
    sugarAdded,
    terms: permittedTerms(sugarGL, sugarAdded, batch.rules, batch.language),
    termVerdict: band && sweetnessVerdict(band, sugarGL, sugarAdded),
    termMarginGL: band && sweetnessMarginGL(band, sugarGL),
    pressureAt20,
    lowPressureAt20: afterLoss(tirage.pressures.at20.low),
    pressureClass: isWithin(domains.pressureBar, pressureAt20)
      ? pressureClass(pressureAt20, batch.bottle_mL, batch.rules)
      : null,
    labelVol: dosage.label_vol ?? labelAlcoholVol(alcoholVol),
    energyKj: energy("kJ"),
    energyKcal: energy("kcal"),
  };
}

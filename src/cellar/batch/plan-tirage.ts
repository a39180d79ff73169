/**
 * Tirage: dose, what to weigh and pour, bottles, alcohol and pressure.
 */
import {
  DEFAULT_SPREAD,
  doseForPressure,
  pressureRange,
  type Fill,
  type PressureRange,
} from "../carbonation";
import { alcoholAfter, missingSugar, starterVolumeL } from "../fermentation";
import { pressureAt20 } from "../gauge-table";
import { liqueurRecipe } from "../sugar";
import { bottlesFilled, tirageLiqueurL, tirageSugarKg, tirageVolumeHl } from "../tirage";
import {
  LITRES_PER_HL,
  excessBar,
  invertGL,
  invertToSucrose,
  sucroseGL,
  type ExcessBar,
  type SucroseGL,
} from "../units";
import { unanswerable } from "../refusal";
import { required } from "./attempt";
import type { BatchInputs } from "./fields";

export interface TiragePlan {
  readonly dose: SucroseGL;
  readonly starterL: number;
  /** Base wine and starter together. */
  readonly wineHl: number;
  /** Dry sugar, or the sugar in the liqueur. */
  readonly sugarKg: number;
  readonly liqueurL: number;
  /** Wine to dissolve the liqueur's sugar in, on top of the base wine. */
  readonly liqueurWineL: number;
  readonly volumeHl: number;
  readonly bottles: number;
  readonly totalAlcoholBeforeVol: number;
  readonly alcoholAfterVol: number;
  readonly alcoholRiseVol: number;
  readonly pressures: {
    readonly cellar: PressureRange;
    readonly at10: PressureRange;
    readonly at20: PressureRange;
    readonly hottest: PressureRange;
  };
  /** What the official table makes of the pressure expected at 10 °C, for comparison with the physics. */
  readonly at20ByTable: ExcessBar;
}

/** What the batch's bottles hold besides the dose. */
export const wineOf = ({ baseWine, tirage }: BatchInputs): Omit<Fill, "dose"> => ({
  baseAlcoholVol: baseWine.alcohol_vol,
  yieldShare: tirage.yield,
  headspacePct: tirage.headspace_pct,
  dissolvedCo2GL: baseWine.dissolvedCO2_gL,
});

export function planTirage(inputs: BatchInputs): TiragePlan {
  const { batch, baseWine, tirage, disgorging } = inputs;
  const wineSugar = invertGL(baseWine.sugar_gL);
  const wine = wineOf(inputs);
  const goalField = tirage.goal === "pressure" ? "tirage.pressure_bar" : "tirage.dose_gL";
  const goalValue = tirage.goal === "pressure" ? tirage.pressure_bar : tirage.dose_gL;
  const dose = required(goalField, goalValue, () =>
    tirage.goal === "pressure"
      ? doseForPressure(excessBar(tirage.pressure_bar!), tirage.pressureAt_C!, wine)
      : sucroseGL(tirage.dose_gL!),
  );
  // before anything else, or a liqueur would be blamed for the wine's own sugar
  required(goalField, goalValue, () => {
    const own = invertToSucrose(wineSugar);
    if (tirage.goal === "dose" || dose >= own) return missingSugar(dose, wineSugar);
    throw unanswerable(
      "pressure_bar",
      goalValue,
      `that takes ${dose.toFixed(2)} g/L of sugar, and the wine already holds ${own.toFixed(2)} g/L as sucrose; ` +
        "aim for more pressure or take a drier wine",
    );
  });
  const fill: Fill = { ...wine, dose };

  const starterL =
    tirage.starter_Mcells_mL === null
      ? 0
      : required("tirage.starter_Mcells_mL", tirage.starter_Mcells_mL, () =>
          starterVolumeL(baseWine.volume_hL, tirage.starterTarget_Mcells_mL!, tirage.starter_Mcells_mL!),
        );
  const wineHl = baseWine.volume_hL + starterL / LITRES_PER_HL;

  const byLiqueur = tirage.sugarForm === "liqueur";
  const strength = sucroseGL(tirage.liqueur_gL ?? 0);
  const liqueurL = byLiqueur
    ? required("tirage.liqueur_gL", tirage.liqueur_gL, () =>
        tirageLiqueurL(wineHl, dose, strength, wineSugar),
      )
    : 0;
  const recipe = byLiqueur
    ? required("tirage.liqueur_gL", tirage.liqueur_gL, () =>
        liqueurRecipe(liqueurL, strength, invertToSucrose(wineSugar)),
      )
    : { sugarKg: tirageSugarKg(wineHl, dose, wineSugar), carrierL: 0 };

  const volumeHl = tirageVolumeHl(
    baseWine.volume_hL,
    dose,
    byLiqueur ? strength : "dry",
    wineSugar,
    starterL,
  );
  const filledMl = disgorging.filled_mL ?? batch.bottle_mL;
  const bottles = bottlesFilled(volumeHl, filledMl, tirage.loss_pct);
  if (bottles < 1) {
    required("baseWine.volume_hL", baseWine.volume_hL, () => {
      throw unanswerable("volume_hL", baseWine.volume_hL, `give enough to fill a bottle of ${filledMl} mL`);
    });
  }

  const totalAlcoholBeforeVol = alcoholAfter(baseWine.alcohol_vol, invertToSucrose(wineSugar), wineSugar);
  const alcoholAfterVol = alcoholAfter(baseWine.alcohol_vol, dose, wineSugar);
  const range = (temperatureC: number) => pressureRange(fill, temperatureC, DEFAULT_SPREAD);
  const at10 = range(10);
  return {
    dose,
    starterL,
    wineHl,
    sugarKg: recipe.sugarKg,
    liqueurL,
    liqueurWineL: recipe.carrierL,
    volumeHl,
    bottles,
    totalAlcoholBeforeVol,
    alcoholAfterVol,
    alcoholRiseVol: alcoholAfterVol - totalAlcoholBeforeVol,
    pressures: { cellar: range(tirage.cellar_C), at10, at20: range(20), hottest: range(tirage.hottest_C) },
    at20ByTable: pressureAt20(at10.expected, 10),
  };
}

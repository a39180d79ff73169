/**
 * Section Tirage: choices, then what to weigh and pour, then pressure.
 */
import { LITRES_PER_HL } from "../../cellar/units";
import {
  cell,
  choose,
  divided,
  iff,
  isBlank,
  minus,
  mousse,
  nth,
  numberOf,
  plus,
  type Expression,
} from "../formula";
import { pressureRows } from "./pressures";
import {
  FORMATS,
  filledMl,
  heading,
  input,
  inputRow,
  resultRow,
  wineAndBottle,
  type Section,
  gap,
} from "./rows";

const dose = cell("plan_dose_gL");
const wine = cell("plan_wineWithStarter_hL");
const wineSugar = input("baseWine.sugar_gL");
const strength = input("tirage.liqueur_gL");
/** The sugar comes dry or as a liqueur; the sheet's own cell decides. */
const bySugarForm = (dry: Expression | number, liqueur: Expression) =>
  choose(input("tirage.sugarForm"), [
    ["dry sugar", dry],
    ["liqueur", liqueur],
  ]);
const CHOICES = [
  "goal",
  "pressure_bar",
  "pressureAt_C",
  "dose_gL",
  "sugarForm",
  "liqueur_gL",
  "loss_pct",
  "starterTarget_Mcells_mL",
  "starter_Mcells_mL",
  "yeast_gHL",
  "nutrient_gHL",
  "riddlingAid_gHL",
  "yield",
  "headspace_pct",
  "cellar_C",
  "hottest_C",
  "glassRating_bar",
] as const;

export const tirageSection: Section = (batch) => {
  const { tirage } = batch.plan;
  const liqueurRecipe = mousse(
    "DOSAGE.RECIPE",
    cell("plan_tirageLiqueur_L"),
    strength,
    mousse("SUGAR.SUCROSE", wineSugar),
  );
  return [
    ...heading("Tirage"),
    ...CHOICES.map((key) => inputRow(`tirage.${key}`, batch)),
    gap,
    resultRow({
      name: "plan_dose_gL",
      label: "Dose in the filled bottle",
      unit: "g/L sucrose",
      format: FORMATS.two,
      value: tirage.dose,
      formula: choose(input("tirage.goal"), [
        [
          "pressure",
          mousse(
            "TIRAGE.DOSE",
            numberOf(input("tirage.pressure_bar")),
            numberOf(input("tirage.pressureAt_C")),
            input("baseWine.alcohol_vol"),
            ...wineAndBottle,
          ),
        ],
        ["dose", numberOf(input("tirage.dose_gL"))],
      ]),
      note: "fermentable sugar, the wine's own counted",
    }),
    resultRow({
      name: "plan_starter_L",
      label: "Yeast starter",
      unit: "L",
      format: FORMATS.one,
      value: tirage.starterL,
      formula: iff(
        isBlank(input("tirage.starter_Mcells_mL")),
        0,
        mousse(
          "TIRAGE.STARTER",
          input("baseWine.volume_hL"),
          input("tirage.starterTarget_Mcells_mL"),
          input("tirage.starter_Mcells_mL"),
        ),
      ),
      note: "counted as wine of the same sugar",
    }),
    resultRow({
      name: "plan_wineWithStarter_hL",
      label: "Base wine with starter",
      unit: "hL",
      format: FORMATS.two,
      value: tirage.wineHl,
      formula: plus(input("baseWine.volume_hL"), divided(cell("plan_starter_L"), LITRES_PER_HL)),
    }),
    resultRow({
      name: "plan_tirageLiqueur_L",
      label: "Tirage liqueur to mix in",
      unit: "L",
      format: FORMATS.one,
      value: tirage.liqueurL,
      formula: bySugarForm(0, mousse("TIRAGE.LIQUEUR", wine, dose, strength, wineSugar)),
      note: "0 with dry sugar",
    }),
    resultRow({
      name: "plan_tirageSugar_kg",
      label: "Sugar to weigh",
      unit: "kg",
      format: FORMATS.two,
      value: tirage.sugarKg,
      style: "key",
      formula: bySugarForm(mousse("TIRAGE.SUGAR", wine, dose, wineSugar), nth(liqueurRecipe, 1)),
      note: "dry, or in the liqueur",
    }),
    resultRow({
      name: "plan_liqueurWine_L",
      label: "Wine to dissolve it in",
      unit: "L",
      format: FORMATS.one,
      value: tirage.liqueurWineL,
      formula: bySugarForm(0, nth(liqueurRecipe, 2)),
      note: "liqueur only; on top of the base wine above",
    }),
    resultRow({
      name: "plan_volume_hL",
      label: "Volume to put in bottles",
      unit: "hL",
      format: FORMATS.two,
      value: tirage.volumeHl,
      formula: mousse(
        "TIRAGE.VOLUME",
        input("baseWine.volume_hL"),
        dose,
        bySugarForm(0, strength),
        wineSugar,
        cell("plan_starter_L"),
      ),
    }),
    resultRow({
      name: "plan_bottles",
      label: "Bottles filled",
      unit: "bottles",
      format: FORMATS.whole,
      value: tirage.bottles,
      style: "key",
      formula: mousse("TIRAGE.BOTTLES", cell("plan_volume_hL"), filledMl, input("tirage.loss_pct")),
      note: "crown caps and bidules: as many, and the spare below",
    }),
    resultRow({
      name: "plan_totalAlcoholBefore_vol",
      label: "Total alcohol of the base wine",
      unit: "% vol",
      format: FORMATS.two,
      value: tirage.totalAlcoholBeforeVol,
      formula: mousse(
        "TIRAGE.ALCOHOL",
        input("baseWine.alcohol_vol"),
        mousse("SUGAR.SUCROSE", wineSugar),
        wineSugar,
      ),
      note: "with its own sugar fermented",
    }),
    resultRow({
      name: "plan_alcoholAfter_vol",
      label: "Alcohol after the second fermentation",
      unit: "% vol",
      format: FORMATS.two,
      value: tirage.alcoholAfterVol,
      formula: mousse("TIRAGE.ALCOHOL", input("baseWine.alcohol_vol"), dose, wineSugar),
    }),
    resultRow({
      name: "plan_alcoholRise_vol",
      label: "Rise of alcohol at tirage",
      unit: "% vol",
      format: FORMATS.two,
      value: tirage.alcoholRiseVol,
      formula: minus(cell("plan_alcoholAfter_vol"), cell("plan_totalAlcoholBefore_vol")),
    }),
    ...pressureRows(batch),
  ];
};

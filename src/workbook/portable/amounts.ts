/**
 * Sugar, liqueurs, volumes, bottles, dosage, label and cost: mass balances that need no more than arithmetic.
 */
import { CRYOSCOPIC_CONSTANT } from "../../cellar/disgorging";
import { ETHANOL_G_PER_MOL, HEXOSE_G_PER_MOL, WATER_KG_PER_L } from "../../cellar/constants";
import { MONTHS_PER_YEAR } from "../../cellar/costing";
import { ENERGY_PER_G } from "../../cellar/label";
import { LITRES_PER_HL, ML_PER_LITRE } from "../../cellar/units";
import {
  builtin,
  choose,
  divided,
  equals,
  iff,
  minus,
  noAnswer,
  operation,
  plus,
  times,
  type Expression,
  type Operand,
} from "../formula";
import type { Form, Steps } from "./form";

const unless = (refused: Expression, answer: Operand) => iff(refused, noAnswer, answer);
const below = (left: Operand, right: Operand) => operation(left, "<", right);
const above = (left: Operand, right: Operand) => operation(left, ">", right);

/** The tail of a float is not a piece: as the calculation module counts. */
const tail = (quotient: Expression) => builtin("MIN", times(quotient, 1e-12), 1e-6);
const wholeDown = (quotient: Expression) => builtin("INT", plus(quotient, tail(quotient)));
const wholeUp = (quotient: Expression) => minus(0, builtin("INT", minus(0, minus(quotient, tail(quotient)))));

const sucroseOf = (invert: Expression, { constant }: Steps) => divided(invert, constant("inv"));
const besideSugar = (strength: Operand, { constant }: Steps) =>
  minus(1000, times(strength, constant("displaced")));
const missing = (dose: Expression, wineSugar: Expression, steps: Steps) =>
  steps.step("Sugar that is missing, as sucrose", "g/L", minus(dose, sucroseOf(wineSugar, steps)));

const sugar: Form = ([volume, dose, wineSugar], steps) => {
  const lacking = missing(dose!, wineSugar!, steps);
  return unless(
    below(lacking, 0),
    divided(times(volume!, LITRES_PER_HL, lacking), besideSugar(dose!, steps)),
  );
};

const liqueur: Form = ([volume, dose, strength, wineSugar], steps) => {
  const lacking = missing(dose!, wineSugar!, steps);
  return iff(
    equals(lacking, 0),
    0,
    unless(
      builtin("OR", below(lacking, 0), operation(strength!, "<=", dose!)),
      divided(times(volume!, LITRES_PER_HL, lacking), minus(strength!, dose!)),
    ),
  );
};

const volume: Form = ([wineHl, dose, strength, wineSugar, starterL], steps) => {
  const wine = steps.step("Wine with starter", "hL", plus(wineHl!, divided(starterL!, LITRES_PER_HL)));
  const dry = times(sugar([wine, dose!, wineSugar!], steps) as Expression, steps.constant("displaced"));
  const wet = liqueur([wine, dose!, strength!, wineSugar!], steps) as Expression;
  return plus(wine, divided(iff(equals(strength!, 0), dry, wet), LITRES_PER_HL));
};

const bottles: Form = ([volumeHl, bottle, loss], { step }) =>
  wholeDown(
    step(
      "Bottles, with a part of one",
      "bottles",
      divided(times(volumeHl!, LITRES_PER_HL, ML_PER_LITRE, minus(1, divided(loss!, 100))), bottle!),
    ),
  );

const alcohol: Form = ([base, dose, wineSugar], steps) => {
  const lacking = missing(dose!, wineSugar!, steps);
  const share = divided(besideSugar(dose!, steps), besideSugar(sucroseOf(wineSugar!, steps), steps));
  return unless(
    // the wine's own sugar taken there and back may lose the tail of a float
    below(plus(lacking, 1e-12), 0),
    plus(times(base!, share), divided(times(dose!, steps.constant("inv")), steps.constant("vol"))),
  );
};

const starter: Form = ([volumeHl, target, cells]) =>
  unless(
    operation(cells!, "<=", target!),
    divided(times(volumeHl!, LITRES_PER_HL, target!), minus(cells!, target!)),
  );

const recipe: Form = ([litres, strength, carrier], steps) => {
  const kg = divided(times(litres!, minus(strength!, carrier!)), besideSugar(carrier!, steps));
  return [kg, minus(litres!, times(kg, steps.constant("displaced")))].map((result) =>
    unless(below(strength!, carrier!), result),
  );
};

const each = (bottle: Expression, wine: Expression, target: Expression, strength: Expression) =>
  iff(
    equals(target, wine),
    0,
    unless(
      builtin("OR", below(target, wine), below(strength, target)),
      divided(times(bottle, minus(target, wine)), minus(strength, wine)),
    ),
  );

const mixed = (bottle: Expression, wine: Expression, ml: Expression, strength: Expression) =>
  unless(above(ml, bottle), divided(plus(times(minus(bottle, ml), wine), times(ml, strength)), bottle));

const freezing: Form = ([vol, invert], { step, constant }) => {
  const ethanol = step(
    "Ethanol in a litre",
    "mol",
    divided(times(vol!, 10, constant("ethanol")), ETHANOL_G_PER_MOL),
  );
  const water = step(
    "Water in a litre",
    "kg",
    divided(
      times(
        minus(minus(ML_PER_LITRE, times(vol!, 10)), times(invert!, constant("displaced"))),
        WATER_KG_PER_L,
      ),
      ML_PER_LITRE,
    ),
  );
  return divided(times(-CRYOSCOPIC_CONSTANT, plus(ethanol, divided(invert!, HEXOSE_G_PER_MOL))), water);
};

const energy: Form = ([vol, invert, acid, glycerol, unit], { constant }) => {
  const inUnit = (key: keyof typeof ENERGY_PER_G) => {
    const per = ENERGY_PER_G[key];
    return plus(
      times(vol!, constant("ethanol"), per.alcohol),
      divided(
        plus(times(invert!, per.carbohydrate), times(acid!, per.organicAcid), times(glycerol!, per.polyol)),
        10,
      ),
    );
  };
  return choose(unit!, [
    ["kJ", inUnit("kJ")],
    ["kcal", inUnit("kcal")],
  ]);
};

export const amountForms: Readonly<Record<string, Form>> = {
  "TIRAGE.SUGAR": sugar,
  "TIRAGE.LIQUEUR": liqueur,
  "TIRAGE.VOLUME": volume,
  "TIRAGE.BOTTLES": bottles,
  "TIRAGE.ALCOHOL": alcohol,
  "TIRAGE.STARTER": starter,
  "SUGAR.INVERT": ([sucrose], { constant }) => times(sucrose!, constant("inv")),
  "SUGAR.SUCROSE": ([invert], steps) => sucroseOf(invert!, steps),
  "DISGORGING.FREEZING": freezing,
  "DISGORGING.SPACE": ([filled, lost, bottle]) =>
    unless(
      builtin("OR", above(lost!, filled!), below(minus(bottle!, minus(filled!, lost!)), 0)),
      minus(bottle!, minus(filled!, lost!)),
    ),
  "DOSAGE.VOLUME": ([bottle, wine, target, strength]) => each(bottle!, wine!, target!, strength!),
  "DOSAGE.SUGAR": ([bottle, wine, ml, strength]) =>
    builtin("ROUND", mixed(bottle!, wine!, ml!, strength!), 9),
  "DOSAGE.ALCOHOL": ([bottle, wine, ml, vol]) => mixed(bottle!, wine!, ml!, vol!),
  "DOSAGE.TOPUP": ([space, ml]) => unless(above(ml!, space!), minus(space!, ml!)),
  "DOSAGE.BATCH": ([count, ml, reserve]) =>
    times(divided(times(count!, ml!), ML_PER_LITRE), plus(1, divided(reserve!, 100))),
  "DOSAGE.RECIPE": recipe,
  "DOSAGE.STOCK": ([stock, bottle, wine, target, strength], { step }) =>
    wholeDown(
      step(
        "Bottles, with a part of one",
        "bottles",
        divided(times(stock!, ML_PER_LITRE), each(bottle!, wine!, target!, strength!)),
      ),
    ),
  "RIDDLING.RACKS": ([count, places], { step }) =>
    wholeUp(step("Racks, with a part of one", "racks", divided(count!, places!))),
  "RIDDLING.HOURS": ([count, turns, rate]) => divided(times(count!, turns!), rate!),
  "LABEL.ALCOHOL": ([vol]) => divided(builtin("ROUND", times(vol!, 2), 0), 2),
  "LABEL.ENERGY": energy,
  "COST.PACKS": ([need, pack, reserve]) =>
    wholeUp(divided(times(need!, plus(1, divided(reserve!, 100))), pack!)),
  "COST.HOLDING": ([amount, months, rate]) =>
    times(
      amount!,
      minus(builtin("POWER", plus(1, divided(rate!, 100)), divided(months!, MONTHS_PER_YEAR)), 1),
    ),
  "COST.BOTTLE": ([total, count, breakage]) =>
    unless(operation(count!, "<=", 0), divided(total!, times(count!, minus(1, divided(breakage!, 100))))),
};

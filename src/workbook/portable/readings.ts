/**
 * What a gauge says: TIRAGE.PROGRESS, PRESSURE.SHIFT, AT20, CLASS.
 */
import { domains } from "../../cellar/domains";
import { RATIO_TO_20C } from "../../cellar/gauge-table";
import { BETWEEN_CLASSES, pressureRules } from "../../cellar/rules/pressure-classes";
import { ruleSetsOf } from "../../cellar/rules/source";
import { sweetnessRules } from "../../cellar/rules/sweetness-bands";
import { ALCOHOL_FREE, LOSS_PER_GL, LOSS_PER_VOL, REFERENCE_K } from "../../cellar/solubility";
import {
  builtin,
  choose,
  divided,
  iff,
  minus,
  noAnswer,
  operation,
  plus,
  times,
  type Expression,
} from "../formula";
import { gaugeName } from "../notes/names";
import { atTemperature, co2Behind, solubility } from "./bottle";
import type { Args, Form } from "./form";

/** Alcohol and sugar are linear in the share, so that their product makes it the root of a square equation. */
const progress: Form = (args, steps) => {
  const [bar, celsius, given, base, yieldShare, headspacePct, dissolved] = args as Args;
  const { step, constant } = steps;
  const { T, factor, head } = atTemperature(celsius, headspacePct, steps);
  const co2Bar = co2Behind(bar, T, steps);
  const invert = step("Dose as glucose + fructose", "g/L", times(given, constant("inv")));
  const wine = step(
    "Room for CO2 beside the alcohol at the start",
    "share",
    minus(
      ALCOHOL_FREE,
      times(LOSS_PER_VOL, base, minus(1, divided(times(given, constant("displaced")), 1000))),
    ),
  );
  const fermented = step(
    "… less, when all has fermented",
    "share",
    times(LOSS_PER_VOL, divided(invert, constant("vol"))),
  );
  const sweet = step(
    "Share of it left by the sugar at the start",
    "share",
    minus(1, times(LOSS_PER_GL, invert)),
  );
  const freed = step("… more, when all has fermented", "share", times(LOSS_PER_GL, invert));
  const scale = step("Solubility and pressure", "g/L", times(co2Bar, factor));
  const a = step("Square term", "", minus(0, times(scale, fermented, freed)));
  const b = step(
    "Linear term",
    "",
    minus(
      times(scale, minus(times(wine, freed), times(fermented, sweet))),
      times(given, constant("co2"), yieldShare),
    ),
  );
  const c = step(
    "Term without the share",
    "",
    minus(plus(times(scale, wine, sweet), times(co2Bar, head)), dissolved),
  );
  const share = step(
    "Share fermented",
    "share",
    // the form that does not lose digits where the square term is small
    divided(times(2, c), minus(builtin("SQRT", minus(builtin("POWER", b, 2), times(4, a, c))), b)),
  );
  return iff(builtin("AND", operation(share, ">=", 0), operation(share, "<=", 1)), share, noAnswer);
};

const shift: Form = (args, steps) => {
  const [bar, from, to, alcohol, sugar, headspacePct, nitrogen] = args as Args;
  const { step, constant } = steps;
  const first = atTemperature(from, headspacePct, steps);
  const second = atTemperature(to, headspacePct, steps);
  const nitrogenAt = (T: Expression) => divided(times(nitrogen, T), REFERENCE_K);
  const co2 = step(
    "CO2 in all, per litre of wine",
    "g/L",
    times(
      minus(plus(bar, constant("atmosphere")), nitrogenAt(first.T)),
      plus(solubility(first.factor, alcohol, sugar), first.head),
    ),
  );
  const there = minus(
    plus(divided(co2, plus(solubility(second.factor, alcohol, sugar), second.head)), nitrogenAt(second.T)),
    constant("atmosphere"),
  );
  return iff(operation(co2, ">=", 0), there, noAnswer);
};

const at20: Form = (args, { step, notesRange }) => {
  const [bar, celsius] = args as [Expression, Expression];
  const ratios = notesRange(gaugeName(0), gaugeName(RATIO_TO_20C.length - 1));
  const below = step(
    "Whole degree below",
    "°C",
    builtin("MIN", builtin("INT", celsius), RATIO_TO_20C.length - 2),
  );
  const low = step("Ratio there", "", builtin("INDEX", ratios, plus(below, 1)));
  const high = step("Ratio a degree above", "", builtin("INDEX", ratios, plus(below, 2)));
  const { min, max } = domains.gaugeTableC;
  return iff(
    builtin("AND", operation(celsius, ">=", min), operation(celsius, "<=", max)),
    times(bar, plus(low, times(minus(high, low), minus(celsius, below)))),
    noAnswer,
  );
};

/** By the rule sets that a batch can be planned by. */
const pressureClass: Form = (args) => {
  const [bar, bottle, rules] = args as [Expression, Expression, Expression];
  const { min, max } = domains.pressureBar;
  const named = choose(
    rules,
    ruleSetsOf(sweetnessRules).map((ruleSet) => [
      ruleSet,
      pressureRules[ruleSet].classes.reduceRight<Expression | string>(
        (otherwise, { name, low, high, smallBottle }) => {
          const from = smallBottle
            ? iff(operation(bottle, "<", smallBottle.belowMl), smallBottle.low, low)
            : low;
          const isAbove = operation(bar, ">=", from);
          const holds = high === null ? isAbove : builtin("AND", isAbove, operation(bar, "<=", high));
          return iff(holds, name, otherwise);
        },
        BETWEEN_CLASSES,
      ),
    ]),
  );
  return iff(builtin("AND", operation(bar, ">=", min), operation(bar, "<=", max)), named, noAnswer);
};

export const readingForms: Readonly<Record<string, Form>> = {
  "TIRAGE.PROGRESS": progress,
  "PRESSURE.SHIFT": shift,
  "PRESSURE.AT20": at20,
  "PRESSURE.CLASS": pressureClass,
};

/**
 * Pressure in the closed bottle: TIRAGE.PRESSURE, RANGE, DOSE, PROGRESS; PRESSURE.SHIFT, AT20, CLASS.
 */
import { RATIO_TO_20C } from "../../cellar/gauge-table";
import { GAS_CONSTANT, KELVIN_AT_0C } from "../../cellar/constants";
import { domains } from "../../cellar/domains";
import { BETWEEN_CLASSES, pressureRules } from "../../cellar/rules/pressure-classes";
import { ruleSetsOf } from "../../cellar/rules/source";
import { sweetnessRules } from "../../cellar/rules/sweetness-bands";
import {
  ALCOHOL_FREE,
  DISSOLUTION_J_PER_MOL,
  LOSS_PER_GL,
  LOSS_PER_VOL,
  REFERENCE_K,
  SOLUBILITY_AT_20C,
} from "../../cellar/solubility";
import { DEFAULT_SPREAD, NORMAL_95 } from "../../cellar/spread";
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
  type Operand,
} from "../formula";
import type { Form, Steps } from "./form";

const squared = (value: Operand) => builtin("POWER", value, 2);
const kelvin = (celsius: Expression) => plus(celsius, KELVIN_AT_0C);

/** What the gas does at a temperature, whatever the wine. */
function atTemperature(celsius: Expression, headspacePct: Expression, { step, constant }: Steps) {
  const T = step("Temperature", "K", kelvin(celsius));
  return {
    T,
    factor: step(
      "Solubility at this temperature, before alcohol and sugar",
      "g/L/bar",
      times(
        SOLUBILITY_AT_20C,
        builtin(
          "EXP",
          times(divided(DISSOLUTION_J_PER_MOL, GAS_CONSTANT), minus(divided(1, T), divided(1, REFERENCE_K))),
        ),
      ),
    ),
    head: step(
      "CO2 in the headspace",
      "g/L/bar",
      divided(times(divided(headspacePct, 100), constant("gas")), T),
    ),
  };
}

const solubility = (factor: Expression, alcohol: Operand, sugar?: Expression) =>
  times(
    factor,
    minus(ALCOHOL_FREE, times(LOSS_PER_VOL, alcohol)),
    ...(sugar ? [minus(1, times(LOSS_PER_GL, sugar))] : []),
  );

/** Alcohol once the dose has fermented, and what 1 g/L of dose adds to it. */
function alcoholOf(dose: Expression, base: Expression, { step, constant }: Steps) {
  return step(
    "Alcohol once it has fermented",
    "% vol",
    plus(
      times(base, minus(1, divided(times(dose, constant("displaced")), 1000))),
      divided(times(dose, constant("inv")), constant("vol")),
    ),
  );
}

/** `shown`: whether solubility and CO2 stand in rows of their own, for a form that needs them again. */
function filled(args: readonly Expression[], steps: Steps, shown: boolean) {
  const [dose, celsius, base, yieldShare, headspacePct, dissolved] = args as [
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
  ];
  const { step, constant } = steps;
  const at = atTemperature(celsius, headspacePct, steps);
  const alcohol = alcoholOf(dose, base, steps);
  const row = (label: string, unit: string, formula: Expression) =>
    shown ? step(label, unit, formula) : formula;
  const solved = row("Solubility of CO2 in the wine", "g/L/bar", solubility(at.factor, alcohol));
  const capacity = row("Wine and headspace together hold", "g/L/bar", plus(solved, at.head));
  const co2Bar = row(
    "Pressure of CO2 alone",
    "bar",
    divided(plus(times(dose, constant("co2"), yieldShare), dissolved), capacity),
  );
  const others = minus(divided(times(constant("nitrogen"), at.T), REFERENCE_K), constant("atmosphere"));
  return { dose, base, yieldShare, ...at, solved, capacity, co2Bar, pressure: plus(co2Bar, others) };
}

const inRange = (dose: Expression, result: Expression) =>
  iff(
    builtin("AND", operation(dose, ">=", domains.doseGL.min), operation(dose, "<=", domains.doseGL.max)),
    result,
    noAnswer,
  );

const pressure: Form = (args, steps) => {
  const { dose, pressure: bar } = filled(args, steps, false);
  return inRange(dose, bar);
};

/** Low, expected, high: the spread of bottles through the first derivatives, in quadrature. */
const range: Form = (args, steps) => {
  const [dose, celsius, base, , , , , ...wineAndBottle] = args as [
    Expression,
    Expression,
    Expression,
    ...Expression[],
  ];
  const all = filled([dose, celsius, base, ...wineAndBottle], steps, true);
  const { step, constant } = steps;
  const { T, factor, head, solved, capacity, co2Bar, yieldShare } = all;
  const { doseGL, yieldShare: yieldSd, temperatureC, headspacePct } = DEFAULT_SPREAD;
  const perDose = step(
    "Bar for 1 g/L of dose",
    "bar",
    divided(
      plus(
        times(constant("co2"), yieldShare),
        times(
          co2Bar,
          LOSS_PER_VOL,
          factor,
          minus(divided(constant("inv"), constant("vol")), divided(times(base, constant("displaced")), 1000)),
        ),
      ),
      capacity,
    ),
  );
  const perYield = step("Bar for a whole of yield", "bar", divided(times(dose, constant("co2")), capacity));
  const perKelvin = step(
    "Bar for 1 °C",
    "bar",
    plus(
      divided(
        times(
          co2Bar,
          plus(
            divided(times(solved, divided(DISSOLUTION_J_PER_MOL, GAS_CONSTANT)), squared(T)),
            divided(head, T),
          ),
        ),
        capacity,
      ),
      divided(constant("nitrogen"), REFERENCE_K),
    ),
  );
  const perHeadspace = step(
    "Bar for 1 % of headspace, downwards",
    "bar",
    divided(times(co2Bar, divided(divided(constant("gas"), 100), T)), capacity),
  );
  const half = step(
    "Half of the band that holds 95 % of the bottles",
    "bar",
    times(
      NORMAL_95,
      builtin(
        "SQRT",
        plus(
          squared(times(perDose, doseGL)),
          squared(times(perYield, yieldSd)),
          squared(times(perKelvin, temperatureC)),
          squared(times(perHeadspace, headspacePct)),
        ),
      ),
    ),
  );
  const expected = step("Expected excess pressure", "bar", all.pressure);
  return [minus(expected, half), expected, plus(expected, half)].map((result) => inRange(dose, result));
};

const dose: Form = (args, steps) => {
  const [bar, celsius, base, yieldShare, headspacePct, dissolved] = args as Expression[] as [
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
  ];
  const { step, constant } = steps;
  const { T, factor, head } = atTemperature(celsius, headspacePct, steps);
  const co2Bar = step(
    "Pressure of CO2 alone",
    "bar",
    minus(plus(bar, constant("atmosphere")), divided(times(constant("nitrogen"), T), REFERENCE_K)),
  );
  const found = step(
    "Dose that gives this pressure",
    "g/L",
    divided(
      minus(times(co2Bar, plus(solubility(factor, base), head)), dissolved),
      plus(
        times(constant("co2"), yieldShare),
        times(
          co2Bar,
          LOSS_PER_VOL,
          factor,
          minus(divided(constant("inv"), constant("vol")), divided(times(base, constant("displaced")), 1000)),
        ),
      ),
    ),
  );
  return inRange(found, found);
};

/** Alcohol and sugar are linear in the share, so that their product makes it the root of a square equation. */
const progress: Form = (args, steps) => {
  const [bar, celsius, given, base, yieldShare, headspacePct, dissolved] = args as Expression[] as [
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
  ];
  const { step, constant } = steps;
  const { T, factor, head } = atTemperature(celsius, headspacePct, steps);
  const co2Bar = step(
    "Pressure of CO2 alone",
    "bar",
    minus(plus(bar, constant("atmosphere")), divided(times(constant("nitrogen"), T), REFERENCE_K)),
  );
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
    divided(times(2, c), minus(builtin("SQRT", minus(squared(b), times(4, a, c))), b)),
  );
  return iff(builtin("AND", operation(share, ">=", 0), operation(share, "<=", 1)), share, noAnswer);
};

const shift: Form = (args, steps) => {
  const [bar, from, to, alcohol, sugar, headspacePct, nitrogen] = args as Expression[] as [
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
    Expression,
  ];
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
  const ratios = notesRange("notes_gauge_0", `notes_gauge_${RATIO_TO_20C.length - 1}`);
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

export const pressureForms: Readonly<Record<string, Form>> = {
  "TIRAGE.PRESSURE": pressure,
  "TIRAGE.RANGE": range,
  "TIRAGE.DOSE": dose,
  "TIRAGE.PROGRESS": progress,
  "PRESSURE.SHIFT": shift,
  "PRESSURE.AT20": at20,
  "PRESSURE.CLASS": pressureClass,
};

/**
 * From the dose to the pressure and back: TIRAGE.PRESSURE, RANGE, DOSE.
 */
import { GAS_CONSTANT } from "../../cellar/constants";
import { DISSOLUTION_J_PER_MOL, LOSS_PER_VOL, REFERENCE_K } from "../../cellar/solubility";
import { DEFAULT_SPREAD, NORMAL_95 } from "../../cellar/spread";
import { builtin, divided, minus, plus, times, type Expression, type Operand } from "../formula";
import { atTemperature, co2Behind, filled, inRange, solubility } from "./bottle";
import type { Args, Form } from "./form";

const squared = (value: Operand) => builtin("POWER", value, 2);
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
  const [bar, celsius, base, yieldShare, headspacePct, dissolved] = args as Args;
  const { step, constant } = steps;
  const { T, factor, head } = atTemperature(celsius, headspacePct, steps);
  const co2Bar = co2Behind(bar, T, steps);
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

export const pressureForms: Readonly<Record<string, Form>> = {
  "TIRAGE.PRESSURE": pressure,
  "TIRAGE.RANGE": range,
  "TIRAGE.DOSE": dose,
};

/**
 * Other sizes of the batch that plan.test.ts works out, and other sweetness.
 */
import type { BatchInputs } from "../../../src/cellar/batch/fields";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { planBatch } from "../../../src/cellar/batch/plan";
import {
  USUAL_SIZES_PCT,
  atSettings,
  atSize,
  atSweetness,
  attemptPlan,
  changeOf,
  outcomeOf,
  planIf,
} from "../../../src/cellar/batch/what-if";
import { expectRelative } from "../../support/relative";
import { changed, type Sections } from "./worked-batch";

function inputsOf(changes: Sections = {}): BatchInputs {
  const parsed = parseBatchInputs(changed(changes));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.inputs;
}
const OTHERS = { other1: { name: "Dividers", need: 10 }, other2: { name: "Tissue", need: 6 } };
const hoursOf = ({ costs }: BatchInputs) => [
  costs.tirage_hours,
  costs.riddling_hours,
  costs.disgorging_hours,
  costs.finishing_hours,
];

describe("at another size", () => {
  test.each([0, 40, 100])("100 %% is the batch itself, hours growing by %d %%", (labourPct) => {
    const inputs = inputsOf({ materials: OTHERS });
    expect(atSize(inputs, 100, labourPct)).toEqual(inputs);
    expect(planBatch(atSize(inputs, 100, labourPct))).toEqual(planBatch(inputs));
  });

  test("twice the wine and the other materials", () => {
    const { baseWine, materials } = atSize(inputsOf({ materials: OTHERS }), 200, 100);
    expect(baseWine).toEqual({ ...inputsOf().baseWine, volume_hL: 200 });
    expect([materials.other1.need, materials.other2.need]).toEqual([20, 12]);
    expect([materials.other1.name, materials.other2.name]).toEqual(["Dividers", "Tissue"]);
  });

  test("hours grow as far as they are said to: not at all, by half, as the batch", () => {
    // 10, 20, 30 and 40 h
    expect(hoursOf(atSize(inputsOf(), 200, 0))).toEqual([10, 20, 30, 40]);
    expect(hoursOf(atSize(inputsOf(), 200, 50))).toEqual([15, 30, 45, 60]);
    expect(hoursOf(atSize(inputsOf(), 200, 100))).toEqual([20, 40, 60, 80]);
    expect(hoursOf(atSize(inputsOf(), 50, 100))).toEqual([5, 10, 15, 20]);
  });

  test("hours of riddling that are worked out stay so", () =>
    expect(atSize(inputsOf({ costs: { riddling_hours: null } }), 200, 100).costs.riddling_hours).toBeNull());

  test("prices, rates, stock and what is held back stay", () => {
    const inputs = inputsOf({
      tirage: { yeast_gHL: 20 },
      dosage: { stock_L: 100 },
      costs: { heldBack_bottles: 400 },
      materials: OTHERS,
    });
    const { batch, tirage, lees, disgorging, dosage, costs, materials } = atSize(inputs, 50, 100);
    expect({ batch, tirage, lees, disgorging, dosage }).toEqual({
      batch: inputs.batch,
      tirage: inputs.tirage,
      lees: inputs.lees,
      disgorging: inputs.disgorging,
      dosage: inputs.dosage,
    });
    expect([costs.heldBack_bottles, costs.baseWine_perL, costs.storage_perBottleMonth]).toEqual([
      400, 2, 0.01,
    ]);
    expect(materials.bottles).toEqual(inputs.materials.bottles);
  });

  test("bottles by hand: 20 000 L and 304.569 L of sugar in them, over 0.75 L", () =>
    // 27 072.8
    expect(planBatch(atSize(inputsOf(), 200, 100)).tirage.bottles).toBe(27_072));

  test("what does not depend on the size stays: dose, pressure, sweetness, alcohol", () => {
    const plan = planBatch(inputsOf());
    for (const pct of USUAL_SIZES_PCT) {
      const other = planBatch(atSize(inputsOf(), pct, 100));
      expect(other.tirage.dose).toBe(plan.tirage.dose);
      expect(other.tirage.pressures).toEqual(plan.tirage.pressures);
      expect([other.dosage.eachMl, other.dosage.alcoholVol]).toEqual([
        plan.dosage.eachMl,
        plan.dosage.alcoholVol,
      ]);
      expectRelative(other.tirage.sugarKg, (plan.tirage.sugarKg * pct) / 100, 1e-12);
    }
  });
});

describe("at another sweetness", () => {
  test("nothing but the target changes", () => {
    const inputs = inputsOf();
    expect(atSweetness(inputs, 30)).toEqual({ ...inputs, dosage: { ...inputs.dosage, target_gL: 30 } });
    expect(inputs.dosage.target_gL).toBe(8);
  });

  test("the wine is as sweet as it was to be", () =>
    expect(planBatch(atSweetness(inputsOf(), 11)).dosage.sugarGL).toBe(11));
});

describe("what becomes of it", () => {
  test("is its plan", () => expect(planIf(inputsOf())).toEqual(planBatch(inputsOf())));

  test("is nothing where it cannot be planned", () =>
    // the wine holds more than is wanted
    expect(planIf(atSweetness(inputsOf({ dosage: { residual_gL: 5 } }), 4))).toBeNull());

  test("a fault of the program is not taken for a batch that cannot be planned", () =>
    expect(() => planIf({} as BatchInputs)).toThrow(TypeError));
});

describe("at other settings", () => {
  const byPressure = { tirage: { goal: "pressure", pressure_bar: 5, pressureAt_C: 10, dose_gL: null } };

  test("none is the batch itself", () => {
    expect(atSettings(inputsOf(), {})).toEqual(inputsOf());
    expect(atSettings(inputsOf(byPressure), { labour_pct: 30 })).toEqual(inputsOf(byPressure));
  });

  test("the volume is the one given, to the last digit, and the rest is that of this size", () => {
    // 107 / 100 · 100 is 107.00000000000001 as a float
    const inputs = inputsOf({ materials: OTHERS });
    const set = atSettings(inputs, { volume_hL: 107 });
    expect(set.baseWine).toEqual({ ...inputs.baseWine, volume_hL: 107 });
    expectRelative(set.materials.other1.need, 10.7, 1e-12);
    hoursOf(set).forEach((hours, index) => expectRelative(hours!, [10.7, 21.4, 32.1, 42.8][index]!, 1e-12));
  });

  test("half of the labour grows with it", () =>
    expect(hoursOf(atSettings(inputsOf(), { volume_hL: 200, labour_pct: 50 }))).toEqual([15, 30, 45, 60]));

  test("dose, pressure and sweetness are changed alone", () => {
    const inputs = inputsOf();
    expect(atSettings(inputs, { dose_gL: 20 })).toEqual({
      ...inputs,
      tirage: { ...inputs.tirage, dose_gL: 20 },
    });
    expect(atSettings(inputs, { target_gL: 0 })).toEqual(atSweetness(inputs, 0));
    const other = inputsOf(byPressure);
    expect(atSettings(other, { pressure_bar: 0 })).toEqual({
      ...other,
      tirage: { ...other.tirage, pressure_bar: 0 },
    });
  });

  test("what comes of a setting beside the batch: half the wine, half the sugar, the same pressure", () => {
    const own = planBatch(inputsOf());
    const half = planBatch(atSettings(inputsOf(), { volume_hL: 50 }));
    // 24 g in each of 10 000/(1 − 24·0.000625) L; 13 536 bottles, 6 768 of the half
    const sugarKg = (24 * 10_000) / (1 - 24 * 0.000_625) / 1000;
    expectRelative(outcomeOf(own).sugarKg, sugarKg, 1e-12);
    expectRelative(changeOf(own, half, "sugarKg"), -sugarKg / 2, 1e-12);
    expect(changeOf(own, half, "bottles")).toBe(-6768);
    expect(changeOf(own, half, "hottestHighBar")).toBe(0);
    expect(changeOf(own, half, "dosageMl")).toBe(0);
  });

  test("each outcome is the plan's own figure", () => {
    const { tirage, dosage, costs, ...plan } = planBatch(inputsOf());
    expect(outcomeOf({ tirage, dosage, costs, ...plan })).toEqual({
      bottles: tirage.bottles,
      sugarKg: tirage.sugarKg,
      cellarBar: tirage.pressures.cellar.expected,
      cellarHighBar: tirage.pressures.cellar.high,
      hottestBar: tirage.pressures.hottest.expected,
      hottestHighBar: tirage.pressures.hottest.high,
      dosageMl: dosage.eachMl,
      perBottle: costs.perBottle,
      total: costs.total,
    });
  });

  test("why there is no plan is told with its field", () =>
    expect(attemptPlan(atSweetness(inputsOf({ dosage: { residual_gL: 5 } }), 4))).toEqual({
      problems: [
        {
          field: "dosage.target_gL",
          given: 4,
          remedy: "the wine already holds 5 g/L; give a target of at least that",
        },
      ],
    }));
});

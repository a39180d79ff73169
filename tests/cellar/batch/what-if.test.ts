/**
 * Other sizes of the batch that plan.test.ts works out, and other sweetness.
 */
import type { BatchInputs } from "../../../src/cellar/batch/fields";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { planBatch } from "../../../src/cellar/batch/plan";
import { USUAL_SIZES_PCT, atSize, atSweetness, planIf } from "../../../src/cellar/batch/what-if";
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

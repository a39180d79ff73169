/**
 * The dosage bench, worked by hand on the batch of plan.test.ts: 750 mL, no sugar left, a liqueur of grape concentrate.
 */
import type { BatchInputs } from "../../../src/cellar/batch/fields";
import { parseBatchInputs } from "../../../src/cellar/batch/inputs";
import { planBatch } from "../../../src/cellar/batch/plan";
import {
  atSweetness,
  atZeroDosage,
  benchRow,
  usualTrialsGL,
  type BenchRow,
} from "../../../src/cellar/batch/what-if";
import { GLASS_ML, glassVolume } from "../../../src/cellar/dosage";
import { dosageTrial } from "../../../src/functions/dosage-bench";
import { expectRelative } from "../../support/relative";
import { randomBatches } from "../../support/random-batches";
import { changed, type Sections } from "./worked-batch";

function inputsOf(dosage: Sections[string] = {}, others: Sections = {}): BatchInputs {
  const parsed = parseBatchInputs(
    changed({ ...others, dosage: { kind: "concentrate", target_gL: 8, reserve_pct: 5, ...dosage } }),
  );
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.inputs;
}

function rowOf(inputs: BatchInputs, glassMl?: number): BenchRow {
  const row = benchRow(inputs, planBatch(inputs).tirage, glassMl);
  if ("problems" in row) throw new Error(JSON.stringify(row.problems));
  return row;
}

test("750·8/600 = 10 mL a bottle and a 7.5th of it in 100 mL; 20 mL of room leave 10", () => {
  const row = rowOf(inputsOf());
  expect(row.dosage.eachMl).toBe(10);
  expect(row.dosage.sugarGL).toBe(8);
  expectRelative(row.glassMl, 10 / 7.5, 1e-14);
  expect(row.spareMl).toBe(10);
  expect(row.dosage.terms).toEqual(["brut"]);
  expect(row.stockLeftL).toBeNull();
});

test("in another glass it goes with the volume: 50 mL take half of what 100 take", () => {
  expectRelative(rowOf(inputsOf(), 50).glassMl, 10 / 15, 1e-14);
  expect(GLASS_ML).toBe(100);
  expect([glassVolume.min, glassVolume.max, glassVolume.unit]).toEqual([10, 1000, "mL"]);
});

test("sugar left counts: 100·(8 − 2)/(600 − 2) in the glass", () =>
  expectRelative(rowOf(inputsOf({ residual_gL: 2 })).glassMl, 600 / 598, 1e-14));

test("too much for the room is negative; no room at all is no number", () => {
  // 750·24/600 = 30 mL into 20
  expect(rowOf(inputsOf({ target_gL: 24 })).spareMl).toBe(-10);
  expect(rowOf(inputsOf({}, { disgorging: { filled_mL: 780, lost_mL: 20 } })).spareMl).toBeNull();
});

test("stock: 13 400 bottles finished of 13 536 take 134 L, and 5 % of reserve", () => {
  // 13 536 less 1 % is 13 400; 134·1.05 = 140.7 L
  const row = rowOf(inputsOf({ stock_L: 150 }));
  expect(row.dosage.bottlesFinished).toBe(13_400);
  expectRelative(row.stockLeftL!, 9.3, 1e-10);
  const short = rowOf(inputsOf({ stock_L: 100 }));
  expectRelative(short.stockLeftL!, -40.7, 1e-10);
  expect(short.dosage.stockBottles).toBe(10_000);
});

test("zero dosage takes no liqueur, none of the stock and all of the terms without sugar added", () => {
  const row = rowOf(atZeroDosage(inputsOf({ residual_gL: 2, stock_L: 7 })));
  expect([row.glassMl, row.dosage.eachMl, row.stockLeftL, row.spareMl]).toEqual([0, 0, 7, 20]);
  expect(row.dosage.terms).toEqual(["brut nature", "extra brut", "brut"]);
  expect(row.dosage.sugarGL).toBe(2);
});

test("zero dosage needs no liqueur to be given", () => {
  const blank = { kind: "none", target_gL: null, strength_gL: null, liqueur_vol: null };
  expect(rowOf(atZeroDosage(inputsOf(blank))).glassMl).toBe(0);
});

test("no more than the wine's own sugar is zero dosage, liqueur or none", () => {
  const inputs = inputsOf({ residual_gL: 2 });
  const none = { liqueurGL: 0, liqueurVol: 0 };
  expect(rowOf(atZeroDosage(inputs)).dosage).toEqual({ ...rowOf(atSweetness(inputs, 2)).dosage, ...none });
});

test("a sweetness that cannot be reached says why", () => {
  const inputs = inputsOf({ residual_gL: 3 });
  const row = benchRow(atSweetness(inputs, 1), planBatch(inputs).tirage);
  expect(row).toEqual({
    problems: [
      {
        field: "dosage.target_gL",
        given: 1,
        remedy: "the wine already holds 3 g/L; give a target of at least that",
      },
    ],
  });
});

test("a row is the plan of that sweetness, and the glass that of DOSAGE.TRIAL", () => {
  for (const { inputs, plan } of randomBatches(60, 20_261)) {
    expect(rowOf(inputs).dosage).toEqual(plan.dosage);
    if (inputs.dosage.kind === "none") continue;
    const { residual_gL, target_gL } = inputs.dosage;
    const [trial] = dosageTrial(inputs.batch.bottle_mL, residual_gL, plan.dosage.liqueurGL, [[target_gL!]]);
    expect(rowOf(inputs).dosage.eachMl).toBe(trial![1]);
    expectRelative(rowOf(inputs).glassMl, trial![2] as number, 1e-12);
  }
});

describe("sweetness to try", () => {
  const usual = (dosage: Sections[string], rules = "EU") =>
    usualTrialsGL(inputsOf(dosage, { batch: { rules } }));

  test.each([
    // the EU's bounds: 0, 3, 6, 12, 17, 32, 50
    [8, [1.5, 4.5, 14.5]],
    [2, [4.5]],
    [6, [1.5, 4.5, 14.5]],
    [5.9, [1.5, 9]],
    [12, [1.5, 4.5, 9, 24.5]],
    [40, [1.5, 4.5, 9, 14.5, 24.5]],
    [60, [1.5, 4.5, 9, 14.5, 24.5, 41]],
  ])("around %d g/L: the middle of the other stretches, up to the next above", (target_gL, levels) =>
    expect(usual({ target_gL })).toEqual(levels),
  );

  test("the chosen rules' own", () => expect(usual({ target_gL: 14 }, "OIV")).toEqual([6, 24.5]));

  test("nothing that the wine already exceeds", () => {
    expect(usual({ target_gL: 8, residual_gL: 1.4 })[0]).toBe(1.5);
    expect(usual({ target_gL: 8, residual_gL: 1.5 })[0]).toBe(4.5);
  });

  test("none where there is no dosage, whatever was wanted before", () => {
    for (const target_gL of [null, 8])
      expect(usual({ kind: "none", target_gL, strength_gL: null })).toEqual([]);
  });
});

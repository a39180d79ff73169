/**
 * What can be turned: ranges and steps in the person's own unit, and words for what was set.
 */
import { fields, type BatchInputs } from "../../../src/cellar/batch/fields";
import { isWithin } from "../../../src/cellar/domains";
import { changesOf, changesText } from "../../../src/taskpane/variants/changes";
import { KNOB_KEYS, knobOf, niceStep, type KnobKey } from "../../../src/taskpane/variants/knobs";
import { onStep } from "../../../src/taskpane/variants/slider";
import { Units } from "../../../src/taskpane/units";
import { expectRelative } from "../../support/relative";
import { asRead } from "./reader";
import { randomBatches } from "../../support/random-batches";
import { sampleInputs } from "../../support/samples";

const brut = sampleInputs("oxlip-hill-brut.json");
const rose = sampleInputs("oxlip-hill-rose.json");
const zero = sampleInputs("oxlip-hill-magnum-zero.json");

function unitsOf(chosen: Readonly<Record<string, string>> = {}): Units {
  return new Units({ getItem: (key) => chosen[key.replace("mousse.unit.", "")] ?? null, setItem: () => {} });
}
const kept = unitsOf();
const american = unitsOf({ volume: "gal (US)", pressure: "psi", temperature: "°F" });
const range = (key: KnobKey, inputs: BatchInputs, units = kept) => {
  const { min, max, step } = knobOf(key, inputs, units)!;
  return [min, max, step];
};

test("a batch has the settings that its goal and its dosage ask for", () => {
  const keysOf = (inputs: BatchInputs) => KNOB_KEYS.filter((key) => knobOf(key, inputs, kept));
  expect(keysOf(brut)).toEqual(["volume_hL", "pressure_bar", "target_gL"]);
  expect(keysOf(rose)).toEqual(["volume_hL", "dose_gL", "target_gL"]);
  expect(keysOf(zero)).toEqual(["volume_hL", "pressure_bar"]);
});

test("ranges around the plan's own: half to half as much again, 2 bar either way, 15 to 30 and 0 to 60 g/L", () => {
  // 60 hL, 5.2 bar, 8.5 g/L; 22.5 g/L
  expect(range("volume_hL", brut)).toEqual([30, 90, 0.5]);
  expect(range("pressure_bar", brut)).toEqual([3.2, 7.2, 0.05]);
  expect(range("target_gL", brut)).toEqual([0, 60, 0.5]);
  expect(range("dose_gL", rose)).toEqual([15, 30, 0.1]);
});

test("a plan outside the usual range still has room on both sides, and never more than the field allows", () => {
  const at = (change: Partial<BatchInputs["tirage"]>) => ({ ...rose, tirage: { ...rose.tirage, ...change } });
  expect(range("dose_gL", at({ dose_gL: 12 }))[0]).toBe(7);
  expect(range("dose_gL", at({ dose_gL: 58 })).slice(0, 2)).toEqual([15, 60]);
  expect(range("dose_gL", at({ dose_gL: 2 }))[0]).toBe(0);
  const sweet = { ...brut, dosage: { ...brut.dosage, target_gL: 250 } };
  expect(range("target_gL", sweet)[1]).toBe(300);
});

test("in other units the steps are whole there", () => {
  // 60 hL are 1585.03 gal, 5.2 bar 75.4 psi
  const [low, high, step] = range("volume_hL", brut, american);
  expect([low, high, step]).toEqual([800, 2370, 10]);
  expect(range("pressure_bar", brut, american)).toEqual([46.5, 104, 0.5]);
  const knob = knobOf("pressure_bar", brut, american)!;
  expect(knob.label).toBe("Excess pressure wanted, at 53.6 °F");
  expectRelative(knob.kept(knob.shown(5.2)), 5.2, 1e-12);
});

test.each([
  [60, 0.5],
  [4, 0.05],
  [15, 0.1],
  [80, 1],
  [160, 2],
  [400, 5],
  [799, 5],
  [0.01, 0.0001],
])("%d makes steps of %d", (span, step) => expect(niceStep(span)).toBe(step));

test("a slider stands on its nearest step, without a float's tail", () => {
  const knob = knobOf("pressure_bar", brut, kept)!;
  expect([onStep(knob, 5.2), onStep(knob, 5.234), onStep(knob, 9), onStep(knob, -3)]).toEqual([
    5.2, 5.25, 7.2, 3.2,
  ]);
});

test("ends and steps of every batch are inside the field's range, in either unit", () => {
  const fieldOf = {
    volume_hL: fields.baseWine.volume_hL,
    pressure_bar: fields.tirage.pressure_bar,
    dose_gL: fields.tirage.dose_gL,
    target_gL: fields.dosage.target_gL,
  };
  for (const { inputs } of randomBatches(40, 11)) {
    for (const key of KNOB_KEYS) {
      for (const units of [kept, american]) {
        const knob = knobOf(key, inputs, units);
        if (!knob) continue;
        expect(knob.min).toBeLessThan(knob.max);
        for (const end of [knob.min, knob.max]) {
          expect([key, isWithin(fieldOf[key].domain, knob.kept(end))]).toEqual([key, true]);
        }
      }
    }
  }
});

test("what was set, in words and in the person's unit", () => {
  expect(changesOf(brut, { volume_hL: 70, target_gL: 10 }, kept)).toEqual([
    "70 hL of base wine instead of 60 hL",
    asRead("sweetness 10 g/L instead of 8.5 g/L"),
  ]);
  expect(changesOf(brut, { pressure_bar: 6 }, american)).toEqual([
    asRead("excess pressure 87.02 psi instead of 75.42 psi"),
  ]);
  expect(changesOf(rose, { dose_gL: 24 }, kept)).toEqual([
    asRead("dose 24 g/L sucrose instead of 22.5 g/L sucrose"),
  ]);
});

test("labour that grows otherwise belongs to the volume", () => {
  expect(changesOf(brut, { volume_hL: 30, labour_pct: 50 }, kept)).toEqual([
    "30 hL of base wine instead of 60 hL",
    "50 % of the labour grows with it",
  ]);
  expect(changesOf(brut, { labour_pct: 50 }, kept)).toEqual([]);
});

test("the form's own value is no change", () => {
  expect(changesText(changesOf(brut, { volume_hL: 60, labour_pct: 100 }, kept))).toBe("nothing changed");
  expect(changesText(["a", "b"])).toBe("a; b");
});

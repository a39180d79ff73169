/**
 * A setting's figures beside the form's: the right figures, and words and numbers at every setting.
 */
import fc from "fast-check";
import type { BatchInputs } from "../../../src/cellar/batch/fields";
import { planBatch } from "../../../src/cellar/batch/plan";
import { atSettings, attemptPlan, type Settings } from "../../../src/cellar/batch/what-if";
import { checksMoved, linesOf, spokenOf } from "../../../src/taskpane/variants/figures";
import { figureRows, stateOf, type Variant } from "../../../src/taskpane/variants/kept";
import { KNOB_KEYS, knobOf } from "../../../src/taskpane/variants/knobs";
import { Units } from "../../../src/taskpane/units";
import { inputsOf, sampleInputs } from "../../support/samples";
import { changed } from "../../cellar/batch/worked-batch";
import { asRead } from "./reader";
import { SEED } from "../../support/fuzz";

const units = new Units(undefined);
const psi = new Units({ getItem: (key) => (key.endsWith("pressure") ? "psi" : null), setItem: () => {} });
const worked = inputsOf(changed());
const lines = (inputs: BatchInputs, settings: Settings, shownIn = units) => {
  const [own, now] = [planBatch(inputs), planBatch(atSettings(inputs, settings))];
  return new Map(
    linesOf(inputs, own, now, shownIn).map(({ label, own: before, now: after, change }) => [
      label,
      [before, after, change],
    ]),
  );
};

test("half the wine by hand: bottles and sugar halve, pressure and dosage are the same", () => {
  const found = lines(worked, { volume_hL: 50 });
  expect(found.get("Bottles")).toEqual(["13,536", "6,768", "−6,768"].map(asRead));
  // 24·10 000/(1 − 0.015) g
  expect(found.get("Sugar to weigh, kg")).toEqual(["243.65", "121.83", "−121.83"].map(asRead));
  expect(found.get("Excess pressure in the cellar at 12 °C, bar")![2]).toBe("same");
  expect(found.get("Dosage a bottle, mL")![2]).toBe("same");
});

test("sweeter: 750·(20 − 8)/631.6 mL more, another term, same bottles", () => {
  // 600 g/L of sucrose are 631.57 of glucose + fructose
  const found = lines(worked, { target_gL: 20 });
  expect(found.get("Dosage a bottle, mL")).toEqual(["9.50", "23.75", "+14.25"].map(asRead));
  expect(found.get("Driest term permitted")).toEqual(["brut", "dry", "changed"]);
  expect(found.get("Bottles")![2]).toBe("same");
});

test("pressure in the person's unit, high end beside the expected", () => {
  const own = planBatch(worked).tirage.pressures.hottest;
  const found = lines(worked, { dose_gL: 26 }, psi);
  const [before, after, change] = found.get("Excess pressure on the hottest day, 25 °C, psi")!;
  // 14.5038 psi a bar
  const inPsi = (bar: number) => asRead((bar * 14.503_77).toFixed(1));
  const now = planBatch(atSettings(worked, { dose_gL: 26 })).tirage.pressures.hottest;
  expect([before, after, change]).toEqual([
    inPsi(own.expected),
    inPsi(now.expected),
    `+${inPsi(now.expected - own.expected)}`,
  ]);
});

test("checks that moved are named, worse and better, each once", () => {
  // 20 mL of room: 24 g/L take 28.5 mL; and brut ends at 12
  const own = planBatch(worked);
  const sweet = planBatch(atSettings(worked, { target_gL: 24 }));
  const { worse, better } = checksMoved(own, sweet, units);
  expect(worse.map(({ verdict, what }) => [verdict, what.split(":")[0]])).toEqual([
    ["stop", "Liqueur a bottle, room in the neck for 20 mL"],
    ["stop", "The sweetness term wanted is"],
    ["look again", "Sugar off the term's nearer bound by at least 1 g/L"],
  ]);
  expect(better).toEqual([]);
  expect(checksMoved(sweet, own, units)).toEqual({ worse: [], better: worse });
  expect(checksMoved(own, own, units)).toEqual({ worse: [], better: [] });
});

test("what a listener is told has the number to weigh and the highest pressure", () => {
  const plan = planBatch(worked);
  expect(spokenOf(plan, units)).toBe(
    asRead(
      `13,536 bottles, 243.65 kg of sugar, up to ${plan.tirage.pressures.hottest.high.toFixed(2)} bar on the hottest day, brut; worst check: ${plan.worst}.`,
    ),
  );
});

test("no setting on any slider throws, or shows what is no number", () => {
  const samples = ["oxlip-hill-brut.json", "oxlip-hill-rose.json", "oxlip-hill-magnum-zero.json"].map(
    sampleInputs,
  );
  const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);
  let planned = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...samples),
      fc.tuple(share, share, share, share),
      fc.integer({ min: 0, max: 100 }),
      fc.constantFrom(units, psi),
      (inputs, shares, labour_pct, shownIn) => {
        const set = KNOB_KEYS.flatMap((key, index) => {
          const knob = knobOf(key, inputs, shownIn);
          return knob ? [[key, knob.kept(knob.min + shares[index]! * (knob.max - knob.min))] as const] : [];
        });
        const tried = attemptPlan(atSettings(inputs, { ...Object.fromEntries(set), labour_pct }));
        if ("problems" in tried) {
          expect(tried.problems.length).toBeGreaterThan(0);
          return;
        }
        planned += 1;
        const texts = linesOf(inputs, planBatch(inputs), tried.plan, shownIn).flatMap(
          ({ label, circumstance, own, now, change }) => [label, circumstance, own, now, change],
        );
        expect(texts.join(" ")).not.toMatch(/NaN|∞|undefined|null/u);
        expect(spokenOf(tried.plan, shownIn)).not.toMatch(/NaN|∞|undefined|null/u);
      },
    ),
    { seed: SEED, numRuns: 500 },
  );
  expect(planned).toBeGreaterThan(300);
});

describe("variants side by side", () => {
  const columns = (...batches: BatchInputs[]) =>
    batches.map((inputs) => linesOf(inputs, planBatch(inputs), planBatch(inputs), units));

  test("of one form, the circumstances stand in the heading", () => {
    const rows = figureRows(columns(worked, atSettings(worked, { volume_hL: 50 })));
    expect(rows[0]).toEqual({ label: "Bottles", cells: ["13,536", "6,768"].map(asRead) });
    expect(rows.map(({ label }) => label)).toContain("Excess pressure in the cellar at 12 °C, bar");
  });

  test("of forms with another cellar or currency, with each figure", () => {
    const warmer = inputsOf(changed({ tirage: { cellar_C: 14 }, batch: { currency: "CHF" } }));
    const rows = new Map(figureRows(columns(worked, warmer)).map(({ label, cells }) => [label, cells]));
    const cellar = rows.get("Excess pressure in the cellar, bar")!;
    expect(cellar.map((cell) => cell.replace(/^.*\(/u, "("))).toEqual(["(12 °C)", "(14 °C)"]);
    expect(rows.get("Total cost")!.map((cell) => cell.slice(-5))).toEqual(["(EUR)", "(CHF)"]);
    expect(rows.get("Bottles")).toEqual(["13,536", "13,536"].map(asRead));
  });

  test("a variant says what became of its form", () => {
    const inputs = atSettings(worked, { volume_hL: 50 });
    const variant: Variant = { form: worked, settings: { volume_hL: 50 }, inputs, plan: planBatch(inputs) };
    expect(stateOf(variant, inputsOf(changed()))).toBe("");
    expect(stateOf(variant, atSettings(worked, { volume_hL: 50 }))).toBe("The form holds it.");
    expect(stateOf(variant, inputsOf(changed({ batch: { lot: "7" } })))).toBe("Made from an earlier form.");
    expect(stateOf(variant, null)).toBe("Made from an earlier form.");
  });
});

/**
 * The steps of the form: nothing is left out, and each says what its checks found.
 */
import { CHECK_KEYS } from "../../src/cellar/batch/checks";
import { fields } from "../../src/cellar/batch/fields";
import { planBatch } from "../../src/cellar/batch/plan";
import { findings, verdictSentence } from "../../src/taskpane/findings";
import { keyFigures, STEPS } from "../../src/taskpane/steps";
import { Units } from "../../src/taskpane/units";
import { sampleInputs } from "../support/samples";

const inputs = sampleInputs("oxlip-hill-brut.json");
const plan = planBatch(inputs);
const metric = new Units(undefined);

test("every section of the inputs stands in one step", () =>
  expect(STEPS.flatMap(({ sections, later = [] }) => [...sections, ...later]).sort()).toEqual(
    Object.keys(fields).sort(),
  ));

test("every check belongs to one step", () =>
  expect(STEPS.flatMap(({ checks }) => checks).sort()).toEqual([...CHECK_KEYS].sort()));

test("every figure has a value in words or digits", () => {
  for (const { figures } of STEPS)
    for (const { label, value } of figures(inputs, plan, metric)) {
      expect(label).toMatch(/\p{L}/u);
      expect(value).toMatch(/^[^\s]+/);
      expect(value).not.toMatch(/NaN|Infinity|undefined/);
    }
});

test("figures are shown in the unit that was chosen", () => {
  const store = new Map<string, string>();
  const units = new Units({
    getItem: (key) => store.get(key) ?? null,
    setItem: (key, value) => void store.set(key, value),
  });
  units.choose("pressure", "psi");
  units.choose("temperature", "°F");
  const shown = (of: Units) =>
    keyFigures(inputs, plan, of).find(({ label }) => label.startsWith("Excess pressure, cellar"))!;
  // 12 °C are 53.6 °F; 1 bar is 14.5038 psi
  expect(shown(units).label).toBe("Excess pressure, cellar, 53.6 °F");
  expect(shown(units).unit).toBe("psi");
  const bar = Number.parseFloat(shown(metric).value);
  expect(Number.parseFloat(shown(units).value) / bar).toBeCloseTo(14.5038, 1);
});

test("a stop goes before what is worth another look", () => {
  const warm = planBatch({ ...inputs, tirage: { ...inputs.tirage, hottest_C: 40, glassRating_bar: 8 } });
  const found = findings(warm, metric);
  expect(found[0]!.verdict).toBe("stop");
  const verdicts = found.map(({ verdict }) => verdict);
  expect(verdicts.indexOf("look again")).toBeGreaterThan(verdicts.lastIndexOf("stop"));
  expect(findings(warm, metric, ["hottest"])).toHaveLength(1);
  expect(findings(warm, metric, ["hottest"])[0]!.what).toMatch(
    /^Highest pressure in storage, glass rating 8 bar: /,
  );
});

test.each([
  [[], "All checks are fine."],
  [["look again", "look again"], "Look again: 2 of the checks."],
  [["stop", "look again"], "Stop: 1 of the checks; 1 more to look at again."],
] as const)("%j in a sentence", (verdicts, sentence) =>
  expect(verdictSentence(verdicts.map((verdict) => ({ verdict, what: "" })))).toBe(sentence),
);

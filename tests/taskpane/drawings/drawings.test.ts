import { drawn, type Drawn } from "./page";
import { costDrawing, COST_WORDS } from "../../../src/taskpane/drawings/cost";
import { neckDrawing } from "../../../src/taskpane/drawings/neck";
import { pressureDrawing } from "../../../src/taskpane/drawings/pressure";
import { timelineDrawing } from "../../../src/taskpane/drawings/timeline";
import { UNITS, Units } from "../../../src/taskpane/units";
import type { Batch } from "../../../src/workbook/book";
import { PARTS } from "../../../src/workbook/plan/cost-parts";
import { randomBatches } from "../../support/random-batches";
import { sampleFiles, sampleInputs } from "../../support/samples";
import { EDGES, batchOf, changed, free } from "./batches";

const unitsOf = (chosen: Record<string, string>) =>
  new Units({ getItem: (key) => chosen[key] ?? null, setItem: () => undefined });
const metric = unitsOf({});
const other = unitsOf(
  Object.fromEntries(
    Object.entries(UNITS).map(([quantity, [, unit]]) => [`mousse.unit.${quantity}`, unit.name]),
  ),
);

const DRAWINGS = { pressureDrawing, neckDrawing, timelineDrawing, costDrawing };
const every = ({ inputs, plan }: Batch, units: Units) =>
  Object.values(DRAWINGS).map((drawing) => drawn(drawing(inputs, plan, units)));
const said = (figure: Drawn) => figure.tagged("desc")[0]?.text() ?? "";

const batches: [string, () => Batch][] = [
  ...sampleFiles.map((file): [string, () => Batch] => [file, () => batchOf(sampleInputs(file))]),
  ...Object.entries(EDGES),
];

describe.each(batches)("%s", (_, batch) => {
  const figures = [metric, other].flatMap((units) => every(batch(), units));

  test("no attribute and no text holds what is no number", () => {
    for (const figure of figures) {
      for (const { attributes } of figure.all()) {
        for (const [name, value] of attributes)
          expect(`${name}=${value}`).not.toMatch(/NaN|Infinity|undefined|null/);
      }
      expect(figure.text()).not.toMatch(/NaN|∞|undefined|null/);
    }
  });

  test("each picture has a title, and its description says all that is written in it and below", () => {
    for (const figure of figures) {
      const [picture] = figure.tagged("svg");
      if (!picture) continue;
      expect(picture.attributes.get("role")).toBe("img");
      expect(picture.tagged("title")[0]!.text()).toBe(figure.tagged("figcaption")[0]!.text());
      const words = said(figure);
      for (const row of figure.tagged("li")) expect(words).toContain(row.text());
      for (const name of figure.classed("drawing-strong"))
        expect(words).toContain(name.text().replace("Rating ", ""));
    }
  });

  test("no id stands twice", () => {
    const ids = figures.flatMap((figure) =>
      figure.all().flatMap(({ attributes }) => attributes.get("id") ?? []),
    );
    expect(new Set(ids).size).toBe(ids.length);
  });
});

test("random batches draw without a fault", () => {
  for (const batch of randomBatches(100, 11)) {
    for (const figure of every(batch, metric)) {
      const values = figure.all().flatMap(({ attributes }) => [...attributes.values()]);
      expect(values.filter((value) => /NaN|Infinity|undefined/.test(value))).toEqual([]);
    }
  }
});

describe("what the pressure drawing says", () => {
  const words = (batch: Batch, units = metric) =>
    said(drawn(pressureDrawing(batch.inputs, batch.plan, units)));

  test("expected, low and high, at both temperatures, in the reader's units", () => {
    const batch = changed({});
    const { cellar } = batch.plan.tirage.pressures;
    const [low, expected, high] = [cellar.low, cellar.expected, cellar.high].map((bar) => bar.toFixed(2));
    expect(words(batch)).toContain(`Cellar, 12 °C: expected ${expected} bar, ${low} to ${high} bar.`);
    expect(words(batch, other)).toContain(
      `Cellar, 53.6 °F: expected ${(cellar.expected * 14.5038).toFixed(1)} psi`,
    );
  });

  test("no rating is invented", () => {
    const batch = changed({ tirage: { glassRating_bar: null } });
    expect(words(batch)).toContain("No glass maker's rating is given, so none is drawn.");
    const figure = drawn(pressureDrawing(batch.inputs, batch.plan, metric));
    expect(figure.classed("drawing-rating")).toEqual([]);
    const given = changed({});
    expect(drawn(pressureDrawing(given.inputs, given.plan, metric)).classed("drawing-rating")).toHaveLength(
      2,
    );
  });

  test("whether the band reaches the rating", () => {
    const rated = (glassRating_bar: number) => words(changed({ tirage: { glassRating_bar } }));
    expect(rated(11)).toContain("The band stays below it up to 26 °C.");
    expect(rated(7.5)).toMatch(/The band reaches it at \d+\.\d °C\./);
    expect(rated(2)).toContain("The band is above it at every temperature drawn.");
    expect(rated(30)).toContain("30.00 bar, far above what is drawn.");
  });

  test("the least of the rules, or why there is none", () => {
    const batch = changed({});
    expect(words(batch)).toContain(
      "Least for quality sparkling wine (EU), 20 °C: 3.50 bar in the finished wine.",
    );
    // no batch can be planned by these rules yet, as they have no sweetness terms
    const abroad = { ...batch.inputs, batch: { ...batch.inputs.batch, rules: "AU" as "EU" } };
    expect(words({ inputs: abroad, plan: batch.plan })).toContain(
      "The rules of AU count g/L CO2: their least is not drawn.",
    );
  });
});

describe("what the neck says", () => {
  const words = (edge: string) => {
    const { inputs, plan } = EDGES[edge]!();
    return said(drawn(neckDrawing(inputs, plan)));
  };

  test.each([
    ["no dosage", "Zero dosage: no liqueur goes in."],
    ["no dosage", "Top-up wine needed: 18.00 mL a bottle."],
    ["a dosage that does not fit", "of the dosage does not fit."],
    ["more wine left than wanted", "No room: 758 mL remain after disgorging, more than the fill wanted."],
    ["more wine lost than filled", "No room is known: 120 mL are lost, more than the 100 mL filled."],
  ])("%s: %s", (edge, sentence) => expect(words(edge)).toContain(sentence));

  test("where not all fits, the part that does is told apart", () => {
    const texts = (batch: Batch) =>
      drawn(neckDrawing(...both(batch)))
        .tagged("text")
        .map((each) => each.text());
    expect(texts(EDGES["a dosage that does not fit"]!())).toEqual(
      expect.arrayContaining(["Dosage that fits", "5.00 mL", "Does not fit"]),
    );
    expect(texts(changed({}))).toEqual(expect.arrayContaining(["Dosage", "Top-up wine"]));
  });

  test("a dosage that fits is not told not to", () => {
    expect(said(drawn(neckDrawing(...both(changed({})))))).not.toContain("does not fit");
  });
});

describe("what the timeline says", () => {
  const words = (batch: Batch) => said(drawn(timelineDrawing(...both(batch))));

  test("each day in words", () => {
    const all = words(changed({}));
    for (const day of [
      "Tirage: Apr 14, 2026.",
      "Earliest disgorging: Jan 14, 2027.",
      "Release: Feb 14, 2028.",
    ])
      expect(all).toContain(day);
    expect(all).not.toContain("planned before that");
  });

  test("a disgorging planned too early", () => {
    expect(words(changed({ lees: { lees_months: 3 } }))).toContain("Disgorging is planned before that.");
  });

  test("a reading of another year does not stretch the scale", () => {
    const all = words(EDGES["six readings, one before the tirage"]!());
    expect(all).toContain("Reading 5: Jun 1, 2026.");
    expect(all).toContain("Reading 6, Jan 1, 2020: outside these dates, not drawn.");
  });
});

describe("what the cost says", () => {
  test("the sheet's own words for the parts, all of them", () => {
    expect(COST_WORDS).toEqual(Object.fromEntries(PARTS.map(([key, label]) => [key, label])));
  });

  test("a sentence instead of a bar where nothing costs", () => {
    const figure = drawn(costDrawing(...both(free())));
    expect(figure.tagged("svg")).toEqual([]);
    expect(figure.text()).toMatch(/Nothing costs anything yet\.\d+ prices are missing/);
  });

  test("the whole is the plan's, and prices that are missing are told", () => {
    const batch = EDGES["some prices missing"]!();
    const figure = drawn(costDrawing(...both(batch)));
    expect(said(figure)).toContain(`In all ${batch.plan.costs.perBottle.toFixed(2)} EUR a bottle`);
    expect(said(figure)).toContain(`${batch.plan.costs.unpriced} prices are missing`);
    const priced = drawn(costDrawing(...both(changed({}))));
    expect(said(priced)).not.toContain("missing");
  });
});

function both({ inputs, plan }: Batch) {
  return [inputs, plan] as const;
}

/**
 * The regulation data as one table, printed for review, and pinned: an edited, added or lost figure fails here and has
 * to be looked at. The figures themselves are held against their sources in tests/published.
 */
import { designations } from "../../src/cellar/rules/designations";
import { legalLimits, practiceLimits, type LegalLimits } from "../../src/cellar/rules/limits";
import { pressureRules } from "../../src/cellar/rules/pressure-classes";
import { RECORDED, RULE_SETS, ruleSetsOf, type Source } from "../../src/cellar/rules/source";
import { LANGUAGES, sweetnessRules } from "../../src/cellar/rules/sweetness-bands";

interface Line {
  readonly table: string;
  readonly rules: string;
  readonly what: string;
  readonly figures: readonly number[];
  readonly source: Source;
}

const present = (figures: readonly (number | null | undefined)[]) =>
  figures.filter((figure): figure is number => typeof figure === "number");

const sweetness = ruleSetsOf(sweetnessRules).flatMap((rules) =>
  sweetnessRules[rules].bands.map((band): Line => ({
    table: "sweetness",
    rules,
    what:
      LANGUAGES.map((language) => band.terms[language].join("/")).join(", ") +
      ` [words: ${sweetnessRules[rules].words.mark}]`,
    figures: present([band.low, band.high, band.toleranceBelow, band.toleranceAbove]),
    source: sweetnessRules[rules].source,
  })),
);
const pressure = ruleSetsOf(pressureRules).flatMap((rules) =>
  pressureRules[rules].classes.map((each): Line => ({
    table: `pressure, ${pressureRules[rules].measure}`,
    rules,
    what: each.name,
    figures: present([each.low, each.high, each.smallBottle?.low, each.smallBottle?.belowMl]),
    source: pressureRules[rules].source,
  })),
);
type LegalEntry = NonNullable<LegalLimits[keyof LegalLimits]>;
const figuresOf = (entry: LegalEntry) =>
  "value" in entry ? [entry.value] : [...entry.spanMl, ...entry.allowedMl];
const limits = ruleSetsOf(legalLimits).flatMap((rules) =>
  (Object.entries(legalLimits[rules]) as [string, LegalEntry][]).map(([what, entry]): Line => ({
    table: "limits",
    rules,
    what,
    figures: figuresOf(entry),
    source: entry.source,
  })),
);
const practice = Object.entries(practiceLimits).map(([what, limit]): Line => ({
  table: "practice",
  rules: "any",
  what,
  figures: [limit.value],
  source: limit.source,
}));
const ageing = designations.map(({ name, leesMonths, totalMonths, source }): Line => ({
  table: "ageing, months",
  rules: "any",
  what: name,
  figures: [leesMonths, totalMonths],
  source,
}));

const tables = { sweetness, pressure, limits, practice, ageing };
const all = Object.values(tables).flat();

test("printed for review", () => {
  const lines = all.map(({ table, rules, what, figures, source }) =>
    [table, rules, what, figures.join(" "), `${source.text} (${source.mark}, ${source.recorded})`].join(
      " | ",
    ),
  );
  process.stdout.write(`\n${lines.join("\n")}\n`);
  expect(lines.length).toBeGreaterThan(50);
});

test.each<[keyof typeof tables, number, number]>([
  // EU 0 3 · 0 6 · 0 12 · 12 17 · 17 32 · 32 50 · 50, and 3 + 3 for each of seven; OIV 0 12 · 12 17 · 17 32 · 32 50 · 50, 3 for each of three
  ["sweetness", 12, 231 + 42 + 222 + 9],
  // EU 3.5 3 250, 3, 1 2.5; OIV 3.5 3 250; US 0 3.92, 3.92; AU 5; Québec 3 5
  ["pressure", 8, 263 + 256.5 + 7.84 + 5 + 8],
  // EU 1.5 0.5 185 0.8 0.5, sizes 125 1500 and 125 200 375 750 1500; US 1.5 0.1 14
  ["limits", 9, 188.3 + 1625 + 2950 + 15.6],
  // 2, 9.5, 11.5, 13, 0, 30, 40, −20, 1
  ["practice", 12, 305],
  // 9 12 12 9 9 18 30 36 18 24 24 30 60 15 24 36 12 9 on the lees, 9 15 36 12 and the same from there in all
  ["ageing", 18, 387 + 417],
])("%s: %i rows, figures adding up to %f", (table, rows, sum) => {
  expect(tables[table]).toHaveLength(rows);
  expect(
    tables[table].flatMap(({ figures }) => figures).reduce((total, figure) => total + figure, 0),
  ).toBeCloseTo(sum, 9);
});

test("every row says where it is from, how sure it is and when it was recorded", () => {
  for (const { what, source } of all) {
    expect([what, source.text.length > 10]).toEqual([what, true]);
    expect(["read", "secondary", "memory", "practice"]).toContain(source.mark);
    expect(source.recorded).toBe(RECORDED);
    expect(source.recorded).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  }
});

test("every rule set has something to say somewhere", () => {
  for (const ruleSet of RULE_SETS)
    expect([ruleSet, all.some(({ rules }) => rules === ruleSet)]).toEqual([ruleSet, true]);
});

test("a word means one band within its language", () => {
  for (const rules of ruleSetsOf(sweetnessRules)) {
    for (const language of LANGUAGES) {
      const words = sweetnessRules[rules].bands.flatMap((band) => band.terms[language]);
      expect([rules, language, new Set(words).size]).toEqual([rules, language, words.length]);
    }
  }
});

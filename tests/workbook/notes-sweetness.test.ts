/**
 * The sweetness terms on the sheet Notes: bounds where formulas read them, how they count, and every word.
 */
import { LANGUAGES, sweetnessRules } from "../../src/cellar/rules/sweetness-bands";
import { wordsOf } from "../../src/workbook/notes/names";
import { below, notes, rows, valueNamed, withMark } from "../support/notes-rows";

type RuleSet = keyof typeof sweetnessRules;

const places = new Map(notes.names.map((each) => [each.name, each]));
const found = below("Sweetness terms");
const bands = Object.entries(sweetnessRules).flatMap(([rules, { bands }]) =>
  bands.map((band, index) => ({ rules: rules as RuleSet, ordinal: index + 1, band })),
);

test("each with its bounds, which are named", () => {
  expect(found.map((row) => row.slice(0, 4))).toEqual(
    bands.map(({ rules, band }) => [band.terms.en[0], rules, band.low, band.high ?? "open"]),
  );
  for (const { rules, ordinal, band } of bands) {
    expect(valueNamed(`notes_band_${rules}_${ordinal}_low`)).toBe(band.low);
    // what is open is no number that a formula could read
    expect(valueNamed(`notes_band_${rules}_${ordinal}_high`)).toBe(band.high ?? undefined);
  }
});

const EU = "Delegated Reg. (EU) 2019/33 annex III part A (read)";
test.each<[string, string, string]>([
  [
    "brut nature",
    "EU",
    `only without added sugar; not the upper bound itself; analysis 3 below, 3 above; ${EU}`,
  ],
  ["extra brut", "EU", `analysis 3 below, 3 above; ${EU}`],
  ["brut", "EU", `not the upper bound itself; analysis 3 below, 3 above; ${EU}`],
  ["sweet", "EU", `not the lower bound itself; analysis 3 below, 3 above; ${EU}`],
  ["brut", "OIV", "analysis 3 above; OIV Code of Oenological Practices I.4.4 (read)"],
  ["demi-sec", "OIV", "OIV Code of Oenological Practices I.4.4 (read)"],
])("%s, %s: how its bounds count", (term, rules, how) =>
  expect(found.filter((row) => row[0] === term && row[1] === rules).map((row) => row[4])).toEqual([how]),
);

test("all words of a term stand in one column, each language's usual one by its name", () => {
  for (const { rules, ordinal, band } of bands) {
    const { first, last } = wordsOf(rules, ordinal);
    const [from, to] = [places.get(first)!, places.get(last)!];
    expect([from.column, to.column]).toEqual([0, 0]);
    const column = rows.slice(from.row, to.row + 1);
    const all = new Set(LANGUAGES.flatMap((language) => [...band.terms[language]]));
    expect(new Set(column.map(([word]) => word))).toEqual(all);
    for (const language of LANGUAGES) {
      expect(valueNamed(`notes_word_${rules}_${ordinal}_${language}`)).toBe(band.terms[language][0]);
      expect(column).toContainEqual([
        band.terms[language][0],
        rules,
        language,
        null,
        `${band.terms.en[0]}; ${withMark(sweetnessRules[rules].words)}`,
      ]);
    }
    // the others are said to be others, and none stands twice
    const others = column.slice(LANGUAGES.length);
    expect(others.every(([, , language]) => language === "also")).toBe(true);
    const usual = new Set(LANGUAGES.map((language) => band.terms[language][0]));
    expect(others.map(([word]) => word)).toEqual([...all].filter((word) => !usual.has(word)));
    others.forEach(([word], index) =>
      expect(valueNamed(`notes_word_${rules}_${ordinal}_also${index + 1}`)).toBe(word),
    );
  }
});

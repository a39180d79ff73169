/**
 * Sheets in another language: which words change, and which are somebody's own or a function's.
 */
import { pressureRules } from "../../src/cellar/rules/pressure-classes";
import type { ChartData, PlacedCell, SheetData, Validation } from "../../src/workbook/data";
import { layOut } from "../../src/workbook/layout";
import { plainWord, sheetWords, typedTexts } from "../../src/workbook/sheet-words";
import { translatedSheets } from "../../src/workbook/translated";
import { sampleInputs } from "../support/samples";

const catalogue = {
  ...{ Plan: "Projet", Season: "Saison", stop: "arrêt", dose: "dosage", fine: "bien", wide: 'large "12"' },
  ...{ Bottles: "Bouteilles", 'say "no"': "dire", permitted: "permis", EU: "UE" },
  ...{ "not permitted": "interdit", "within tolerance": "toléré", "between classes": "entre", en: "ang" },
};
const LANGUAGE = { code: "xx", name: "Other", catalogue };
const page = { frozenRows: 0, pagesTall: 0, landscape: false };
const sheetOf = (cells: readonly PlacedCell[], more: Partial<SheetData> = {}): SheetData => ({
  ...layOut({ name: "Season", rows: [], columnWidths: [], page }),
  cells,
  ...more,
});
const put = (value: PlacedCell["value"], more: Partial<PlacedCell> = {}): PlacedCell => ({
  ...{ row: 0, column: 0, value, style: "label" },
  ...more,
});
const said = (sheets: readonly SheetData[], taken?: readonly string[], typed: readonly string[] = []) =>
  translatedSheets(sheets, LANGUAGE, { typed, ...(taken && { taken }) });
const names = (given: readonly string[], taken?: readonly string[]) =>
  said(
    given.map((name) => sheetOf([], { name })),
    taken,
  ).map(({ name }) => name);
const formula = (text: string) =>
  said([sheetOf([put(1, { formula: text })]), sheetOf([], { name: "Plan · Bottles" })])[0]!.cells[0]!.formula;

describe("names of sheets", () => {
  test("only the kind of sheet is a word of ours", () =>
    expect(names(["Plan · Bottles · Season", "Season", "Notes"])).toEqual([
      ...["Projet · Bottles · Season", "Saison", "Notes"],
    ]));
  test("none that is there already, whatever the case", () =>
    expect(names(["Season"], ["SAISON"])).toEqual(["Saison (2)"]));
  test("none that another of them has got", () =>
    expect(names(["Saison", "Season"])).toEqual(["Saison", "Saison (2)"]));
  test("one that stays is not renamed for being taken", () =>
    expect(names(["Notes"], ["Notes"])).toEqual(["Notes"]));
});

describe("formulas", () => {
  test.each([
    ["a word that is compared", 'IF(A1="stop", "fine", 2)', 'IF(A1="arrêt", "bien", 2)'],
    ["quotes inside a text", 'A1="say ""no"""', 'A1="dire"'],
    ["quotes inside the other text", 'A1="wide"', 'A1="large ""12"""'],
    ["an empty text", 'IF(A1="", "stop", "")', 'IF(A1="", "arrêt", "")'],
    ["what our function is given", 'MOUSSE.X("dose", A1)', 'MOUSSE.X("dose", A1)'],
    ["the same in small letters", 'mousse.x("dose")', 'mousse.x("dose")'],
    ["behind our function", 'MOUSSE.X(A1)&"dose"', 'MOUSSE.X(A1)&"dosage"'],
    [
      "in a function inside ours",
      'MOUSSE.X(IF(A1="dose", 1, 2), "dose")',
      'MOUSSE.X(IF(A1="dosage", 1, 2), "dose")',
    ],
    ["brackets without a name", '(A1="dose")*MOUSSE.X((A1), "dose")', '(A1="dosage")*MOUSSE.X((A1), "dose")'],
    ["functions with dots and figures", 'LOG10(1)+T.TEST("dose")', 'LOG10(1)+T.TEST("dosage")'],
    ["another sheet", "'Plan · Bottles'!B2", "'Projet · Bottles'!B2"],
    ["a sheet that is none of these", "'Plan · Dry''s'!B2", "'Plan · Dry''s'!B2"],
    ["a sheet's name as a text", `"'Plan · Bottles'!"`, `"'Plan · Bottles'!"`],
  ])("%s", (_name, text, expected) => expect(formula(text)).toBe(expected));

  test("apostrophes in the name of a sheet stay two", () => {
    const cells = [put(1, { formula: "'Plan · d''or'!A1" })];
    expect(said([sheetOf(cells, { name: "Plan · d'or" })])[0]!.cells[0]!.formula).toBe("'Projet · d''or'!A1");
  });
});

describe("cells", () => {
  const plan = { names: [{ name: "plan_worst", row: 9, column: 9 }] };
  const one = (cell: PlacedCell, more: Partial<SheetData> = {}, typed?: readonly string[]) =>
    said([sheetOf([cell], more)], undefined, typed)[0]!.cells[0]!;
  const rule = { row: 0, column: 0, title: "Bottles", message: "stop", allowBlank: false } as const;
  const list: Validation = { ...rule, kind: "list", options: ["dose"] };

  test("words change, figures and names of our functions do not", () => {
    const values = ["stop", 12, true, null, "nobody's"].map((value) => one(put(value)).value);
    expect(values).toEqual(["arrêt", 12, true, null, "nobody's"]);
    const kept = ["permitted", "not permitted", "within tolerance", "between classes", "EU", "en"];
    expect(kept.map((word) => one(put(word)).value)).toEqual(kept);
  });
  test("no formula and no note come to a cell that has none", () =>
    expect(one(put("stop", { column: 3 }))).toStrictEqual(put("arrêt", { column: 3 })));
  test("what was typed into a plan stays, but for a word chosen from a list", () => {
    const input = put("dose", { style: "input" });
    expect(one(input, plan).value).toBe("dose");
    expect(one(input, { ...plan, validations: [list] }).value).toBe("dosage");
    const elsewhere = { ...list, row: 1 };
    expect(one(input, { ...plan, validations: [elsewhere] }).value).toBe("dose");
    expect(one(input, { ...plan, validations: [{ ...rule, kind: "textLength", max: 9 }] }).value).toBe(
      "dose",
    );
    expect(one({ ...input, formula: "A2" }, plan).value).toBe("dosage");
    expect(one(put("dose"), plan).value).toBe("dosage");
    expect(one(input).value).toBe("dosage");
    const otherNames = { names: [{ name: "register_first", row: 0, column: 0 }] };
    expect(one(input, otherNames).value).toBe("dosage");
    expect(one(put("dose"), {}, ["dose"]).value).toBe("dose");
  });
  test("a note that holds a formula is one; any other is left", () => {
    expect(one(put(1, { note: '=IF(A1="stop", 1)' })).note).toBe('=IF(A1="arrêt", 1)');
    expect(one(put(1, { note: 'stop ="stop"' })).note).toBe('stop ="stop"');
  });
  test.each(["plan_language", "notes_language"])("the cell %s says which language it is", (name) => {
    const mark = { names: [{ name, row: 1, column: 2 }] };
    const cells = [put("en", { row: 1, column: 2 }), put("stop", { row: 1 }), put("stop", { column: 2 })];
    const [sheet] = said([sheetOf(cells, mark)]);
    expect(sheet!.cells.map(({ value }) => value)).toEqual(["xx", "arrêt", "arrêt"]);
  });
  test("rules, highlights and the cells of lists", () => {
    const area = { row: 0, column: 0, lastRow: 1, lastColumn: 0 };
    const rules: Validation[] = [
      { ...list, from: { ...area, sheet: "Season" } },
      { ...list, from: { ...area, sheet: "Other" } },
      { ...list, from: area },
      list,
      { ...rule, kind: "whole", min: 1, max: 2 },
    ];
    const highlights = [{ word: "stop", look: "bad", cells: [{ row: 1, column: 1 }] }] as const;
    const [sheet] = said([sheetOf([], { validations: rules, highlights })]);
    const words = { title: "Bouteilles", message: "arrêt" };
    expect(sheet!.validations).toStrictEqual([
      { ...list, ...words, options: ["dosage"], from: { ...area, sheet: "Saison" } },
      { ...list, ...words, options: ["dosage"], from: { ...area, sheet: "Other" } },
      { ...list, ...words, options: ["dosage"], from: area },
      { ...list, ...words, options: ["dosage"] },
      { ...rule, ...words, kind: "whole", min: 1, max: 2 },
    ]);
    expect(sheet!.highlights).toStrictEqual([{ ...highlights[0], word: "arrêt" }]);
  });
  test("charts: titles, and areas on sheets that were renamed", () => {
    const area = { row: 0, column: 0, lastRow: 1, lastColumn: 0 };
    const chart = (word: string, sheet: string, series: string): ChartData => ({
      ...{ kind: "bars", title: word, description: word, place: area },
      categories: { ...area, sheet },
      series: [
        { title: word, look: "dark", values: area },
        { title: word, look: "gap", values: { ...area, sheet: series } },
      ],
      horizontal: { title: word, min: 0 },
      vertical: { title: word, format: "0" },
    });
    const [sheet] = said([sheetOf([], { charts: [chart("stop", "Season", "Far")] })]);
    expect(sheet!.charts).toStrictEqual([chart("arrêt", "Saison", "Far")]);
  });
});

test("words of rules, of labels and of pressure classes stay, as functions know no others", () => {
  const classes = Object.values(pressureRules).flatMap((rules) => rules.classes.map(({ name }) => name));
  const kept = ["brut", "EU traditional method", ...classes];
  const all = Object.fromEntries(kept.map((word) => [word, "x"]));
  expect(kept.map(sheetWords({ ...LANGUAGE, catalogue: all }))).toEqual(kept);
});

test("the English word behind an option, in any of the languages", () => {
  const other = { code: "yy", name: "Third", catalogue: { dose: "Dosis" } };
  const plain = plainWord([LANGUAGE, other]);
  expect(["dosage", "Dosis"].map((word) => plain(word, ["pressure", "dose"]))).toEqual(["dose", "dose"]);
  expect(plain("dosage", ["pressure"])).toBeUndefined();
  expect(plain("arrêt", ["dose"])).toBeUndefined();
});

test("free texts of a batch are its own: name, lot, currency, notes, and no choices or blanks", () => {
  const brut = sampleInputs("oxlip-hill-brut.json");
  // its term is brut, its own material Dividers
  const batch = { ...brut.batch, name: "Reserve", lot: "", currency: "CHF" };
  const typed = typedTexts({ ...brut, batch, baseWine: { ...brut.baseWine, dryness: "bone dry" } });
  // no choice, no day, nothing that is blank
  expect([...typed].sort()).toEqual(["CHF", "Dividers", "Reserve", "bone dry", "brut"]);
});

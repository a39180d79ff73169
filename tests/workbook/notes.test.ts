/**
 * The sheet Notes holds each figure that the calculation module uses, with its rule set and source, where the other
 * sheets look for it.
 */
import packageJson from "../../package.json";
import { fields } from "../../src/cellar/batch/fields";
import { RATIO_TO_20C } from "../../src/cellar/gauge-table";
import { designations } from "../../src/cellar/rules/designations";
import { legalLimits, practiceLimits, type Limit } from "../../src/cellar/rules/limits";
import { pressureRules } from "../../src/cellar/rules/pressure-classes";
import { RECORDED } from "../../src/cellar/rules/source";
import { LANGUAGES, sweetnessRules } from "../../src/cellar/rules/sweetness-bands";
import type { CellValue } from "../../src/workbook/data";
import { wordsOf } from "../../src/workbook/notes/names";
import { listsOn, notesSheet } from "../../src/workbook/notes/sheet";
import { CAUTIONS } from "../../src/workbook/plan/cautions";
import { cellNamed } from "../support/sheet-cells";

type RuleSet = keyof typeof sweetnessRules;

const sheet = notesSheet([]);
const places = new Map(sheet.names.map((each) => [each.name, each]));
const named = (name: string) => cellNamed(sheet, name)?.value;
/** What stands in a row, up to its last cell; null is blank. */
function rowsOf(): readonly (readonly CellValue[])[] {
  const rows: CellValue[][] = [];
  for (const { row, column, value } of sheet.cells) {
    const cells = (rows[row] ??= []);
    while (cells.length < column) cells.push(null);
    cells[column] = value;
  }
  return Array.from(rows, (row) => row ?? []);
}
const rows = rowsOf();
const rowsWith = (...known: readonly CellValue[]) =>
  rows.filter((row) => known.every((each) => row.includes(each)));
/** Rows below a heading, its line of heads and up to the next blank row. */
function below(heading: string): readonly (readonly CellValue[])[] {
  const first = rows.findIndex(([title]) => String(title).startsWith(heading)) + 2;
  const end = rows.findIndex((row, index) => index >= first && row.length === 0);
  return rows.slice(first, end);
}

const withMark = ({ text, mark }: Limit["source"]) => (mark === "practice" ? text : `${text} (${mark})`);

test("each limit of law and of practice once, with its unit and source, under words of its own", () => {
  const found = below("Limits");
  const whose = [...Object.entries(legalLimits), ["practice", practiceLimits] as const];
  const single = whose.flatMap(([rules, limits]) =>
    Object.values<object>({ ...limits }).flatMap((limit) =>
      "value" in limit ? [{ rules, ...(limit as Limit) }] : [],
    ),
  );
  expect(single.length).toBeGreaterThan(15);
  for (const { rules, value, unit, source } of single) {
    const wanted = [rules, value, unit, withMark(source)];
    expect(
      found.filter((row) => wanted.every((each, index) => row[index + 1] === each)).length,
    ).toBeGreaterThan(0);
  }
  // and one for bottle sizes
  expect(found).toHaveLength(single.length + 1);
  const words = found.map(([what, rules]) => `${what} ${rules}`);
  expect(new Set(words).size).toBe(words.length);
  expect(found.filter(([what]) => String(what).trim() === "")).toEqual([]);
});

test("some of them in words", () => {
  const found = below("Limits");
  expect(found).toContainEqual([
    "Total SO2, at most",
    "EU",
    185,
    "mg/L",
    "Delegated Reg. (EU) 2019/934 annex II; 235 if not a quality wine (secondary)",
  ]);
  expect(found).toContainEqual([
    "A dry base wine, glucose + fructose at most",
    "practice",
    2,
    "g/L",
    "common practice, no source",
  ]);
  expect(found).toContainEqual([
    "Bottle sizes between 125 and 1500 mL",
    "EU",
    null,
    null,
    "125, 200, 375, 750, 1500 mL; Directive 2007/45/EC annex (read)",
  ]);
});

test("each pressure class, what it is counted in, and where small bottles may have less", () => {
  const found = below("Pressure classes");
  const classes = Object.entries(pressureRules).flatMap(([rules, { measure, classes, source }]) =>
    classes.map(({ name, low, high }) => ({ row: [name, rules, low, high ?? "open"], measure, source })),
  );
  expect(found.map((row) => row.slice(0, 4))).toEqual(classes.map(({ row }) => row));
  found.forEach(([, , , , last], index) => {
    const { measure, source } = classes[index]!;
    expect(String(last).startsWith(measure)).toBe(true);
    expect(String(last).endsWith(`; ${withMark(source)}`)).toBe(true);
  });
  expect(rowsWith("quality sparkling wine", "EU")[0]![4]).toBe(
    "excess bar at 20 °C; from 3 in bottles below 250 mL; Reg. (EU) 1308/2013 annex VII part II (memory)",
  );
  expect(rowsWith("still wine", "US")[0]![4]).toBe("g/L CO2; 27 CFR: still up to 0.392 g CO2/100 mL (read)");
});

describe("sweetness terms", () => {
  const found = below("Sweetness terms");
  const bands = Object.entries(sweetnessRules).flatMap(([rules, { bands }]) =>
    bands.map((band, index) => ({ rules: rules as RuleSet, ordinal: index + 1, band })),
  );

  test("each with its bounds, which are named", () => {
    expect(found.map((row) => row.slice(0, 4))).toEqual(
      bands.map(({ rules, band }) => [band.terms.en[0], rules, band.low, band.high ?? "open"]),
    );
    for (const { rules, ordinal, band } of bands) {
      expect(named(`notes_band_${rules}_${ordinal}_low`)).toBe(band.low);
      // what is open is no number that a formula could read
      expect(named(`notes_band_${rules}_${ordinal}_high`)).toBe(band.high ?? undefined);
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
        expect(named(`notes_word_${rules}_${ordinal}_${language}`)).toBe(band.terms[language][0]);
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
        expect(named(`notes_word_${rules}_${ordinal}_also${index + 1}`)).toBe(word),
      );
    }
  });
});

test("designations: months by their names, a table that can be sorted, the plans' drop-down list", () => {
  designations.forEach(({ name, leesMonths, totalMonths, source }, index) => {
    expect(named(`notes_designation_${index + 1}`)).toBe(name);
    expect(named(`notes_months_lees_${index + 1}`)).toBe(leesMonths);
    expect(named(`notes_months_total_${index + 1}`)).toBe(totalMonths);
    expect(rowsWith(name)).toEqual([[name, leesMonths, totalMonths, withMark(source)]]);
  });
  const first = places.get("notes_designation_1")!;
  const lastRow = first.row + designations.length - 1;
  const area = { row: first.row - 1, column: 0, lastRow, lastColumn: 3 };
  expect(sheet.tables).toEqual([{ name: "Ageing_minima", area }]);
  expect(rows[area.row]).toEqual(["Designation", "On the lees, months", "In all, months", "Source"]);
  const list = listsOn("Notes (2)", places);
  expect(list(fields.batch.designation)).toEqual({
    ...{ sheet: "Notes (2)", row: first.row, column: 0, lastRow, lastColumn: 0 },
  });
  expect(list(fields.batch.rules)).toBeUndefined();
  expect(listsOn("Notes", new Map())(fields.batch.designation)).toBeUndefined();
});

test("gauge readings: a ratio for each degree, by its name", () => {
  expect(below("Gauge readings")).toEqual(RATIO_TO_20C.map((ratio, celsius) => [celsius, ratio]));
  RATIO_TO_20C.forEach((ratio, celsius) => expect(named(`notes_gauge_${celsius}`)).toBe(ratio));
});

test("every caution runs over the whole width, with lines enough", () => {
  const width = sheet.columnWidths.reduce((sum, each) => sum + each, 0);
  for (const caution of CAUTIONS) {
    const row = rows.findIndex(([text]) => text === `•  ${caution}`);
    expect(sheet.merges).toContainEqual({ row, column: 0, lastColumn: 4 });
    const lines = Math.ceil(caution.length / width);
    if (lines > 1) expect(sheet.rowHeights.get(row)).toBeGreaterThanOrEqual(13 * lines);
  }
});

test("1 g of weighed sugar analyses as 1.0526 g: 180.16 · 2 ÷ 342.30 g/mol", () => {
  const [what] = rowsWith("g/L glucose + fructose").map(([, meaning]) => String(meaning));
  expect(what).toContain(((180.156 * 2) / 342.297).toFixed(4));
});

test("the day on which the regulation figures were recorded is said, and that they change", () => {
  const said = rows.map(([first]) => String(first)).find((first) => first.startsWith(`Recorded ${RECORDED}`));
  expect(said).toMatch(/Regulation changes/);
});

test("its version and language are known by their names, and its own name is free", () => {
  expect(named("notes_version")).toBe(packageJson.version);
  expect(named("notes_language")).toBe("en");
  expect([sheet.name, notesSheet(["notes"]).name]).toEqual(["Notes", "Notes (2)"]);
});

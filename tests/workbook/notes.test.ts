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
import { listsOn, notesSheet } from "../../src/workbook/notes/sheet";
import { CAUTIONS } from "../../src/workbook/plan/cautions";
import { below, notes, rows, rowsWith, valueNamed, withMark } from "../support/notes-rows";

const places = new Map(notes.names.map((each) => [each.name, each]));

test("each limit of law and of practice once, with its unit and source, under words of its own", () => {
  const found = below("Limits");
  const whose = [...Object.entries(legalLimits), ["practice", practiceLimits] as const];
  const single = whose.flatMap(([rules, limits]) =>
    Object.values<object>({ ...limits }).flatMap((limit) =>
      "value" in limit ? [{ rules, ...(limit as Limit) }] : [],
    ),
  );
  expect(single.length).toBeGreaterThan(15);
  // and one for bottle sizes, which has no value
  const wanted = single.map(({ rules, value, unit, source }) => [rules, value, unit, withMark(source)]);
  const sorted = (lines: readonly (readonly unknown[])[]) => lines.map((line) => JSON.stringify(line)).sort();
  const valued = found.filter(([, , value]) => value !== null);
  expect(sorted(valued.map((row) => row.slice(1)))).toEqual(sorted(wanted));
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

test("designations: months by their names, a table that can be sorted, the plans' drop-down list", () => {
  designations.forEach(({ name, leesMonths, totalMonths, source }, index) => {
    expect(valueNamed(`notes_designation_${index + 1}`)).toBe(name);
    expect(valueNamed(`notes_months_lees_${index + 1}`)).toBe(leesMonths);
    expect(valueNamed(`notes_months_total_${index + 1}`)).toBe(totalMonths);
    expect(rowsWith(name)).toEqual([[name, leesMonths, totalMonths, withMark(source)]]);
  });
  const first = places.get("notes_designation_1")!;
  const lastRow = first.row + designations.length - 1;
  const area = { row: first.row - 1, column: 0, lastRow, lastColumn: 3 };
  expect(notes.tables).toEqual([{ name: "Ageing_minima", area }]);
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
  RATIO_TO_20C.forEach((ratio, celsius) => expect(valueNamed(`notes_gauge_${celsius}`)).toBe(ratio));
});

test("every caution runs over the whole width, with lines enough", () => {
  const width = notes.columnWidths.reduce((sum, each) => sum + each, 0);
  for (const caution of CAUTIONS) {
    const row = rows.findIndex(([text]) => text === `•  ${caution}`);
    expect(notes.merges).toContainEqual({ row, column: 0, lastColumn: 4 });
    const lines = Math.ceil(caution.length / width);
    if (lines > 1) expect(notes.rowHeights.get(row)).toBeGreaterThanOrEqual(13 * lines);
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
  expect(valueNamed("notes_version")).toBe(packageJson.version);
  expect(valueNamed("notes_language")).toBe("en");
  expect([notes.name, notesSheet(["notes"]).name]).toEqual(["Notes", "Notes (2)"]);
});

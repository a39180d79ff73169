/**
 * A portable sheet as a whole: its rows stay where they are, each step stands once at the end, and what cannot be
 * written is an error of ours.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { batchBook } from "../../src/workbook/book";
import { cellAddress, type SheetData } from "../../src/workbook/data";
import { builtin, mousse, nth, type Expression } from "../../src/workbook/formula";
import { layOut } from "../../src/workbook/layout";
import { LIVE_ANYWHERE, LIVE_WITH_ADDIN } from "../../src/workbook/plan/glance";
import { WORKINGS_HEADING, portable } from "../../src/workbook/portable/render";
import { sampleInputs } from "../support/samples";

const inputs = sampleInputs("oxlip-hill-rose.json");
const sheets = (formulas: "add-in" | "portable") =>
  batchBook([{ inputs, plan: planBatch(inputs) }], [], { formulas }).sheets;
const texts = ({ cells }: SheetData) => cells.map(({ value }) => value);
/** The first row of the workings. */
const workingsOf = ({ cells }: SheetData) => cells.find(({ value }) => value === WORKINGS_HEADING)?.row;

test("no cell of the sheet moves, and the workings come after all of them", () => {
  const both = sheets("portable").map((sheet, index) => [sheet, sheets("add-in")[index]!] as const);
  for (const [there, own] of both) {
    const ofOwn = new Set(own.cells.map(({ row, column }) => cellAddress(row, column)));
    const last = Math.max(...own.cells.map(({ row }) => row));
    const more = there.cells.filter(({ row, column }) => !ofOwn.has(cellAddress(row, column)));
    expect(more.every(({ row }) => row > last)).toBe(true);
    expect(more.length > 0).toBe(own.cells.some(({ formula }) => formula?.includes("MOUSSE.")));
    expect(workingsOf(there)).toBe(more[0]?.row);
    expect(there.names).toEqual(own.names);
    // they are looked up, not printed
    if (more.length > 0) expect(there.printArea!.lastRow).toBeLessThanOrEqual(last);
  }
});

test("each step stands once, with its label beside it", () => {
  for (const sheet of sheets("portable")) {
    const from = workingsOf(sheet) ?? Infinity;
    const steps = sheet.cells.filter(({ row, formula }) => row > from && formula !== undefined);
    expect(new Set(steps.map(({ formula }) => formula)).size).toBe(steps.length);
    const labels = sheet.cells.filter(({ row, column }) => row > from && column === 0);
    expect(labels.every(({ value }) => typeof value === "string" && value !== "")).toBe(true);
  }
});

test("a plan says which programs it is live in", () => {
  const [own, there] = [texts(sheets("add-in")[0]!), texts(sheets("portable")[0]!)];
  expect([own.includes(LIVE_WITH_ADDIN), own.includes(LIVE_ANYWHERE)]).toEqual([true, false]);
  expect([there.includes(LIVE_WITH_ADDIN), there.includes(LIVE_ANYWHERE)]).toEqual([false, true]);
});

describe("what cannot be written", () => {
  const written = (formula: Expression) =>
    layOut({
      name: "S",
      rows: [{ cells: [{ value: null, formula, style: "result" }] }],
      columnWidths: [10],
      page: { frozenRows: 0, pagesTall: 1, landscape: false },
      rendering: portable({ sheet: "Notes", places: new Map() }),
    });

  test.each<[string, Expression, string]>([
    ["a function without a form", mousse("TIRAGE.CURVE", 24, 11), "TIRAGE.CURVE has no portable form"],
    [
      "a column that a row does not have",
      nth(mousse("DOSAGE.RECIPE", 10, 600, 0), 3),
      "DOSAGE.RECIPE has no portable column 3",
    ],
    [
      "a column of a table that no sheet asks for",
      builtin("INDEX", mousse("RIDDLING.SCHEDULE", 46_000, 14, 1), 1, 4),
      "no portable form of column 4 of the schedule",
    ],
    ["a cell that the notes lack", mousse("PRESSURE.AT20", 5, 10), "the notes have no cell notes_gauge_0"],
  ])("%s", (_name, formula, message) => expect(() => written(formula)).toThrow(message));
});

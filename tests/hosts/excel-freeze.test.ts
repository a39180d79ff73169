/**
 * A sheet's formulas turned into values in Excel, on the genuine Excel proxies: all or none, and the formulas as
 * notes.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { standInWorkbook, type Failure, type StandIn, type StandInOptions } from "../support/excel-proxies";
import type { Content } from "../support/excel-workbook";
import { everything, matching, operationsOf } from "../support/excel-writing";

const result = (value: Content["value"], formula: string): Content => ({ value, formula });
const error = (value: string, formula: string): Content => ({ value, formula, error: true });
const cells: Readonly<Record<string, Content>> = {
  B2: { value: 12.5 },
  C2: { value: "as typed" },
  B3: result(25, "=B2*2"),
  B4: result(true, "=B3>0"),
  B5: result("extra dry", "=MOUSSE.SWEETNESS.TERM(12)"),
  B6: result("=x", '="="&"x"'),
  B7: result("007", '="007"'),
  B8: result("TRUE", '="TRUE"'),
  B9: result("#N/A", '="#N"&"/A"'),
  C9: result("1/2", '="1/2"'),
  B10: error("#N/A", "=NA()"),
  B11: error("#VALUE!", "=MOUSSE.TIRAGE.SUGAR(-1, 24)"),
  B12: error("#DIV/0!", "=1/0"),
  D12: result(46_000, "=DATE(2025,12,9)"),
  B14: { value: "=1+1" },
};
const formulas = Object.entries(cells).flatMap(([address, { formula }]) =>
  formula === undefined ? [] : [[address, formula] as const],
);
const SHEET = "Plan · Jo's";
const notes = { B3: "the cellar's own note", C2: "on a value" };
const sheets = [
  { name: SHEET, cells, notes },
  { name: "Other", cells: { A1: result(2, "=1+1") } },
  { name: "Blank" },
];
const placeOf = (address: string) => `${Number(address.slice(1)) - 1} ${address.charCodeAt(0) - 65}`;

const opened = (options: StandInOptions = {}) => standInWorkbook({ sheets, ...options });
const contents = (workbook: StandIn) => Object.fromEntries(workbook.sheets[0]!.cells);
const stateOf = (workbook: StandIn) =>
  workbook.sheets.map(({ name, cells: all, formats, notes: noted }) => [
    name,
    // what a formula gives is not calculated here
    [...all].map(([place, { formula, value }]) => [place, formula ?? value]).sort(),
    [...formats].filter(([, format]) => format !== "General"),
    [...noted].sort(),
  ]);
const untouched = stateOf(opened());

test("results stay as they are: numbers, texts as texts, errors as errors; other sheets are not touched", async () => {
  const workbook = opened();
  expect(await excelHost(everything).freeze(SHEET)).toBe(formulas.length);
  const values = Object.entries(cells).map(([address, { value, error: failed }]) => [
    placeOf(address),
    failed ? { value, error: true } : { value },
  ]);
  expect(contents(workbook)).toEqual(Object.fromEntries(values));
  expect(workbook.sheets[1]!.cells.get("0 0")).toEqual({ value: 2, formula: "=1+1" });
  expect(new Set(operationsOf(workbook).map(({ sheet }) => sheet?.name))).toEqual(new Set([SHEET]));
  expect(workbook.roundTrips).toHaveLength(4);
  expect(matching(workbook, /./, "_KeepReference")).toEqual([]);
});

test("each formula in a note; a note that is there keeps its text, one on a value is left alone", async () => {
  const workbook = opened();
  await excelHost(everything).freeze(SHEET);
  const expected = formulas.map(([address, formula]) => [
    address,
    address === "B3" ? `${notes.B3}\n${formula}` : formula,
  ]);
  expect(Object.fromEntries(workbook.sheets[0]!.notes)).toEqual({
    C2: notes.C2,
    ...(Object.fromEntries(expected) as object),
  });
});

test("frozen a second time, nothing is left to freeze, and notes stay", async () => {
  const workbook = opened();
  await excelHost(everything).freeze(SHEET);
  const before = new Map(workbook.sheets[0]!.notes);
  workbook.roundTrips.length = 0;
  expect(await excelHost(everything).freeze(SHEET)).toBe(0);
  expect(workbook.sheets[0]!.notes).toEqual(before);
  expect(operationsOf(workbook)).toEqual([]);
});

test("where notes are not offered the values stand without", async () => {
  const workbook = opened();
  const host = excelHost((_set, version) => Number(version.split(".")[1]) < 18);
  expect(await host.freeze(SHEET)).toBe(formulas.length);
  expect(workbook.roundTrips).toHaveLength(2);
  expect(Object.fromEntries(workbook.sheets[0]!.notes)).toEqual(notes);
});

test("a protected sheet, and results that may be old, are refused before anything is done", async () => {
  const locked = opened({ sheets: [{ name: SHEET, cells, protected: true }] });
  await expect(excelHost(everything).freeze(SHEET)).rejects.toThrow("is protected; nothing was changed");
  expect(operationsOf(locked)).toEqual([]);
  const byHand = opened({ calculationMode: "Manual" });
  await expect(excelHost(everything).freeze(SHEET)).rejects.toThrow("calculated by hand");
  expect(operationsOf(byHand)).toEqual([]);
});

test.each(["#BUSY!", "#GETTING_DATA", "#CONNECT!"])("a result that is still to come: %s", async (waiting) => {
  const workbook = opened({
    sheets: [{ name: SHEET, cells: { ...cells, D4: error(waiting, "=MOUSSE.LABEL.ENERGY(1)") } }],
  });
  await expect(excelHost(everything).freeze(SHEET)).rejects.toThrow(
    "D4 is still being calculated; nothing was changed.",
  );
  expect(operationsOf(workbook)).toEqual([]);
});

test("a text that reads #BUSY! is a text", async () => {
  opened({ sheets: [{ name: SHEET, cells: { A1: result("#BUSY!", '="#BUSY!"') } }] });
  expect(await excelHost(everything).freeze(SHEET)).toBe(1);
});

test("a blank sheet has none, one that is gone is named", async () => {
  const workbook = opened();
  expect(await excelHost(everything).freeze("Blank")).toBe(0);
  await expect(excelHost(everything).freeze("Gone")).rejects.toThrow(
    'There is no sheet named "Gone" any more; nothing was changed.',
  );
  expect(operationsOf(workbook)).toEqual([]);
});

describe("a failure", () => {
  const freezing = async (...failures: Failure[]) => {
    const workbook = opened({ failures });
    const outcome = await excelHost(everything)
      .freeze(SHEET)
      .catch((reason: Error) => reason.message);
    return { workbook, outcome };
  };

  test.each([1, 2, 3, 4])("of round trip %i leaves formulas and notes as they were", async (roundTrip) => {
    for (const failure of [{ roundTrip }, { roundTrip, unanswered: true }]) {
      const { workbook, outcome } = await freezing(failure);
      expect(outcome).toBe(`round trip ${roundTrip} failed`);
      expect(stateOf(workbook)).toEqual(untouched);
    }
    let failed = 0;
    for (let afterActions = 0; ; afterActions++) {
      const { workbook, outcome } = await freezing({ roundTrip, afterActions });
      if (outcome === formulas.length) break;
      failed++;
      expect(outcome).toBe(`round trip ${roundTrip} failed`);
      expect(stateOf(workbook)).toEqual(untouched);
    }
    expect(failed).toBeGreaterThan(3);
  });

  test("that cannot be taken back is said, with what to do", async () => {
    const { outcome } = await freezing({ roundTrip: 4, afterActions: 4 }, { roundTrip: 5 });
    expect(outcome).toMatch(/Formulas of "Plan · Jo's" may be values now.*undo.*round trip 4 failed/);
  });
});

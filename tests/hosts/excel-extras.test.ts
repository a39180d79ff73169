/**
 * What a sheet in Excel can do without, on the genuine Excel proxies: tables, notes, charts and print settings come
 * last, and what Excel refuses of them takes nothing else along.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { SheetData, TableData } from "../../src/workbook/data";
import { bars, chartSheet } from "../support/charts";
import { standInWorkbook, type Operation, type StandInOptions } from "../support/excel-proxies";
import { everything, namesOf, sheetOf, cell, matching } from "../support/excel-writing";

const table = (name: string, row: number): TableData => ({
  name,
  area: { row, column: 0, lastRow: row + 4, lastColumn: 3 },
});
const rich = (name: string): SheetData => ({
  ...chartSheet,
  name,
  cells: chartSheet.cells.map((each, index) =>
    index % 5 === 0 ? { ...each, note: `=A${index + 1} & "ü"` } : each,
  ),
  tables: [table(`table_${name}`, 0)],
});
const sheets = [rich("One"), { ...rich("Two"), charts: [bars] }];
const KINDS = {
  Tables: "tables",
  Notes: "notes on cells",
  Charts: "charts",
  PageLayout: "print settings",
} as const;
type Place = keyof typeof KINDS;
const places = Object.keys(KINDS) as Place[];

async function writing(options: StandInOptions = {}, offers = everything as (version: string) => boolean) {
  const workbook = standInWorkbook(options);
  const said = await excelHost((set, version) => set === "ExcelApi" && offers(version)).write({ sheets });
  return { workbook, said };
}
const isOf = (place: Place, { on, name }: Operation) =>
  on === place && (place === "PageLayout" ? name === "Zoom" : name === "Add");
const countOf = (operations: readonly Operation[], place: Place) =>
  operations.filter((each) => isOf(place, each)).length;
const COUNTS = { Tables: 2, Notes: 0, Charts: 4, PageLayout: 2 };
COUNTS.Notes = 2 * sheets[0]!.cells.filter(({ note }) => note !== undefined).length;

test("all of it in the fourth round trip, in this order, and nothing to say", async () => {
  const { workbook, said } = await writing();
  expect(said).toEqual([]);
  expect(workbook.roundTrips).toHaveLength(4);
  const last = workbook.roundTrips[3]!.operations;
  expect(Object.fromEntries(places.map((place) => [place, countOf(last, place)]))).toEqual(COUNTS);
  const first = places.map((place) => last.findIndex((each) => isOf(place, each)));
  expect(first).toEqual([...first].sort((a, b) => a - b));
  for (const { operations } of workbook.roundTrips.slice(0, 3)) {
    expect(places.map((place) => countOf(operations, place))).toEqual([0, 0, 0, 0]);
  }
});

test("a table with its heads, without stripes of its own; notes as they are", async () => {
  const { workbook } = await writing();
  expect(matching(workbook, /^Tables$/, "Add").map(({ args }) => args)).toEqual([
    ["One!GetRange(A1:D5)", true],
    ["Two!GetRange(A1:D5)", true],
  ]);
  const settings = matching(workbook, /^Tables\.Add/).map(({ name, args }) => [name, args[0]]);
  expect(settings).toEqual(expect.arrayContaining([["ShowBandedRows", false]]));
  expect([...workbook.sheets[1]!.notes]).toEqual(
    sheets[0]!.cells.flatMap(({ row, column, note }) =>
      note === undefined ? [] : [[`${String.fromCharCode(65 + column)}${row + 1}`, note]],
    ),
  );
});

describe.each(places)("%s refused", (place) => {
  test.each(["at the first", "half-way"])("%s: the rest is all there, and it is said", async (when) => {
    let left = when === "at the first" ? 0 : 1;
    let refused = false;
    const refuses = (operation: Operation) => {
      if (!isOf(place, operation)) return false;
      refused ||= left-- <= 0;
      return refused;
    };
    const { workbook, said } = await writing({ refuses });
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(
      new RegExp(`^Not all of these could be set: ${KINDS[place]}\\. Excel said: .*Excel refuses ${place} `),
    );
    expect(namesOf(workbook)).toEqual(["Sheet1", "One", "Two"]);
    expect(workbook.sheets[1]!.cells.size).toBe(sheets[0]!.cells.length);
    const operations = workbook.roundTrips.flatMap((trip) => trip.operations);
    const others = places.filter((each) => each !== place);
    expect(others.map((each) => countOf(operations, each))).toEqual(others.map((each) => COUNTS[each]));
    expect(countOf(operations, place)).toBe(when === "at the first" ? 0 : 1);
  });
});

test("all four refused: each is named, and the sheets stand", async () => {
  const refuses = (operation: Operation) => places.some((place) => isOf(place, operation));
  const { workbook, said } = await writing({ refuses });
  expect(said.map((each) => /set: ([^.]*)\./.exec(each)?.[1])).toEqual(Object.values(KINDS));
  expect(namesOf(workbook)).toEqual(["Sheet1", "One", "Two"]);
});

test.each([{ roundTrip: 4 }, { roundTrip: 4, unanswered: true }])(
  "nobody knows what was done (%j): all kinds are named, and none is asked for twice",
  async (failure) => {
    const { workbook, said } = await writing({ failures: [failure] });
    expect(said).toEqual([
      `Not all of these could be set: ${Object.values(KINDS).join(", ")}. Excel said: round trip 4 failed`,
    ]);
    expect(workbook.roundTrips).toHaveLength(4);
    expect(namesOf(workbook)).toEqual(["Sheet1", "One", "Two"]);
  },
);

test("only what there is on a sheet is named", async () => {
  standInWorkbook({ failures: [{ roundTrip: 4 }] });
  const said = await excelHost(everything).write({ sheets: [sheetOf([cell(1, { note: "n" })])] });
  expect(said[0]).toContain("set: notes on cells, print settings. Excel");
});

describe("notes that are not offered are left out, and nothing is said of them", () => {
  const without = async (offers: (version: string) => boolean) => {
    const { workbook, said } = await writing({}, offers);
    expect(said).toEqual([]);
    const operations = workbook.roundTrips.flatMap((trip) => trip.operations);
    return places.map((place) => countOf(operations, place));
  };
  const rest = [COUNTS.Tables, 0, COUNTS.Charts, COUNTS.PageLayout];

  test("before ExcelApi 1.18", async () => {
    expect(await without((version) => Number(version.split(".")[1]) < 18)).toEqual(rest);
    expect(await without((version) => Number(version.split(".")[1]) <= 18)).toEqual(
      places.map((place) => COUNTS[place]),
    );
  });

  test("where the loaded Office.js has none", async () => {
    standInWorkbook();
    const { prototype } = Excel.Worksheet;
    const notes = Object.getOwnPropertyDescriptor(prototype, "notes")!;
    Reflect.deleteProperty(prototype, "notes");
    try {
      expect(await without(everything)).toEqual(rest);
    } finally {
      Object.defineProperty(prototype, "notes", notes);
    }
  });
});

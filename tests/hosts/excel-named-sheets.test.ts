/**
 * The named cells of Excel's sheets, on the genuine Excel proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { standInWorkbook, type GivenSheet, type StandInOptions } from "../support/excel-proxies";
import type { Content, Name } from "../support/excel-workbook";
import { cell, everything, sheetOf } from "../support/excel-writing";

const own = (name: string, address: string): Name => ({ name, own: address });
const cells: Record<string, Content> = {
  B1: { value: 12.5 },
  B2: { value: "Brut" },
  B3: { value: true },
  B4: { value: 25, formula: "=B1*2" },
  B5: { value: "#N/A", formula: "=MOUSSE.TIRAGE.SUGAR(-1, 24)", error: true },
  B7: { value: "=1+1" },
  B8: { value: "", formula: '=""' },
  B9: { value: "#N/A" },
  D12: { value: 46_000 },
  A12: { value: "a label that nobody asked for" },
};
const plan: GivenSheet = {
  name: "Plan · Jo's",
  cells,
  names: [
    own("volume", "$B$1"),
    own("term", "$B$2"),
    own("ready", "$B$3"),
    own("double", "$B$4"),
    own("failed", "$B$5"),
    own("blank", "$B$6"),
    own("formulaLike", "$B$7"),
    own("empty", "$B$8"),
    own("errorLike", "$B$9"),
    own("date", "$D$12"),
    own("sameDate", "$D$12"),
    own("broken", "#REF!"),
    own("range", "$B$1:$B$4"),
    { name: "share", value: "=0.5" },
    { name: "gone", value: "=#REF!$B$4" },
    { name: "elsewhere", value: "=Notes!$A$1" },
  ],
};

async function sheetsNaming(name: string, sheets: readonly GivenSheet[], options: StandInOptions = {}) {
  const workbook = standInWorkbook({ ...options, sheets });
  return { found: await excelHost(everything).sheetsNaming(name), workbook };
}

test("values, texts, booleans, dates and results; errors and blanks are null", async () => {
  const { found } = await sheetsNaming("volume", [plan]);
  expect(found.map(({ name }) => name)).toEqual(["Plan · Jo's"]);
  const at = (row: number, value: unknown, calculated = false, column = 1) => ({
    row,
    column,
    value,
    calculated,
  });
  expect(Object.fromEntries(found[0]!.cells)).toEqual({
    volume: at(0, 12.5),
    term: at(1, "Brut"),
    ready: at(2, true),
    double: at(3, 25, true),
    failed: at(4, null, true),
    blank: at(5, null),
    formulaLike: at(6, "=1+1"),
    empty: at(7, "", true),
    errorLike: at(8, "#N/A"),
    date: at(11, 46_000, false, 3),
    sameDate: at(11, 46_000, false, 3),
  });
});

test("names given with or without quotes and the equals sign", async () => {
  const names: Name[] = [
    { name: "one", value: "Season!$A$1" },
    { name: "two", value: "='season'!$A$2" },
  ];
  const { found } = await sheetsNaming("one", [{ name: "Season", names, cells: { A2: { value: 2 } } }]);
  expect([...found[0]!.cells.keys()]).toEqual(["one", "two"]);
  expect(found[0]!.cells.get("two")?.value).toBe(2);
});

test("every sheet that has it, in order, and no other", async () => {
  const named = (name: string, ...names: string[]): GivenSheet => ({
    name,
    names: names.map((each) => own(each, "$A$1")),
  });
  const workbookName: Name = { name: "volume", value: "=Third!$A$1", scope: "Workbook" };
  const { found, workbook } = await sheetsNaming("volume", [
    named("First", "volume", "other"),
    { name: "Notes" },
    // Excel on the web lists the workbook's names here too
    { name: "Third", names: [workbookName] },
    named("Fourth", "other"),
    { name: "Fifth", names: [own("volume", "#REF!")] },
    named("Last", "volume"),
  ]);
  expect(found.map(({ name }) => name)).toEqual(["First", "Last"]);
  expect(workbook.roundTrips).toHaveLength(3);
});

test("only named cells are asked for, and nothing is written or kept", async () => {
  const { workbook } = await sheetsNaming("volume", [plan]);
  expect(workbook.roundTrips.flatMap(({ operations }) => operations)).toEqual([]);
  expect(workbook.roundTrips.at(-1)!.answerBytes).toBeLessThan(2_000);
  expect(JSON.stringify([...workbook.sheets[0]!.cells])).toContain("nobody asked for");
});

test("a second name of a cell is not asked for again", async () => {
  const once = { ...plan, names: plan.names!.filter(({ name }) => name !== "sameDate") };
  const [one, other] = [await sheetsNaming("volume", [plan]), await sheetsNaming("volume", [once])];
  expect(one.workbook.roundTrips.at(-1)!.bytes).toBe(other.workbook.roundTrips.at(-1)!.bytes);
});

test("none: two round trips, and none at all where Excel has no names of sheets", async () => {
  const { found, workbook } = await sheetsNaming("volume", [{ name: "Notes" }]);
  expect(found).toEqual([]);
  expect(workbook.roundTrips).toHaveLength(2);
  const older = standInWorkbook({ sheets: [plan] });
  const host = excelHost((_set, version) => Number(version.split(".")[1]) < 4);
  expect(await host.sheetsNaming("volume")).toEqual([]);
  expect(older.roundTrips).toEqual([]);
});

test.each([1, 2, 3])("a failure in round trip %i reaches the caller", async (roundTrip) => {
  await expect(sheetsNaming("volume", [plan], { failures: [{ roundTrip }] })).rejects.toThrow(
    `round trip ${roundTrip} failed`,
  );
});

test("what was written is found again, in copies too", async () => {
  standInWorkbook();
  const host = excelHost(everything);
  const sheets = [1, 2, 3].map((volume) =>
    sheetOf([cell(volume, { column: 1 }), cell(0, { row: 1, column: 1, formula: "B1*2" })], {
      name: `Plan ${volume}`,
      names: [
        { name: "volume", row: 0, column: 1 },
        { name: "double", row: 1, column: 1 },
      ],
    }),
  );
  await host.write({ sheets });
  const found = await host.sheetsNaming("double");
  expect(found.map(({ name, cells: named }) => [name, named.get("volume"), named.get("double")])).toEqual(
    [1, 2, 3].map((volume) => [
      `Plan ${volume}`,
      { row: 0, column: 1, value: volume, calculated: false },
      { row: 1, column: 1, value: 0, calculated: true },
    ]),
  );
});

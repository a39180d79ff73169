/**
 * The grid's named cells as they are read.
 */
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import type { SheetData } from "../../src/workbook/data";
import { cell, sheetOf } from "../support/excel-writing";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { names, namedPlan as plan } from "../support/named-plan";

let grid: HeadlessGrid;
let host: GridHost;
beforeEach(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
});
afterEach(() => grid.dispose());

const book = () => grid.api.getActiveWorkbook()!;
const at = (sheet: string, address: string) => book().getSheetByName(sheet)!.getRange(address);

async function written(...sheets: SheetData[]): Promise<void> {
  const done = grid.settled();
  await host.write({ sheets });
  await done;
}
const cellsOf = async (sheet: string) =>
  (await host.sheetsNaming("volume")).find(({ name }) => name === sheet)?.cells;

test("values as they are shown; an error and a blank cell are null, a date a number", async () => {
  await written(plan("Plan · Jo's"));
  const value = (row: number, shown: unknown, calculated = false) => ({
    row,
    column: 1,
    value: shown,
    calculated,
  });
  expect(Object.fromEntries((await cellsOf("Plan · Jo's"))!)).toEqual({
    volume: value(0, 12.5),
    term: value(1, "Brut"),
    ready: value(2, true),
    double: value(3, 25, true),
    failed: value(4, null, true),
    blank: value(5, null),
    formulaLike: value(6, "=1+1"),
    date: value(7, 46_000),
  });
});

test("in the workbook's order, only sheets with a cell of that name of their own", async () => {
  await written(plan("A"), sheetOf([cell(1)], { name: "B" }), plan("C"), plan("Front", { first: true }));
  book().getSheetByName("B")!.insertDefinedName("other", "'B'!$A$1");
  // the workbook's own; the grid's interface refuses a name that any sheet has
  grid.api.syncExecuteCommand("formula.mutation.set-defined-name", {
    unitId: "season",
    id: "w",
    name: "volume",
    localSheetId: "AllDefaultWorkbook",
    formulaOrRefString: "'B'!$A$1",
  });
  expect((await host.sheetsNaming("volume")).map(({ name }) => name)).toEqual(["Front", "A", "C"]);
  expect((await host.sheetsNaming("other")).map(({ name }) => name)).toEqual(["B"]);
  expect(await host.sheetsNaming("none")).toEqual([]);
});

test("follows rows that move and a sheet that is renamed", async () => {
  await written(plan("A"));
  book().getSheetByName("A")!.insertRowsBefore(2, 2);
  book().getSheetByName("A")!.setName("Brut & Rosé");
  const cells = await cellsOf("Brut & Rosé");
  expect([cells?.get("volume")?.row, cells?.get("ready")?.row]).toEqual([0, 4]);
  expect(cells?.get("ready")?.value).toBe(true);
});

test("without names that are broken, of a range or of a constant", async () => {
  await written(plan("A"));
  const sheet = book().getSheetByName("A")!;
  sheet.insertDefinedName("wide", "'A'!$A$1:$B$2");
  sheet.insertDefinedName("share", "0.5");
  sheet.deleteRows(1, 1);
  expect([...(await cellsOf("A"))!.keys()].sort()).toEqual(names.filter((name) => name !== "term").sort());
});

test("a formula that was filled down counts as one", async () => {
  await written(plan("A"));
  const done = grid.settled();
  at("A", "B6").setValue({ f: "=B$1*3", si: "shared" });
  at("A", "B7").setValue({ si: "shared" });
  await done;
  expect((await cellsOf("A"))!.get("formulaLike")).toMatchObject({ calculated: true, value: 37.5 });
});

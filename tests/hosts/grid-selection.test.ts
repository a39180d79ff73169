/**
 * The selected cell of the grid, and a formula put into it.
 */
import { IUniverInstanceService } from "@univerjs/core";
import { injectorOf } from "../../src/hosts/grid/book";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { namedPlan } from "../support/named-plan";

let grid: HeadlessGrid;
let host: GridHost;
beforeEach(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
  // undo is of the unit in focus; a page sees to that
  injectorOf(grid.api).get(IUniverInstanceService).focusUnit("season");
  const done = grid.settled();
  await host.write({ sheets: [namedPlan("Plan · Jo's"), namedPlan("Other")] });
  await done;
});
afterEach(() => grid.dispose());

const SHEET = "Plan · Jo's";
const book = () => grid.api.getActiveWorkbook()!;
const at = (address: string, sheet = SHEET) => book().getSheetByName(sheet)!.getRange(address);
const select = (address: string, sheet = SHEET) => {
  book().setActiveSheet(book().getSheetByName(sheet)!);
  at(address, sheet).activate();
  return host.selectedCell();
};

test.each([
  ["B1", "12.5"],
  ["B2", "Brut"],
  ["B4", "=B1*2"],
  ["B5", "=MOUSSE.TIRAGE.SUGAR(-1, 24)"],
  ["B6", ""],
  ["F30", ""],
])("%s holds %j", async (address, content) => {
  expect(await select(address)).toEqual({ sheet: SHEET, address, content });
});

test("of several the first, and of the sheet that is shown", async () => {
  expect(await select("B2:C4")).toMatchObject({ sheet: SHEET, address: "B2" });
  expect(await select("B4", "Other")).toMatchObject({ sheet: "Other", address: "B4" });
});

test("a formula put in is calculated, keeps the cell's look and format, and is one step to undo", async () => {
  const cell = await select("B1");
  const before = at("B1").getCellData();
  const done = grid.settled();
  await host.typeFormula(cell, "=MOUSSE.SWEETNESS.TERM(12)");
  await done;
  expect(at("B1").getFormula()).toBe("=MOUSSE.SWEETNESS.TERM(12)");
  expect(at("B1").getRawValue()).toBe("extra dry");
  expect(at("B1").getCellData()).toMatchObject({ s: before?.s, custom: before?.custom });
  expect(at("B1", "Other").getRawValue()).toBe(12.5);
  expect(await grid.api.undo()).toBe(true);
  expect([at("B1").getFormula(), at("B1").getRawValue()]).toEqual(["", 12.5]);
});

test("over a formula, a text and a blank", async () => {
  for (const address of ["B4", "B2", "B6"]) {
    const done = grid.settled();
    await host.typeFormula(await select(address), "=1+1");
    await done;
    expect([address, at(address).getFormula(), at(address).getRawValue()]).toEqual([address, "=1+1", 2]);
  }
});

test.each<[string, (range: ReturnType<typeof at>) => void]>([
  ["another value", (range) => void range.setValue(13)],
  ["a formula that gives the same", (range) => void range.setValue({ f: "=12.5" })],
  ["nothing", (range) => void range.clearContent()],
])("not into a cell that holds %s by now", async (_what, change) => {
  const cell = await select("B1");
  change(at("B1"));
  const [formula, value] = [at("B1").getFormula(), at("B1").getRawValue()];
  await expect(host.typeFormula(cell, "=1+1")).rejects.toThrow(/^B1 of "Plan · Jo's" has changed meanwhile/);
  expect([at("B1").getFormula(), at("B1").getRawValue()]).toEqual([formula, value]);
});

test("not into a sheet that is gone", async () => {
  const cell = await select("B1");
  book().deleteSheet(book().getSheetByName(SHEET)!);
  await expect(host.typeFormula(cell, "=1")).rejects.toThrow(`There is no sheet named "${SHEET}" any more.`);
});

test("nothing selected is said", async () => {
  jest
    .spyOn(Object.getPrototypeOf(book().getActiveSheet()) as { getActiveRange(): null }, "getActiveRange")
    .mockReturnValueOnce(null);
  await expect(host.selectedCell()).rejects.toThrow("No cell is selected; select one first.");
});

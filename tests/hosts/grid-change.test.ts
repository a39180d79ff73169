/**
 * Changes to the grid: all or none, and steps to undo.
 */
import { IUndoRedoService, IUniverInstanceService } from "@univerjs/core";
import { injectorOf } from "../../src/hosts/grid/book";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import type { CellChange } from "../../src/hosts/host";
import type { SheetData } from "../../src/workbook/data";
import { cell, sheetOf } from "../support/excel-writing";
import { eventually } from "../support/eventually";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { namedPlan as plan } from "../support/named-plan";

let grid: HeadlessGrid;
let host: GridHost;
beforeEach(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
  // undo is of the unit in focus; a page sees to that
  injectorOf(grid.api).get(IUniverInstanceService).focusUnit("season");
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
/** Everything that is in the workbook, names and rules included, as the host reads it and as the grid keeps it. */
function snapshot() {
  const resources = book().save().resources ?? [];
  const kept = resources.filter(({ name }) => /DEFINED_NAME|DATA_VALIDATION/.test(name));
  const entries = kept.flatMap(({ data }) => Object.entries(JSON.parse(data || "{}") as object));
  // a sheet that had rules once is still listed
  const filled = entries.filter(([, each]) => !Array.isArray(each) || each.length > 0);
  return { sheets: host.read().sheets, resources: Object.fromEntries(filled) };
}

const change = (sheet: string, row: number, value: CellChange["value"]): CellChange => ({
  sheet,
  row,
  column: 1,
  value,
});
const changes = [
  change("A", 0, 30),
  change("A", 1, "007"),
  change("A", 2, false),
  change("A", 3, "=1+1"),
  change("A", 6, null),
  change("B", 0, 40),
  change("B", 5, 0.5),
];

describe("change", () => {
  test("puts in text as text, numbers, booleans and blanks, keeps looks, and all follows", async () => {
    await written(plan("A"), plan("B"));
    const before = at("A", "B1").getCellData();
    const done = grid.settled();
    await host.change(changes);
    await done;
    const shown = ["B1", "B2", "B3", "B4", "B7"].map((address) => at("A", address).getRawValue());
    expect(shown).toEqual([30, "007", 0, "=1+1", null]);
    const cells = (await cellsOf("A"))!;
    expect([cells.get("ready")?.value, cells.get("double")?.calculated]).toEqual([false, false]);
    expect(at("A", "B4").getFormula()).toBe("");
    expect(at("A", "B1").getCellData()).toEqual({ ...before, v: 30, t: 2 });
    expect(at("B", "B4").getRawValue()).toBe(80);
  });

  test("touches no other cell", async () => {
    const plain = (name: string) => sheetOf([cell(1), cell("x", { row: 1 }), cell(3, { row: 2 })], { name });
    await host.write({ sheets: [plain("A"), plain("B")] });
    const others = () =>
      ["A", "B"].flatMap((name) =>
        at(name, "A1:C20")
          .getCellDatas()
          .flat()
          .map((each) => JSON.stringify(each)),
      );
    const before = others();
    await host.change([{ sheet: "A", row: 1, column: 0, value: 2 }]);
    const differing = others().flatMap((each, index) => (each === before[index] ? [] : [index]));
    expect(differing).toEqual([3]);
  });

  test("is one step to undo over all sheets, and to do again", async () => {
    await written(plan("A"), plan("B"));
    const before = snapshot();
    await host.change(changes);
    const after = snapshot();
    expect(after).not.toEqual(before);
    expect(await grid.api.undo()).toBe(true);
    expect(snapshot()).toEqual(before);
    expect(await grid.api.redo()).toBe(true);
    expect(snapshot()).toEqual(after);
  });

  test("a sheet that is gone is named, and nothing changes", async () => {
    await written(plan("A"));
    const before = snapshot();
    await expect(host.change(changes)).rejects.toThrow(
      'There is no sheet named "B" any more; nothing was changed.',
    );
    expect(snapshot()).toEqual(before);
  });

  test("what fails half-way is taken back, and leaves no step to undo", async () => {
    await written(plan("A"), plan("B"));
    const before = snapshot();
    const refused = refusing(2);
    await expect(host.change(changes)).rejects.toThrow("refused");
    refused.mockRestore();
    expect(snapshot()).toEqual(before);
    await grid.api.undo();
    expect(await host.sheetNames()).toEqual(["Sheet1"]);
  });
});

/** Refuses the mutation of this number, from 1. */
function refusing(number: number): jest.SpyInstance {
  const execute = grid.api.syncExecuteCommand.bind(grid.api);
  let count = 0;
  return jest
    .spyOn(grid.api, "syncExecuteCommand")
    .mockImplementation((...args: Parameters<typeof execute>) =>
      ++count === number ? false : execute(...args),
    );
}

describe("write", () => {
  test("puts first what goes first, in its order, and the rest last", async () => {
    await written(plan("A"), plan("Front", { first: true }), plan("B"), plan("Second", { first: true }));
    expect(await host.sheetNames()).toEqual(["Front", "Second", "Sheet1", "A", "B"]);
    expect(book().getActiveSheet().getSheetName()).toBe("A");
  });

  test("one step takes all sheets away, with their names and rules; another brings them back", async () => {
    const before = snapshot();
    await written(plan("A"), plan("B", { first: true }));
    const after = snapshot();
    expect(await grid.api.undo()).toBe(true);
    expect(snapshot()).toEqual(before);
    expect(await grid.api.redo()).toBe(true);
    // an error is not kept beside its formula, it is worked out anew
    await eventually(() => Promise.resolve(expect(snapshot()).toEqual(after)));
    expect((await host.sheetsNaming("volume")).map(({ name }) => name)).toEqual(["B", "A"]);
  });

  test("written anew after an undo, a sheet has only its own names", async () => {
    await written(plan("A"));
    await grid.api.undo();
    await written(plan("A", { names: [{ name: "volume", row: 0, column: 1 }] }));
    expect([...(await cellsOf("A"))!.keys()]).toEqual(["volume"]);
  });

  test("whatever of it is refused, nothing is left and there is nothing to undo", async () => {
    const before = snapshot();
    const shown = book().getActiveSheet().getSheetName();
    // of each sheet: itself, its names, its rules
    const mutations = 2 * 3;
    for (let number = 1; number <= mutations; number++) {
      const refused = refusing(number);
      await expect(host.write({ sheets: [plan("A"), plan("B", { first: true })] })).rejects.toThrow(
        "refused",
      );
      refused.mockRestore();
      expect(snapshot()).toEqual(before);
      expect(book().getActiveSheet().getSheetName()).toBe(shown);
    }
    expect(injectorOf(grid.api).get(IUndoRedoService).pitchTopUndoElement()).toBeNull();
    await host.write({ sheets: [plan("A")] });
    expect(await host.sheetNames()).toEqual(["Sheet1", "A"]);
  });

  test("two new sheets of one name are refused", async () => {
    await expect(host.write({ sheets: [plan("A"), plan("a")] })).rejects.toThrow(/named "a"; nothing/);
    expect(await host.sheetNames()).toEqual(["Sheet1"]);
  });
});

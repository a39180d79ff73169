/**
 * A sheet of the grid frozen: its results as values, formulas as notes, one step to undo.
 */
import { IUniverInstanceService } from "@univerjs/core";
import { injectorOf } from "../../src/hosts/grid/book";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import type { PlacedCell } from "../../src/workbook/data";
import { cell, sheetOf } from "../support/excel-writing";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { namedPlan } from "../support/named-plan";

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
const FORMULAS = ["B1*2", "B2>0", "MOUSSE.SWEETNESS.TERM(12)", '"="&"x"', '"00"&"7"', '"TRUE"&""', "NA()"];
const RESULTS = [25, 1, "extra dry", "=x", "007", "TRUE", "#N/A"];
const results: PlacedCell[] = [
  cell(12.5, { column: 1, style: "input" }),
  ...FORMULAS.map((formula, row) =>
    cell(null, { row: row + 1, column: 1, formula, style: "result", format: "0.0" }),
  ),
];

async function written(cells = results): Promise<void> {
  const done = grid.settled();
  await host.write({ sheets: [sheetOf(cells, { name: "A" }), namedPlan("B")] });
  await done;
}
const shown = () => FORMULAS.map((_, row) => at("A", `B${row + 2}`).getRawValue());
const cellsOf = (name: string) => host.read().sheets.find((sheet) => sheet.name === name)!.cells;

test("results stay, texts are texts, and nothing follows any more", async () => {
  await written();
  expect(shown()).toEqual(RESULTS);
  const looks = cellsOf("A").map(({ style, format }) => [style, format]);
  expect(await host.freeze("A")).toBe(FORMULAS.length);
  expect(shown()).toEqual(RESULTS);
  expect(FORMULAS.map((_, row) => at("A", `B${row + 2}`).getFormula())).toEqual(FORMULAS.map(() => ""));
  expect(cellsOf("A").map(({ style, format }) => [style, format])).toEqual(looks);
  // number, boolean, text, and text that would be something else if its cell were entered again
  const types = FORMULAS.map((_, row) => at("A", `B${row + 2}`).getCellData()?.t);
  expect(types).toEqual([2, 3, 1, 4, 4, 4, 4]);
  at("A", "B1").setValue(100);
  await recalculated();
  expect(shown()).toEqual(RESULTS);
});

test("each formula becomes its cell's note; a note that is there keeps its text", async () => {
  await written(results.map((each, index) => (index === 2 ? { ...each, note: "the cellar's own" } : each)));
  await host.freeze("A");
  const notes = cellsOf("A").map(({ note }) => note);
  expect(notes).toEqual([
    undefined,
    ...FORMULAS.map((formula, index) => (index === 1 ? `the cellar's own\n=${formula}` : `=${formula}`)),
  ]);
});

/** Where an error stands, as it is read back. */
const errorsRead = () =>
  cellsOf("A").flatMap(({ row, column, value, error }) => (error ? [[row, column, value, error]] : []));

test("errors stay errors, those that a formula fills other cells with too; what is typed over one is itself", async () => {
  await written();
  const done = grid.settled();
  at("A", "D1").setValue({ f: "=SEQUENCE(3)/(SEQUENCE(3)-2)" });
  at("A", "F1").setValue({ f: '=IF(SEQUENCE(2)>1,"007","x")' });
  await done;
  await host.freeze("A");
  expect(errorsRead()).toEqual([
    [1, 3, null, "#DIV/0!"],
    [7, 1, null, "#N/A"],
  ]);
  // a text that would be a number if its cell were entered again
  expect([at("A", "F2").getRawValue(), at("A", "F2").getCellData()?.t]).toEqual(["007", 4]);
  await host.change([{ sheet: "A", row: 7, column: 1, value: "none" }]);
  expect(errorsRead().map(([row]) => row)).toEqual([1]);
  expect(cellsOf("A").find(({ row, column }) => row === 7 && column === 1)!.value).toBe("none");
});

test("other sheets still calculate, from the values too", async () => {
  await written();
  at("B", "B1").setValue({ f: "=A!B2*10" });
  await host.freeze("A");
  const done = grid.settled();
  at("A", "B2").setValue(3);
  await done;
  expect(at("B", "B1").getRawValue()).toBe(30);
  expect(at("B", "B4").getFormula()).toBe("=B1*2");
});

test("is one step to undo, and to do again", async () => {
  await written();
  const before = host.read();
  await host.freeze("A");
  const after = host.read();
  expect(await grid.api.undo()).toBe(true);
  expect(host.read()).toEqual(before);
  expect(at("A", "B2").getFormula()).toBe("=B1*2");
  expect(await grid.api.redo()).toBe(true);
  expect(host.read()).toEqual(after);
});

const SIX = [
  [1, 2],
  [3, 4],
  [5, 6],
];
const recalculated = async () => {
  const done = grid.settled();
  grid.api.getFormula().executeCalculation();
  await done;
};

test("a formula that was filled down, and one that fills other cells, leave what they showed", async () => {
  await written();
  const done = grid.settled();
  at("A", "D1").setValue({ f: "=B$1*4", si: "shared" });
  at("A", "D2").setValue({ si: "shared" });
  at("A", "F1").setValue({ f: "=SEQUENCE(3,2)" });
  await done;
  const spilled = () => at("A", "F1:G3").getValues();
  expect(spilled()).toEqual(SIX);
  expect(await host.freeze("A")).toBe(FORMULAS.length + 3);
  await recalculated();
  expect([at("A", "D1").getRawValue(), at("A", "D2").getRawValue()]).toEqual([50, 50]);
  expect(spilled()).toEqual(SIX);
  // the values that filled cells got are not in the way of the formula afterwards
  const undone = grid.settled();
  expect(await grid.api.undo()).toBe(true);
  await undone;
  await recalculated();
  expect(at("A", "F1").getFormula()).toBe("=SEQUENCE(3,2)");
  expect(spilled()).toEqual(SIX);
});

test("nothing to freeze: no step to undo; a sheet that is gone is named", async () => {
  await written();
  await host.freeze("A");
  const after = host.read();
  expect(await host.freeze("A")).toBe(0);
  expect(await host.freeze("Sheet1")).toBe(0);
  await expect(host.freeze("Gone")).rejects.toThrow(
    'There is no sheet named "Gone" any more; nothing was changed.',
  );
  // the one step is that of the first time
  await grid.api.undo();
  expect(host.read()).not.toEqual(after);
  expect(at("A", "B2").getFormula()).toBe("=B1*2");
});

test("what the grid refuses leaves the formulas", async () => {
  await written();
  const before = host.read();
  const refused = jest.spyOn(grid.api, "syncExecuteCommand").mockReturnValueOnce(false);
  await expect(host.freeze("A")).rejects.toThrow("refused");
  refused.mockRestore();
  expect(host.read()).toEqual(before);
});

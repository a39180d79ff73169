/**
 * Cells that stand out by a word in the grid: there and back, one step to undo, beside formats of the user's own.
 */
import { IUniverInstanceService } from "@univerjs/core";
import "@univerjs/sheets-conditional-formatting/facade";
import { injectorOf } from "../../src/hosts/grid/book";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import { highlightFromGrid, highlightToGrid, type GridHighlight } from "../../src/hosts/grid/highlights";
import type { Highlight } from "../../src/workbook/data";
import { highlightLooks } from "../../src/workbook/styles";
import { cell, sheetOf } from "../support/excel-writing";
import { headlessGrid, type HeadlessGrid } from "../support/grid";

let grid: HeadlessGrid;
let host: GridHost;
beforeEach(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
  // undo is of the unit in focus; a page sees to that
  injectorOf(grid.api).get(IUniverInstanceService).focusUnit("season");
});
afterEach(() => grid.dispose());

const cells = [
  { row: 1, column: 1 },
  { row: 2, column: 1 },
  { row: 7, column: 3 },
];
const stop: Highlight = { word: 'stop "now"', look: "bad", cells };
const check: Highlight = { word: "check", look: "doubtful", cells: cells.slice(1) };
const sheet = (name: string, highlights: readonly Highlight[]) =>
  sheetOf([cell("x"), cell("stop", { row: 1, column: 1 })], { name, highlights });
const read = (name: string) => host.read().sheets.find((each) => each.name === name)?.highlights;
const formats = (name: string) => book().getSheetByName(name)!.getConditionalFormattingRules();
const book = () => grid.api.getActiveWorkbook()!;
const inOrder = (highlights: readonly Highlight[] = []) =>
  [...highlights].sort((one, other) => one.word.localeCompare(other.word));

test("written and read back, each sheet its own", async () => {
  await host.write({ sheets: [sheet("A", [stop, check]), sheet("B", [check]), sheet("C", [])] });
  expect(inOrder(read("A"))).toEqual([check, stop]);
  expect(read("B")).toEqual([check]);
  expect(read("C")).toEqual([]);
});

test("the grid has the word, the fill and the colour of the look", async () => {
  await host.write({ sheets: [sheet("A", [stop])] });
  const [rule] = formats("A") as unknown as GridHighlight[];
  const { color, fill } = highlightLooks.bad;
  expect(rule!.rule).toMatchObject({
    operator: "equal",
    value: 'stop "now"',
    style: { cl: { rgb: `#${color}` }, bg: { rgb: `#${fill}` } },
  });
  expect(rule!.ranges).toHaveLength(cells.length);
});

test("one step takes them away with their sheets, another brings them back", async () => {
  await host.write({ sheets: [sheet("A", [stop, check])] });
  await host.write({ sheets: [sheet("B", [stop]), sheet("C", [check])] });
  expect(await grid.api.undo()).toBe(true);
  expect(read("B")).toBeUndefined();
  expect(inOrder(read("A"))).toEqual([check, stop]);
  // written anew under the id that is free again, a sheet has only its own
  await host.write({ sheets: [sheet("D", [])] });
  expect(read("D")).toEqual([]);
  await grid.api.undo();
  await host.write({ sheets: [sheet("B", [stop])] });
  await grid.api.undo();
  expect(await grid.api.redo()).toBe(true);
  expect(read("B")).toEqual([stop]);
});

test("whatever of it is refused, nothing is left", async () => {
  const execute = grid.api.syncExecuteCommand.bind(grid.api);
  const names = await host.sheetNames();
  for (const nth of [1, 2]) {
    let count = 0;
    const refused = jest
      .spyOn(grid.api, "syncExecuteCommand")
      .mockImplementation((...args: Parameters<typeof execute>) =>
        args[0].includes("add-conditional") && ++count === nth ? false : execute(...args),
      );
    await expect(host.write({ sheets: [sheet("A", [stop, check])] })).rejects.toThrow("refused");
    refused.mockRestore();
    expect(await host.sheetNames()).toEqual(names);
  }
  await host.write({ sheets: [sheet("A", [check])] });
  expect(read("A")).toEqual([check]);
});

test("formats of the user's own are left behind on reading, without harm to ours", async () => {
  await host.write({ sheets: [sheet("A", [stop])] });
  const worksheet = book().getSheetByName("A")!;
  const add = (rule: object) => worksheet.addConditionalFormattingRule(rule as never);
  const ranges = [worksheet.getRange("A1:B9").getRange()];
  add(
    worksheet
      .newConditionalFormattingRule()
      .whenNumberGreaterThan(5)
      .setBackground("#ff0000")
      .setRanges(ranges)
      .build(),
  );
  add(
    worksheet
      .newConditionalFormattingRule()
      .whenTextEqualTo("mine")
      .setBackground("#00ff00")
      .setRanges(ranges)
      .build(),
  );
  add(
    worksheet
      .newConditionalFormattingRule()
      .setDataBar({
        min: { type: "num" as never, value: 0 },
        max: { type: "num" as never, value: 9 },
        positiveColor: "#00ff00",
        nativeColor: "#ff0000",
        isGradient: false,
      })
      .setRanges(ranges)
      .build(),
  );
  expect(formats("A")).toHaveLength(4);
  expect(read("A")).toEqual([stop]);
  expect(formats("A")).toHaveLength(4);
});

test("a block that someone has drawn larger is read cell by cell", () => {
  const own = highlightToGrid({ ...stop, cells: [] }, "id");
  const ranges = [{ startRow: 1, endRow: 2, startColumn: 0, endColumn: 1 }];
  expect(highlightFromGrid({ ...own, ranges })[0]!.cells).toEqual([
    { row: 1, column: 0 },
    { row: 1, column: 1 },
    { row: 2, column: 0 },
    { row: 2, column: 1 },
  ]);
});

test.each<[string, Partial<GridHighlight["rule"]>]>([
  ["another kind", { type: "dataBar" }],
  ["numbers", { subType: "number" }],
  ["another comparison", { operator: "containsText" }],
  ["no word", { value: 5 }],
  ["another fill", { style: { bg: { rgb: "#123456" } } }],
  ["no look at all", { style: undefined }],
])("not ours: %s", (_what, more) => {
  const own = highlightToGrid(stop, "id");
  expect(highlightFromGrid(own)).toEqual([stop]);
  expect(highlightFromGrid({ ...own, rule: { ...own.rule, ...more } })).toEqual([]);
});

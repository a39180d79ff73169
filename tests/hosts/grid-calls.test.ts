/**
 * What the selected cell of the grid called: told when it is selected, and again when it calculates otherwise.
 */
import { CallBook } from "../../src/hosts/grid/calls";
import type { CellCalls } from "../../src/hosts/host";
import { headlessGrid, type HeadlessGrid } from "../support/grid";

let grid: HeadlessGrid;
let told: CellCalls[];
const at = (address: string) => grid.api.getActiveWorkbook()!.getActiveSheet().getRange(address);
async function typed(address: string, value: string | number): Promise<void> {
  const done = grid.settled();
  at(address).setValue(typeof value === "string" ? { f: value } : value);
  await done;
}
const sugar = (dose: number) => [{ id: "TIRAGE.SUGAR", args: [50, dose] }];

beforeEach(async () => {
  const calls = new CallBook();
  told = [];
  grid = await headlessGrid({}, calls.note);
  at("A1").setValue(24);
  await typed("B1", "=MOUSSE.TIRAGE.SUGAR(50,A1)");
  calls.watch(grid.api, (cell) => told.push(cell));
});
afterEach(() => grid.dispose());

test("a cell that is selected, each time", () => {
  at("B1").activate();
  at("A1").activate();
  at("B1").activate();
  const sugarCell = { address: "B1", calls: sugar(24), failed: false };
  expect(told).toEqual([sugarCell, { address: "A1", calls: [], failed: false }, sugarCell]);
});

test("a cell that stays selected, when what it reads changes, and not when anything else does", async () => {
  at("B1").activate();
  await typed("A1", 26);
  await typed("D1", "=1+1");
  await typed("A1", -1);
  expect(told).toEqual([
    { address: "B1", calls: sugar(24), failed: false },
    { address: "B1", calls: sugar(26), failed: false },
    { address: "B1", calls: sugar(-1), failed: true },
  ]);
});

test("a formula that is still being calculated when its cell is selected", async () => {
  const done = grid.settled();
  at("C1").setValue({ f: "=MOUSSE.TIRAGE.SUGAR(50,A1+1)" });
  at("C1").activate();
  expect(told).toEqual([{ address: "C1", calls: [], failed: false }]);
  await done;
  expect(told.at(-1)).toEqual({ address: "C1", calls: sugar(25), failed: false });
});

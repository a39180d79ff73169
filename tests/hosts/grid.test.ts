/**
 * The plan's sheet in the grid: recalculated by the grid's engine and held against the calculation module, changed
 * by the user, and read back.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import type { BatchInputs } from "../../src/cellar/batch/fields";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import { cellAddress, type CellValue, type SheetData } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { inputsOf, sampleFiles, sampleInputs, sampleJson } from "../support/samples";

let grid: HeadlessGrid;
let host: GridHost;
beforeAll(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
});
afterAll(() => grid.dispose());

const ERROR = /^#(N\/A|VALUE!)$/;

/** The same sheet with no cached result in it, so that every number seen afterwards was calculated by the grid. */
function withoutResults(sheet: SheetData): SheetData {
  return {
    ...sheet,
    cells: sheet.cells.map((cell) => (cell.formula === undefined ? cell : { ...cell, value: null })),
  };
}

async function written(inputs: BatchInputs): Promise<{ sheet: SheetData; cells: CellValue[][] }> {
  const sheet = planSheet(inputs, planBatch(inputs), await host.sheetNames());
  const done = grid.settled();
  await host.write({ sheets: [withoutResults(sheet)] });
  await done;
  return { sheet, cells: rawValues(sheet.name) };
}

function rawValues(sheetName: string): CellValue[][] {
  return grid.api
    .getActiveWorkbook()!
    .getSheetByName(sheetName)!
    .getDataRange()
    .getRawValues() as CellValue[][];
}

/** What differs between the grid's results and the plan's, to 1e-9 relative. */
function differences(sheet: SheetData, cells: CellValue[][]): string[] {
  const formulas = sheet.cells.filter((cell) => cell.formula !== undefined);
  expect(formulas.length).toBeGreaterThan(150);
  return formulas.flatMap(({ row, column, value, formula }) => {
    const found = cells[row]?.[column] ?? null;
    const same =
      typeof value === "number"
        ? typeof found === "number" &&
          Math.abs(found - value) <= 1e-9 * Math.max(Math.abs(found), Math.abs(value))
        : value === null
          ? ERROR.test(String(found))
          : found === value;
    return same
      ? []
      : [`${cellAddress(row, column)} =${formula}: plan ${String(value)}, grid ${String(found)}`];
  });
}

const variants: [string, (batch: ReturnType<typeof sampleJson>) => void][] = [
  [
    "OIV rules",
    (batch) => {
      batch.batch!.rules = "OIV";
    },
  ],
  [
    "no room left in the neck",
    (batch) => {
      batch.disgorging!.filled_mL = 740;
      batch.disgorging!.lost_mL = 0;
      batch.batch!.bottle_mL = 700;
    },
  ],
  [
    "liqueur that does not fit",
    (batch) => {
      batch.disgorging!.lost_mL = 5;
    },
  ],
  [
    "no sweetness term, no rating, no SO2, prices missing",
    (batch) => {
      batch.dosage!.term = "";
      batch.tirage!.glassRating_bar = null;
      batch.baseWine!.totalSO2_mgL = null;
      batch.materials!.corks = {};
    },
  ],
  [
    "a small bottle",
    (batch) => {
      batch.batch!.bottle_mL = 200;
      batch.disgorging!.filled_mL = null;
    },
  ],
  [
    "a term that is not permitted",
    (batch) => {
      batch.dosage!.term = "brut nature";
    },
  ],
  [
    "0 typed where a blank would mean something else",
    (batch) => {
      Object.assign(batch.tirage!, { yeast_gHL: 0, nutrient_gHL: 0, riddlingAid_gHL: 0 });
      Object.assign(batch.dosage!, { liqueur_vol: 0 });
      Object.assign(batch.costs!, { riddling_hours: 0, baseWine_perL: 0, labour_perHour: 0 });
      for (const line of Object.values(batch.materials!)) Object.assign(line as object, { price: 0 });
    },
  ],
  [
    "too strong a wine",
    (batch) => {
      batch.baseWine!.alcohol_vol = 13;
    },
  ],
];

describe("every calculated cell equals the calculation module's plan", () => {
  test.each(sampleFiles)("%s", async (file) => {
    const { sheet, cells } = await written(sampleInputs(file));
    expect(differences(sheet, cells)).toEqual([]);
  });

  test.each(variants)("%s", async (_name, change) => {
    const batch = sampleJson("oxlip-hill-brut.json");
    change(batch);
    const { sheet, cells } = await written(inputsOf(batch));
    expect(differences(sheet, cells)).toEqual([]);
  });
});

test("0 is not blank, however often it is asked; nothing and an empty text are", async () => {
  const sheet = grid.api.getActiveWorkbook()!.insertSheet("Compared");
  const once = ['=A1=""', '=IF(A1="","",A1+1)'];
  const asked = [...once, ...once];
  const done = grid.settled();
  sheet.getRange("A1").setValue(0);
  sheet.getRange("A3").setValue('=""');
  const asking = [1, 2, 3].map((row) => asked.map((formula) => formula.replaceAll("A1", `A${row}`)));
  sheet.getRange("B1:E3").setValues(asking);
  await done;
  const answers = asking.map((_, row) => sheet.getRange(row, 1, 1, 4).getRawValues()[0]!);
  expect(answers).toEqual([
    [0, 1, 0, 1],
    [1, "", 1, ""],
    [1, "", 1, ""],
  ]);
});

test("a changed input cell carries through to what the module plans from that input", async () => {
  const before = sampleInputs("oxlip-hill-brut.json");
  const { sheet } = await written(before);
  const volume = sheet.names.find(({ name }) => name === "baseWine_volume_hL")!;
  const done = grid.settled();
  grid.api.getActiveWorkbook()!.getSheetByName(sheet.name)!.getRange(volume.row, volume.column).setValue(90);
  await done;
  const after = { ...before, baseWine: { ...before.baseWine, volume_hL: 90 } };
  const expected = planSheet(after, planBatch(after), []);
  expect(differences(expected, rawValues(sheet.name))).toEqual([]);
});

test("what is read back is what was written", async () => {
  const inputs = sampleInputs("oxlip-hill-rose.json");
  const { sheet } = await written(inputs);
  const back = host.read().sheets.find(({ name }) => name === sheet.name)!;
  const filled = (cells: SheetData["cells"]) =>
    cells
      .filter(({ value, formula, style }) => value !== null || formula !== undefined || style === "input")
      .map(
        ({ row, column, value, formula, style, format }) =>
          `${row},${column} ${style} ${format ?? ""} ${formula ?? ""} ${typeof value === "number" ? value.toPrecision(9) : JSON.stringify(value)}`,
      )
      .sort();
  expect(filled(back.cells)).toEqual(filled(sheet.cells));
  expect(new Set(back.names.map((name) => JSON.stringify(name)))).toEqual(
    new Set(sheet.names.map((name) => JSON.stringify(name))),
  );
  expect(back.merges).toEqual(sheet.merges);
  expect(back.frozenRows).toBe(sheet.frozenRows);
  expect([back.gridlines, back.pagesTall]).toEqual([sheet.gridlines, sheet.pagesTall]);
  expect([...back.rowHeights.keys()]).toEqual([...sheet.rowHeights.keys()]);
  for (const [row, points] of sheet.rowHeights) expect(back.rowHeights.get(row)).toBeCloseTo(points, 6);
});

test("a name that is taken is refused and nothing is added", async () => {
  const inputs = sampleInputs("oxlip-hill-brut.json");
  const sheet = planSheet(inputs, planBatch(inputs), []);
  const before = await host.sheetNames();
  await expect(
    host.write({
      sheets: [
        { ...sheet, name: "Fresh" },
        { ...sheet, name: before[0]!.toUpperCase() },
      ],
    }),
  ).rejects.toThrow(/already a sheet named/);
  expect(await host.sheetNames()).toEqual(before);
});

test("formulas filled down and text of several lines are read back too", async () => {
  const sheet = grid.api.getActiveWorkbook()!.insertSheet("Own");
  const done = grid.settled();
  sheet.getRange("A1:A3").setValues([[1], [2], [3]]);
  sheet.getRange("B1").setValue({ f: "=A1*3", si: "shared" });
  sheet.getRange("B2").setValue({ si: "shared" });
  sheet.getRange("C1").setValue({ p: { id: "d", body: { dataStream: "one\rtwo\r\n" }, documentStyle: {} } });
  await done;
  const own = host.read().sheets.find(({ name }) => name === "Own")!;
  const at = (row: number, column: number) =>
    own.cells.find((cell) => cell.row === row && cell.column === column)!;
  expect(at(1, 1)).toMatchObject({ formula: "A2*3", value: 6 });
  expect(at(0, 2).value).toBe("one\ntwo");
});

test("what is typed beyond the sheet's edge is read back, and does not keep the rest from being read", async () => {
  const sheet = grid.api.getActiveWorkbook()!.insertSheet("Wide");
  const [row, column] = [sheet.getMaxRows() + 5, sheet.getMaxColumns() + 5];
  const done = grid.settled();
  sheet.getRange("A1").setValue({ f: "=1+1" });
  await done;
  grid.api.syncExecuteCommand("sheet.mutation.set-range-values", {
    unitId: grid.api.getActiveWorkbook()!.getId(),
    subUnitId: sheet.getSheetId(),
    cellValue: { 2: { [column]: { v: 5, t: 2 } }, [row]: { 0: { v: "far", t: 1 }, 1: { f: "=A1*2", v: 4 } } },
  });
  const wide = host.read().sheets.find(({ name }) => name === "Wide")!;
  const at = (r: number, c: number) => wide.cells.find((cell) => cell.row === r && cell.column === c);
  expect(at(0, 0)).toMatchObject({ formula: "1+1", value: 2 });
  expect(at(2, column)).toMatchObject({ value: 5 });
  expect(at(row, 0)).toMatchObject({ value: "far" });
  expect(at(row, 1)).toMatchObject({ formula: "A1*2", value: 4 });
  await host.freeze("Wide");
  expect(host.read().sheets.find(({ name }) => name === "Wide")!.cells[0]).toMatchObject({ value: 2 });
});

/**
 * A plan read back from the cells of its sheet, and what would change if other inputs were put in.
 */
import { placedFields } from "../../src/cellar/batch/field-kinds";
import { fields } from "../../src/cellar/batch/fields";
import { parseBatchInputs } from "../../src/cellar/batch/inputs";
import type { CellValue, SheetData } from "../../src/workbook/data";
import {
  batchOnSheet,
  inSheetWords,
  inputChanges,
  isLive,
  plainCells,
  unreadInputs,
  type SheetCell,
} from "../../src/workbook/plan/read";
import { planSheet } from "../../src/workbook/plan/sheet";
import { frozen } from "../../src/workbook/frozen";
import { situations } from "../support/situations";

const batches = situations();
const first = batches[0]!;
const ALL = placedFields(fields);

function cellsOf({ cells, names }: SheetData): Map<string, SheetCell> {
  const at = new Map(cells.map((cell) => [`${cell.row} ${cell.column}`, cell]));
  return new Map(
    names.map(({ name, row, column }) => {
      const cell = at.get(`${row} ${column}`);
      return [name, { row, column, value: cell?.value ?? null, calculated: cell?.formula !== undefined }];
    }),
  );
}
const cells = (index = 0) => cellsOf(planSheet(batches[index]!.inputs, batches[index]!.plan, []));
/** The first plan with other contents in some cells; undefined takes a cell away. */
function withCells(others: Readonly<Record<string, Partial<SheetCell> | undefined>>) {
  const all = cells();
  for (const [name, other] of Object.entries(others)) {
    if (other) all.set(name, { ...all.get(name)!, ...other });
    else if (!all.delete(name)) throw new Error(`there was no ${name}`);
  }
  return all;
}
const holding = (values: Readonly<Record<string, CellValue>>) =>
  withCells(Object.fromEntries(Object.entries(values).map(([name, value]) => [name, { value }])));
const valueOf = (inputs: unknown, path: readonly string[]) =>
  path.reduce<unknown>((node, key) => (node as Record<string, unknown>)[key], inputs);

describe("read back", () => {
  test("every batch is what was written", () => {
    batches.forEach(({ inputs }, index) => {
      const read = parseBatchInputs(batchOnSheet(cells(index)));
      expect(read).toMatchObject({ ok: true, inputs });
    });
  });

  test("a name typed as a number is a text; a number is no day unless it can be one", () => {
    const read = batchOnSheet(holding({ batch_name: 2025, batch_tirageDate: 46_023, batch_lot: null }));
    // 1 January 2026 is day 46 023 in a spreadsheet
    expect(read).toMatchObject({ batch: { name: "2025", tirageDate: "2026-01-01", lot: null } });
    const odd = (value: CellValue) =>
      (batchOnSheet(holding({ batch_tirageDate: value })) as { batch: { tirageDate: unknown } }).batch
        .tirageDate;
    expect(["soon", -5, 0.5, 3_000_000].map(odd)).toEqual(["soon", -5, 0.5, 3_000_000]);
    expect(batchOnSheet(holding({ baseWine_volume_hL: "12" }))).toMatchObject({
      baseWine: { volume_hL: "12" },
    });
  });

  test("a cell that is gone is read as blank, and said; so is a formula that shows nothing", () => {
    const odd = withCells({
      baseWine_volume_hL: undefined,
      tirage_cellar_C: { value: null, calculated: true },
      dosage_stock_L: { value: null, calculated: false },
      lees_lees_months: { value: 12, calculated: true },
    });
    expect(batchOnSheet(odd)).toMatchObject({ baseWine: { volume_hL: null }, tirage: { cellar_C: null } });
    expect(unreadInputs(odd)).toEqual(["Base wine", "Tirage: Cellar temperature"]);
    expect(unreadInputs(cells())).toEqual([]);
  });

  test("it follows its inputs unless it is of values only", () => {
    const sheet = planSheet(first.inputs, first.plan, []);
    expect(isLive(cellsOf(sheet))).toBe(true);
    expect(isLive(cellsOf(frozen([sheet])[0]!))).toBe(false);
    expect(isLive(new Map())).toBe(false);
  });
});

describe("what would change", () => {
  const changesTo = (index: number, from = cells()) => inputChanges(from, batches[index]!.inputs);

  test("nothing, where the same is put in", () => {
    batches.forEach((_, index) =>
      expect(inputChanges(cells(index), batches[index]!.inputs)).toEqual({ changes: [], missing: [] }),
    );
  });

  test("exactly the inputs that differ, each at its cell", () => {
    batches.forEach(({ inputs }, index) => {
      const differing = ALL.filter(({ path }) => valueOf(first.inputs, path) !== valueOf(inputs, path));
      const { changes, missing } = changesTo(index);
      expect(missing).toEqual([]);
      expect(changes).toHaveLength(differing.length);
      differing.forEach(({ name, field }, which) => {
        const { row, column } = cells().get(name)!;
        const { choice } = changes[which]!;
        expect(changes[which]).toMatchObject({ row, column, calculated: false });
        expect([name, choice]).toEqual([name, field.kind === "choice"]);
      });
      // put in, the sheet is that of the other batch
      const put = new Map(cells());
      for (const { row, column, to } of changes)
        for (const [name, cell] of put)
          if (cell.row === row && cell.column === column) put.set(name, { ...cell, value: to });
      expect(parseBatchInputs(batchOnSheet(put))).toMatchObject({ ok: true, inputs });
    });
  });

  const said = (values: Readonly<Record<string, CellValue>>) =>
    inputChanges(holding(values), first.inputs).changes.map((change) => change.said);

  test("said in words, what is called like its section once, with unit, days as days, and blank as blank", () => {
    expect(said({ baseWine_volume_hL: 90 })).toEqual(["Base wine: 90 → 100 hL"]);
    expect(said({ tirage_cellar_C: 8 })[0]).toMatch(/^Tirage: Cellar temperature: 8 → [0-9]+ °C$/);
    expect(said({ batch_rules: "OIV" })[0]).toMatch(/^Batch: .+: OIV → EU$/);
    expect(said({ disgorging_filled_mL: "full" })[0]).toMatch(/: full → /);
    const day = first.inputs.batch.tirageDate;
    expect(said({ batch_tirageDate: 46_023 })[0]).toContain(`: 2026-01-01 → ${day}`);
    expect(said({ batch_tirageDate: -3 })[0]).toContain(`: -3 → ${day}`);
    expect(said({ batch_name: null })[0]).toMatch(/: blank → \S/);
    expect(said({ materials_bottles_pack: 12 })[0]).toMatch(/^[A-Z][a-z ]+: bottles, [A-Z]/);
  });

  test("an empty text is blank, and a name typed as a number is that name", () => {
    expect(first.inputs.dosage.stock_L).toBeNull();
    expect(said({ dosage_stock_L: "" })).toEqual([]);
    expect(said({ dosage_stock_L: 1 })[0]).toMatch(/: 1 → blank L$/);
    const numbered = { ...first.inputs, batch: { ...first.inputs.batch, name: "2025" } };
    expect(inputChanges(holding({ batch_name: 2025 }), numbered).changes).toEqual([]);
    expect(inputChanges(holding({ batch_name: 2024 }), numbered).changes).toHaveLength(1);
    // but a text is not the number that a field asks for
    expect(said({ baseWine_volume_hL: "100" })).toHaveLength(1);
  });

  test("a formula of the user's is told apart; an input without a cell is named if something is to go there", () => {
    const { changes } = inputChanges(
      withCells({ baseWine_volume_hL: { value: 90, calculated: true } }),
      first.inputs,
    );
    expect(changes).toMatchObject([{ calculated: true, from: 90, to: 100 }]);
    const gone = withCells({ baseWine_volume_hL: undefined, dosage_stock_L: undefined });
    expect(inputChanges(gone, first.inputs)).toEqual({
      changes: [],
      missing: ["Base wine"],
    });
  });
});

describe("words of a sheet in another language", () => {
  const WORDS: Readonly<Record<string, string>> = { "sucre sec": "dry sugar", rien: "nothing" };
  const plain = (word: string, options: readonly string[]) =>
    options.includes(WORDS[word] ?? "") ? WORDS[word] : undefined;
  const form = (value: CellValue) =>
    plainCells(holding({ tirage_sugarForm: value }), plain).get("tirage_sugarForm")!.value;

  test("a chosen word is read as the code knows it, any other stays", () => {
    expect(["sucre sec", "liqueur", "rien", "sugar", 7, null].map(form)).toEqual([
      ...["dry sugar", "liqueur", "rien", "sugar", 7, null],
    ]);
    expect(plainCells(holding({ batch_name: "sucre sec" }), plain).get("batch_name")!.value).toBe(
      "sucre sec",
    );
    expect([...plainCells(cells(), plain)]).toEqual([...cells()]);
  });

  test("and written as the sheet says it", () => {
    const change = { said: "", from: null, row: 0, column: 0, calculated: false };
    const say = (word: string) => word.toUpperCase();
    expect(inSheetWords({ ...change, to: "liqueur", choice: true }, say)).toBe("LIQUEUR");
    expect(inSheetWords({ ...change, to: "liqueur", choice: false }, say)).toBe("liqueur");
    expect(inSheetWords({ ...change, to: 5, choice: true }, say)).toBe(5);
    expect(inSheetWords({ ...change, to: null, choice: true }, say)).toBeNull();
  });
});

/**
 * A portable workbook in other hands: an input changed by another program, recalculated and saved by LibreOffice, and
 * its plan read back.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import * as XLSX from "@e965/xlsx";
import { planBatch } from "../../src/cellar/batch/plan";
import { seasonTotals } from "../../src/cellar/season/season";
import { readNamedSheets } from "../../src/hosts/xlsx/read";
import { plansInFile } from "../../src/taskpane/workbook-actions";
import { cellAddress } from "../../src/workbook/data";
import { convertBytes, libreOfficeTest, removeConversions } from "../support/libreoffice";
import { expectRelative } from "../support/relative";
import { inputsOf, sampleFiles, sampleInputs } from "../support/samples";
afterAll(removeConversions);

const FOLDER = path.resolve(__dirname, "../../sample-workbooks");
const stored = (name: string) => new Uint8Array(readFileSync(path.join(FOLDER, name)));

test.each(["add-in", "portable"])(
  "the plans of the season's file with %s formulas are the samples",
  async (kind) => {
    const plans = await plansInFile(stored(`oxlip-hill-season.${kind}.xlsx`));
    expect(plans.map(({ batch }) => inputsOf(batch))).toEqual(sampleFiles.map(sampleInputs));
    expect(plans.flatMap(({ unread }) => unread)).toEqual([]);
  },
);

libreOfficeTest(
  "an input changed and recalculated elsewhere is read back, and the numbers are the module's",
  async () => {
    const file = stored("oxlip-hill-season.portable.xlsx");
    const [plan] = await readNamedSheets(file, "plan_worst");
    const { row, column } = plan!.cells.get("baseWine_volume_hL")!;
    const book = XLSX.read(file, { cellFormula: true, sheetStubs: true });
    book.Sheets[plan!.name]![cellAddress(row, column)] = { t: "n", v: 55 };
    const changed = XLSX.write(book, { type: "buffer", bookType: "xlsx" }) as Buffer;
    const saved = await convertBytes(changed, "changed.xlsx", "xlsx:Calc MS Excel 2007 XML", {
      recalculate: true,
    });

    const bytes = new Uint8Array(readFileSync(saved));
    const [there] = await plansInFile(bytes);
    const sample = sampleInputs("oxlip-hill-brut.json");
    const wanted = { ...sample, baseWine: { ...sample.baseWine, volume_hL: 55 } };
    expect(inputsOf(there!.batch)).toEqual(wanted);

    const expected = planBatch(wanted);
    const [sheet] = await readNamedSheets(bytes, "plan_worst");
    const shown = (name: string) => sheet!.cells.get(name)!.value;
    expectRelative(Number(shown("plan_tirageSugar_kg")), expected.tirage.sugarKg, 1e-9);
    expectRelative(Number(shown("plan_perBottle")), expected.costs.perBottle, 1e-9);
    expect(shown("plan_worst")).toBe(expected.worst);

    const others = sampleFiles.slice(1).map(sampleInputs);
    const totals = seasonTotals([wanted, ...others].map((inputs) => ({ inputs, plan: planBatch(inputs) })));
    const [season] = await readNamedSheets(bytes, "season_total_cost");
    expectRelative(Number(season!.cells.get("season_total_cost")!.value), totals.cost!, 1e-9);
    expectRelative(Number(season!.cells.get("season_total_sugar_kg")!.value), totals.sugarKg, 1e-9);
  },
);

test("a file without a plan has none", async () => {
  const book = XLSX.utils.book_new();
  XLSX.utils.book_append_sheet(book, XLSX.utils.aoa_to_sheet([["a", 1]]), "Other");
  const bytes = XLSX.write(book, { type: "array", bookType: "xlsx" }) as ArrayBuffer;
  expect(await plansInFile(new Uint8Array(bytes))).toEqual([]);
});

test("what is no workbook at all is refused", async () => {
  await expect(plansInFile(new TextEncoder().encode("not a workbook"))).rejects.toThrow();
});

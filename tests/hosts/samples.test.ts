/**
 * The sample workbooks: up to date to the byte, right to the ISO standard, and calculated by a second engine from the
 * files themselves.
 */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import * as XLSX from "@e965/xlsx";
import { sampleBooks } from "../../src/commandline/sample-books";
import { batchFiles, readBatches } from "../../src/commandline/files";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { cellAddress } from "../../src/workbook/data";
import { calculatedByLibreOffice, differencesFrom, errorsIn } from "../support/independent";
import { libreOfficeTest, removeConversions } from "../support/libreoffice";
import { packageProblems, schemaTest } from "../support/ooxml";
import { calculatedBySecondEngine } from "../support/second-engine";
afterAll(removeConversions);

const FOLDER = path.resolve(__dirname, "../../sample-workbooks");
const files = batchFiles(FOLDER);
const books = sampleBooks(files, readBatches(files));
const stored = (name: string) => readFileSync(path.join(FOLDER, name));

test("are those that the batch files give, and no others", () =>
  expect(
    readdirSync(FOLDER)
      .filter((name) => name.endsWith(".xlsx"))
      .sort(),
  ).toEqual(books.map(([name]) => name).sort()));

test.each(books)("%s is up to date: npm run samples would write the same bytes", async (name, sheets) => {
  expect(Buffer.from(await writeWorkbookFile({ sheets })).equals(stored(name))).toBe(true);
});

schemaTest.each(books)("%s: every part keeps to ISO/IEC 29500", async (name) => {
  expect(await packageProblems(stored(name))).toEqual([]);
});

test.each(books)("%s: a second reader finds every sheet and name", (name, sheets) => {
  const book = XLSX.read(stored(name));
  expect(book.SheetNames).toEqual(sheets.map((sheet) => sheet.name));
  const found = new Set((book.Workbook?.Names ?? []).map((each) => `${each.Sheet} ${each.Name}`));
  const wanted = sheets.flatMap(({ names }, sheet) => names.map((each) => `${sheet} ${each.name}`));
  expect(wanted.filter((each) => !found.has(each))).toEqual([]);
});

const pairs = books
  .filter(([name]) => name.includes(".portable."))
  .map(([name, portable]) => {
    const [, module] = books.find(([other]) => other === name.replace(".portable.", ".add-in."))!;
    return [name, portable, module] as const;
  });

test.each(pairs)("%s: a second engine calculates every cell as the module does", (name, portable, module) => {
  const read = calculatedBySecondEngine(stored(name));
  expect(differencesFrom(module, read)).toEqual([]);
  expect(errorsIn(portable, read)).toEqual([]);
});

libreOfficeTest.each(pairs)(
  "%s: a program that only shows it finds every result, the one that LibreOffice calculates",
  async (name, portable) => {
    const file = XLSX.read(stored(name), { cellFormula: true });
    const without = portable.flatMap(({ name: sheet, cells }) =>
      cells.flatMap(({ row, column, formula }) => {
        const cell = file.Sheets[sheet]![cellAddress(row, column)] as XLSX.CellObject;
        return formula !== undefined && cell.v === undefined ? [`${sheet} ${cellAddress(row, column)}`] : [];
      }),
    );
    expect(without).toEqual([]);
    expect(differencesFrom(portable, await calculatedByLibreOffice(portable))).toEqual([]);
  },
);

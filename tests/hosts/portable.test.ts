/**
 * The portable workbook in LibreOffice, which has none of our functions: hard recalculation of every cell, held
 * against the calculation module.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { seasonBook, type Batch } from "../../src/workbook/book";
import { calculatedByLibreOffice, differencesFrom, errorsIn } from "../support/independent";
import { libreOfficeTest, removeConversions } from "../support/libreoffice";
import { sampleFiles, sampleInputs } from "../support/samples";

jest.setTimeout(300_000);
afterAll(removeConversions);

const samples = (): Batch[] =>
  sampleFiles.map((file) => {
    const inputs = sampleInputs(file);
    return { inputs, plan: planBatch(inputs) };
  });

libreOfficeTest("the sample season: every cell is the module's, and none is an error", async () => {
  const portable = seasonBook(samples(), "portable");
  const read = await calculatedByLibreOffice(portable);
  expect(differencesFrom(seasonBook(samples()), read)).toEqual([]);
  expect(errorsIn(portable, read)).toEqual([]);
});

test("no formula calls our functions or any that a spreadsheet of 2007 lacks, and each can be read", () => {
  const KNOWN =
    /^(ABS|AND|CHOOSE|CONCATENATE|COUNT|COUNTA|COUNTIF|COUNTIFS|DATE|DAY|EXACT|EXP|FALSE|IF|IFERROR|INDEX|INT|ISERROR|ISNUMBER|MATCH|MAX|MIN|MOD|MONTH|N|NA|NOT|OR|POWER|ROUND|ROUNDDOWN|ROUNDUP|SQRT|SUM|SUMIF|SUMPRODUCT|TRUE|YEAR)$/;
  const formulas = seasonBook(samples(), "portable").flatMap(({ cells }) =>
    cells.flatMap(({ formula }) => formula ?? []),
  );
  const called = new Set(
    formulas.flatMap((formula) => [...formula.matchAll(/([A-Z][A-Z0-9.]*)\(/g)].map(([, id]) => id!)),
  );
  expect([...called].filter((id) => !KNOWN.test(id))).toEqual([]);
  // the counts of inputs to mend are the same as with the add-in; what stands for our functions is shorter
  const standIns = formulas.filter((formula) => !formula.includes("COUNTIFS("));
  expect(Math.max(...standIns.map(({ length }) => length))).toBeLessThan(600);
});

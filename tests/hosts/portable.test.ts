/**
 * The portable workbook in LibreOffice, which has none of our functions: hard recalculation of every cell, held
 * against the calculation module.
 */
import { batchBook, seasonBook } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { calculatedByLibreOffice, differencesFrom, errorsIn } from "../support/independent";
import { libreOfficeTest, removeConversions } from "../support/libreoffice";
import { randomBatches } from "../support/random-batches";
import { sampleBatches } from "../support/samples";

jest.setTimeout(900_000);
afterAll(removeConversions);

libreOfficeTest("the sample season: every cell is the module's, and none is an error", async () => {
  const portable = seasonBook(sampleBatches(), "portable");
  const read = await calculatedByLibreOffice(portable);
  expect(differencesFrom(seasonBook(sampleBatches()), read)).toEqual([]);
  expect(errorsIn(portable, read)).toEqual([]);
});

test("no formula calls our functions or any that a spreadsheet of 2007 lacks, and each can be read", () => {
  const KNOWN =
    /^(ABS|AND|CHOOSE|CONCATENATE|COUNT|COUNTA|COUNTIF|COUNTIFS|DATE|DAY|EXACT|EXP|FALSE|IF|IFERROR|INDEX|INT|ISERROR|ISNUMBER|MATCH|MAX|MIN|MOD|MONTH|N|NA|NOT|OR|POWER|ROUND|ROUNDDOWN|ROUNDUP|SQRT|SUM|SUMIF|SUMPRODUCT|TRUE|YEAR)$/;
  const formulas = seasonBook(sampleBatches(), "portable").flatMap(({ cells }) =>
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

/** In parts, since one file of them all is slow to open; What-if is in the season above. */
const BATCHES = 200;
const AT_ONCE = 20;
libreOfficeTest(
  `${BATCHES} random batches: every cell of every plan and register is the module's`,
  async () => {
    const batches = randomBatches(BATCHES, 20261125);
    const sheetsOf = (first: number, formulas: "add-in" | "portable") =>
      batchBook(batches.slice(first, first + AT_ONCE), [], { formulas }).sheets.filter(
        ({ name }) => !name.startsWith("What-if"),
      );
    let compared = 0;
    const compare = async (module: readonly SheetData[], portable: readonly SheetData[]) => {
      const read = await calculatedByLibreOffice(portable);
      expect(differencesFrom(module, read).slice(0, 20)).toEqual([]);
      expect(errorsIn(portable, read).slice(0, 20)).toEqual([]);
      compared += portable.filter(({ name }) => name.startsWith("Plan")).length;
    };
    for (let first = 0; first < BATCHES; first += AT_ONCE)
      await compare(sheetsOf(first, "add-in"), sheetsOf(first, "portable"));
    expect(compared).toBe(BATCHES);
  },
);

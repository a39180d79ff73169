/**
 * How much goes to Excel and back for a season. Excel on the web takes and gives at most 5 MB at once
 * (learn.microsoft.com, "Resource limits and performance optimization for Office Add-ins").
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { standInWorkbook, type StandIn } from "../support/excel-proxies";
import { everything, namesOf, planLike, written } from "../support/excel-writing";
import { seasonBook } from "../../src/workbook/book";
import { seasonBatches, seasonSheets } from "../support/season";

const LIMIT = 5_000_000;
const bytesOf = ({ roundTrips }: StandIn) => roundTrips.map(({ bytes }) => bytes);
const most = (workbook: StandIn) =>
  Math.max(...workbook.roundTrips.flatMap(({ bytes, answerBytes }) => [bytes, answerBytes]));

describe("a season's plans", () => {
  test.each([1, 20, 200])("%i take four round trips, none too large", async (count) => {
    const sheets = seasonSheets(count);
    const workbook = await written(sheets);
    process.stdout.write(`${count} plans written: ${bytesOf(workbook).join(" + ")} bytes\n`);
    expect(workbook.roundTrips).toHaveLength(4);
    expect(most(workbook)).toBeLessThan(LIMIT);
    expect(namesOf(workbook)).toEqual(["Sheet1", ...sheets.map(({ name }) => name)]);
    const last = sheets.at(-1)!;
    const cells = workbook.sheets.at(-1)!.cells;
    for (const { row, column, value, formula } of last.cells) {
      const there = cells.get(`${row} ${column}`);
      if (formula !== undefined) expect(there?.formula).toBe(`=${formula}`);
      else expect(there?.value ?? "").toBe(value ?? "");
    }
  });

  test.each([1, 79, 200])("%i are read in three steps, no answer too large", async (count) => {
    const workbook = await written(seasonSheets(count));
    workbook.roundTrips.length = 0;
    const named = await excelHost(everything).sheetsNaming("plan_worst");
    const answers = workbook.roundTrips.map(({ answerBytes }) => answerBytes).join(" + ");
    process.stdout.write(`${count} plans read: ${answers} bytes\n`);
    expect(named).toHaveLength(count);
    // each step in as many requests as its answers need; before the plans there is one more sheet
    const parts = Math.ceil((count + 1) / 80) + Math.ceil(count / 80);
    expect(workbook.roundTrips).toHaveLength(1 + parts);
    expect(most(workbook)).toBeLessThan(LIMIT);
  });
});

test("a whole season of 20 batches: what follows each plan names it in every formula", async () => {
  const sheets = seasonBook(seasonBatches(20));
  const workbook = await written(sheets);
  process.stdout.write(`season of 20 written: ${bytesOf(workbook).join(" + ")} bytes\n`);
  expect(most(workbook)).toBeLessThan(LIMIT);
  expect(namesOf(workbook)).toEqual(["Season", "Sheet1", ...sheets.slice(1).map(({ name }) => name)]);
});

describe("what would be too much", () => {
  /** Each of a shape of its own, so that none can be copied. */
  const sheets = Array.from({ length: 16 }, (_, index) => planLike(`Plan ${index + 1}`, 2000 + index));

  test("is sent in several requests, each small enough, and all of it arrives", async () => {
    const workbook = await written(sheets);
    expect(bytesOf(workbook).reduce((sum, bytes) => sum + bytes, 0)).toBeGreaterThan(LIMIT);
    expect(most(workbook)).toBeLessThan(LIMIT);
    expect(workbook.roundTrips).toHaveLength(5);
    for (const [index, { cells }] of sheets.entries()) {
      expect(workbook.sheets[index + 1]!.cells.size).toBe(cells.filter(({ value }) => value !== "").length);
    }
    // screen and calculation rest during each of the two
    const resting = workbook.roundTrips.map(
      ({ operations }) => operations.filter(({ name }) => name.startsWith("Suspend")).length,
    );
    expect(resting).toEqual([0, 0, 2, 2, 0]);
  });

  test.each([3, 4])("a failure in request %i leaves nothing behind", async (roundTrip) => {
    const workbook = standInWorkbook({ failures: [{ roundTrip, afterActions: 100 }] });
    await expect(excelHost(everything).write({ sheets })).rejects.toThrow(`round trip ${roundTrip} failed`);
    expect(namesOf(workbook)).toEqual(["Sheet1"]);
  });
});

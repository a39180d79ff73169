/**
 * What is left in Excel when a round trip fails, on the genuine Excel proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { SheetData } from "../../src/workbook/data";
import { standInWorkbook } from "../support/excel-proxies";
import { emptySheet } from "../support/excel-workbook";
import { everything, planLike, written, operationsOf, namesOf, blockOf } from "../support/excel-writing";

describe("nothing that is there is touched", () => {
  test("a name that is taken, in whatever case, is refused before anything is written", async () => {
    const workbook = standInWorkbook({ sheetNames: ["Sheet1", "PLAN · brut"] });
    const sheets = [planLike("Plan · Rosé", 10), planLike("Plan · Brut", 10)];
    await expect(excelHost(everything).write({ sheets })).rejects.toThrow(
      /"Plan · Brut"; nothing was written\. Rename/,
    );
    expect(workbook.roundTrips).toHaveLength(1);
    expect(operationsOf(workbook)).toEqual([]);
  });

  test("two new sheets of one name are refused", async () => {
    const workbook = standInWorkbook();
    const sheets = [planLike("Plan", 10), planLike("plan", 10)];
    await expect(excelHost(everything).write({ sheets })).rejects.toThrow(/"plan"/);
    expect(operationsOf(workbook)).toEqual([]);
  });

  test("every operation is on a new sheet or on none", async () => {
    const workbook = await written([planLike("Plan 1", 50), planLike("Plan 2", 50)]);
    const touched = new Set(operationsOf(workbook).map(({ sheet }) => sheet?.name ?? null));
    expect([...touched].sort()).toEqual(["Plan 1", "Plan 2", null].sort());
  });

  test("a sheet that someone else makes meanwhile under the same name stays", async () => {
    for (const moment of [2, 3]) {
      const workbook = standInWorkbook({
        meanwhile: (roundTrip, { sheets }) => {
          if (roundTrip === moment) sheets.push(emptySheet("{theirs}", "Plan 2"));
        },
      });
      const sheets = [planLike("Plan 1", 10), planLike("Plan 2", 10)];
      await expect(excelHost(everything).write({ sheets })).rejects.toThrow(/Plan 2 is taken/);
      expect(workbook.sheets.map(({ id }) => id)).toEqual(["{existing-0}", "{theirs}"]);
    }
  });
});

describe("a failure leaves the workbook as it was", () => {
  const sheets = [planLike("Plan 1", 30), planLike("Plan 2", 31)];

  test.each([1, 2, 3])("round trip %i never arrives", async (roundTrip) => {
    const workbook = standInWorkbook({ failures: [{ roundTrip }] });
    await expect(excelHost(everything).write({ sheets })).rejects.toThrow(`round trip ${roundTrip} failed`);
    expect(namesOf(workbook)).toEqual(["Sheet1"]);
    expect(workbook.roundTrips).toHaveLength(roundTrip === 1 ? 1 : roundTrip + 1);
  });

  test.each([1, 2, 3])("round trip %i fails after any of its actions", async (roundTrip) => {
    let failed = 0;
    for (let afterActions = 0; ; afterActions++) {
      const workbook = standInWorkbook({ failures: [{ roundTrip, afterActions }] });
      const outcome = await excelHost(everything)
        .write({ sheets })
        .then(
          () => "written",
          (error: Error) => error.message,
        );
      if (outcome === "written") break;
      failed++;
      expect(outcome).toBe(`round trip ${roundTrip} failed`);
      expect(namesOf(workbook)).toEqual(["Sheet1"]);
    }
    expect(failed).toBeGreaterThan(roundTrip === 3 ? 100 : 2);
  });

  test("a machine that refuses print settings still has its plan", async () => {
    const workbook = standInWorkbook({ failures: [{ roundTrip: 4 }] });
    await excelHost(everything).write({ sheets });
    expect(namesOf(workbook)).toEqual(["Sheet1", "Plan 1", "Plan 2"]);
    expect(blockOf(workbook, "Formulas").length).toBeGreaterThan(0);
  });

  test("an error while the sheets are being queued reaches the caller too", async () => {
    const workbook = standInWorkbook();
    const broken = { ...planLike("Plan 2", 10), names: null as unknown as SheetData["names"] };
    await expect(excelHost(everything).write({ sheets: [sheets[0]!, broken] })).rejects.toThrow(TypeError);
    expect(namesOf(workbook)).toEqual(["Sheet1"]);
    expect(operationsOf(workbook).some(({ name }) => name === "Formulas")).toBe(false);
  });

  test("what cannot be removed is said, with the first error", async () => {
    const workbook = standInWorkbook({ failures: [{ roundTrip: 3 }, { roundTrip: 4 }] });
    const error: Error = await excelHost(everything)
      .write({ sheets })
      .then(
        () => fail("written"),
        (reason: Error) => reason,
      );
    expect(error.message).toMatch(
      /delete .*"Plan 1", "Plan 2".* by hand\. The first error was: round trip 3 failed/,
    );
    expect((error.cause as Error).message).toBe("round trip 3 failed");
    expect(workbook.roundTrips).toHaveLength(4);
  });
});

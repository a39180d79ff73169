/**
 * A sheet frozen in Excel on which a formula fills other cells, which have none of their own: they keep what they
 * show, on the genuine Excel proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { standInWorkbook, type Failure, type StandIn } from "../support/excel-proxies";
import type { Content } from "../support/excel-workbook";
import { everything } from "../support/excel-writing";

const SHEET = "Terms";
const result = (value: Content["value"], formula: string): Content => ({ value, formula });

describe("cells that a formula elsewhere fills", () => {
  const filled = (value: Content["value"]): Content => ({ value, filledFrom: "A1" });
  const table = {
    A1: result("brut", "=MOUSSE.SWEETNESS.TERMS()"),
    B1: filled(12),
    A2: filled("007"),
    B2: filled(true),
    A5: { value: "as typed" },
    C9: result(4, "=B1/3"),
  };
  const opening = (failures: readonly Failure[] = []) =>
    standInWorkbook({ failures, sheets: [{ name: SHEET, cells: table }] });
  const shown = (workbook: StandIn) =>
    [...workbook.sheets[0]!.cells].map(([place, { value }]) => [place, value]);

  test("stay when that formula gives way, in one round trip more", async () => {
    const workbook = opening();
    const before = new Map(shown(workbook) as [string, unknown][]);
    expect(await excelHost(everything).freeze(SHEET)).toBe(2);
    expect(new Map(shown(workbook) as [string, unknown][])).toEqual(before);
    expect([...workbook.sheets[0]!.cells.values()].some((each) => each.formula ?? each.filledFrom)).toBe(
      false,
    );
    expect([...workbook.sheets[0]!.notes.keys()]).toEqual(["A1", "C9"]);
    expect(workbook.roundTrips).toHaveLength(5);
  });

  test("are cleared for their formula again when it fails half-way", async () => {
    let failed = 0;
    for (let afterActions = 0; ; afterActions++) {
      const workbook = opening([{ roundTrip: 5, afterActions }]);
      const outcome = await excelHost(everything)
        .freeze(SHEET)
        .catch((reason: Error) => reason.message);
      if (outcome === 2) break;
      failed++;
      expect(outcome).toBe("round trip 5 failed");
      const { cells: after } = workbook.sheets[0]!;
      expect(after.get("0 0")?.formula).toBe(table.A1.formula);
      // in its way otherwise
      expect(["0 1", "1 0", "1 1"].map((place) => after.has(place))).toEqual([false, false, false]);
      expect(after.get("4 0")).toEqual(table.A5);
    }
    expect(failed).toBeGreaterThan(4);
  });
});

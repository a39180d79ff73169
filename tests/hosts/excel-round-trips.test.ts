/**
 * Round trips and bytes that the Excel host takes, on the genuine Excel proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { Validation } from "../../src/workbook/data";
import { standInWorkbook } from "../support/excel-proxies";
import {
  bareBytes,
  everything,
  planLike,
  sheetOf,
  cell,
  written,
  bytesOf,
  namesOf,
  matching,
} from "../support/excel-writing";

describe("round trips", () => {
  test("sheetNames takes one", async () => {
    const workbook = standInWorkbook({ sheetNames: ["Sheet1", "Season"] });
    expect(await excelHost(everything).sheetNames()).toEqual(["Sheet1", "Season"]);
    expect(workbook.roundTrips).toHaveLength(1);
  });

  test.each([
    [1, 10],
    [1, 2000],
    [20, 10],
    [20, 2000],
  ])("%i sheets of %i rows take four", async (count, rows) => {
    const sheets = Array.from({ length: count }, (_, index) => planLike(`Plan ${index + 1}`, rows));
    const workbook = await written(sheets);
    expect(workbook.roundTrips).toHaveLength(4);
    expect(namesOf(workbook)).toEqual(["Sheet1", ...sheets.map(({ name }) => name)]);
    expect(workbook.active).toBe("Plan 1");
  });

  test("no range is kept, which would take one more to let go", async () => {
    const workbook = await written([planLike("Plan", 2000)]);
    expect(matching(workbook, /./, "_KeepReference")).toEqual([]);
  });

  test("no sheets, no round trip", async () => {
    expect((await written([])).roundTrips).toHaveLength(0);
  });
});

describe("payload", () => {
  test.each([120, 2000])("%i rows with all looks take less than twice the bare cells", async (rows) => {
    const sheet = planLike("Plan", rows);
    const bare = await bareBytes(sheet);
    const full = bytesOf(await written([sheet]));
    process.stdout.write(`${rows} rows: ${full} bytes, bare ${bare}, ratio ${(full / bare).toFixed(2)}\n`);
    expect(full / bare).toBeLessThan(2);
  });

  test("a name and a validation each cost one object", async () => {
    const plain = sheetOf([cell(1)]);
    const named = {
      ...plain,
      names: Array.from({ length: 100 }, (_, row) => ({ name: `volume_${row}`, row, column: 1 })),
    };
    const ruled = {
      ...plain,
      validations: named.names.map(({ name, row, column }): Validation => ({
        row,
        column,
        title: name,
        message: "Give 0 to 10 hL.",
        allowBlank: true,
        kind: "decimal",
        min: 0,
        max: 10,
      })),
    };
    const base = bytesOf(await written([plain]));
    const perName = (bytesOf(await written([named])) - base) / 100;
    const perRule = (bytesOf(await written([ruled])) - base) / 100;
    process.stdout.write(`a name ${perName.toFixed(0)} bytes, a validation ${perRule.toFixed(0)} bytes\n`);
    expect(perName).toBeLessThan(250);
    expect(perRule).toBeLessThan(1000);
  });
});

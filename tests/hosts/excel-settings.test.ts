/**
 * Small settings that travel with the workbook in Excel, on the genuine Excel proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { standInWorkbook } from "../support/excel-proxies";
import { everything } from "../support/excel-writing";

test("what is kept is recalled, by its own key, and the last counts", async () => {
  const workbook = standInWorkbook();
  const host = excelHost(everything);
  await host.keep("units", "metric");
  await host.keep("country", "EU");
  await host.keep("units", "US");
  expect(await host.recall("units")).toBe("US");
  expect(await host.recall("country")).toBe("EU");
  expect(workbook.roundTrips).toHaveLength(5);
});

test("nothing kept, nothing recalled", async () => {
  standInWorkbook();
  expect(await excelHost(everything).recall("units")).toBeUndefined();
});

test("settings of others are neither read nor written over", async () => {
  const workbook = standInWorkbook({ settings: { units: "theirs" } });
  const host = excelHost(everything);
  expect(await host.recall("units")).toBeUndefined();
  await host.keep("units", "ours");
  expect(workbook.settings.get("units")).toBe("theirs");
  expect(workbook.settings.size).toBe(2);
});

test("what is no text, as another program may have left it, is not recalled", async () => {
  const workbook = standInWorkbook();
  const host = excelHost(everything);
  await host.keep("units", "US");
  const [key] = workbook.settings.keys();
  workbook.settings.set(key!, { unit: "US" });
  expect(await host.recall("units")).toBeUndefined();
});

test("before ExcelApi 1.4 nothing is asked of Excel", async () => {
  const workbook = standInWorkbook();
  const host = excelHost((_set, version) => Number(version.split(".")[1]) < 4);
  await host.keep("units", "US");
  expect(await host.recall("units")).toBeUndefined();
  expect(workbook.roundTrips).toEqual([]);
});

test("what Excel refuses reaches the caller", async () => {
  standInWorkbook({ failures: [{ roundTrip: 1 }, { roundTrip: 2 }] });
  const host = excelHost(everything);
  await expect(host.keep("units", "US")).rejects.toThrow("round trip 1 failed");
  await expect(host.recall("units")).rejects.toThrow("round trip 2 failed");
});

/**
 * The real plan, written to Excel's genuine proxies.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { excelHost } from "../../src/hosts/excel/excel-host";
import { planSheet } from "../../src/workbook/plan/sheet";
import { standInWorkbook } from "../support/excel-proxies";
import { sampleFiles, sampleInputs } from "../support/samples";

test.each(sampleFiles)("%s takes at most four round trips", async (file) => {
  const workbook = standInWorkbook();
  const host = excelHost(() => true);
  const inputs = sampleInputs(file);
  const taken = await host.sheetNames();
  const sheet = planSheet(inputs, planBatch(inputs), taken);
  workbook.roundTrips.length = 0;
  await host.write({ sheets: [sheet] });
  expect(workbook.roundTrips.length).toBeLessThanOrEqual(4);
  expect(workbook.active).toBe(sheet.name);
  const bytes = workbook.roundTrips.reduce((sum, trip) => sum + trip.bytes, 0);
  console.log(`${sheet.name}: ${workbook.roundTrips.length} round trips, ${bytes} bytes`);
});

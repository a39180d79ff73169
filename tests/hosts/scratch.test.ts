import { excelHost } from "../../src/hosts/excel/excel-host";
import { standInWorkbook } from "../support/excel-proxies";
import { seasonSheets } from "../support/season";
test("x", async () => {
  const [sheet] = seasonSheets(1);
  const bytes = async (s: typeof sheet) => { const w = standInWorkbook(); await excelHost(() => true).write({ sheets: [s!] }); return w.roundTrips.map(r=>r.bytes); };
  const base = await bytes(sheet);
  const none = await bytes({ ...sheet!, charts: [] });
  console.log(sheet!.charts.map(c => [c.kind, c.series.length, JSON.stringify(c).length]), base, none);
  for (const c of sheet!.charts) { console.log(c.kind, (await bytes({...sheet!, charts:[c]}))[3]! - none[3]!, (await bytes({...sheet!, charts:[{...c, series: c.series.slice(0,1)}]}))[3]! - none[3]!); }
  console.log("no rules", (await bytes({...sheet!, validations: []}))[2]! - base[2]!, sheet!.validations.length, "no names", (await bytes({...sheet!, names: []}))[2]! - base[2]!, sheet!.names.length, "no cells", (await bytes({...sheet!, cells: []}))[2]! - base[2]!, sheet!.cells.length, JSON.stringify(sheet!.cells.map(c=>c.formula??c.value)).length, "no sizes", (await bytes({...sheet!, merges: [], rowHeights: new Map()}))[2]! - base[2]!);
});

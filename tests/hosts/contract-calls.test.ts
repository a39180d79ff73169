/**
 * The same calls of every host that has an open workbook behave alike: the grid in its own engine, Excel on its genuine
 * proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { gridHost } from "../../src/hosts/grid/grid-host";
import type { Host } from "../../src/hosts/host";
import type { CellValue } from "../../src/workbook/data";
import { standInWorkbook } from "../support/excel-proxies";
import { blockOf } from "../support/excel-workbook";
import { everything } from "../support/excel-writing";
import { headlessGrid } from "../support/grid";
import { namedPlan as plan } from "../support/named-plan";

/** A host with what a user may do beside it. */
interface Opened {
  readonly host: Host;
  readonly select: (sheet: string, address: string) => void;
  readonly type: (sheet: string, address: string, value: string | number) => void;
  readonly remove: (sheet: string) => void;
  readonly formulaAt: (sheet: string, address: string) => string;
  readonly valueAt: (sheet: string, address: string) => CellValue;
  readonly close: () => void;
}

async function openGrid(): Promise<Opened> {
  const grid = await headlessGrid();
  const book = grid.api.getActiveWorkbook()!;
  const at = (sheet: string, address: string) => book.getSheetByName(sheet)!.getRange(address);
  return {
    host: gridHost(grid.api),
    select: (sheet, address) => {
      book.setActiveSheet(book.getSheetByName(sheet)!);
      at(sheet, address).activate();
    },
    type: (sheet, address, value) => void at(sheet, address).setValue(value),
    remove: (sheet) => void book.deleteSheet(book.getSheetByName(sheet)!),
    formulaAt: (sheet, address) => at(sheet, address).getFormula(),
    valueAt: (sheet, address) => at(sheet, address).getRawValue() as CellValue,
    close: () => grid.dispose(),
  };
}

function openExcel(): Promise<Opened> {
  const workbook = standInWorkbook();
  const named = (name: string) => workbook.sheets.find((sheet) => sheet.name === name)!;
  const placeOf = (address: string) => `${blockOf(address).row} ${blockOf(address).column}`;
  return Promise.resolve({
    host: excelHost(everything),
    select: (sheet, address) => void (workbook.selected = { sheet, address }),
    type: (sheet, address, value) => void named(sheet).cells.set(placeOf(address), { value }),
    remove: (sheet) => void workbook.sheets.splice(workbook.sheets.indexOf(named(sheet)), 1),
    formulaAt: (sheet, address) => named(sheet).cells.get(placeOf(address))?.formula ?? "",
    valueAt: (sheet, address) => named(sheet).cells.get(placeOf(address))?.value ?? null,
    close: () => undefined,
  });
}

describe.each([
  ["the grid", openGrid],
  ["Excel", openExcel],
])("%s", (_name, open) => {
  let opened: Opened;
  let host: Host;
  beforeEach(async () => {
    opened = await open();
    ({ host } = opened);
    await host.write({ sheets: [plan("A"), plan("Jo's")] });
  });
  afterEach(() => opened.close());
  const said = (work: Promise<unknown>) =>
    work.then(
      () => "done",
      (error: Error) => error.message,
    );

  test("names of the sheets, in their order", async () => {
    expect(await host.sheetNames()).toEqual(["Sheet1", "A", "Jo's"]);
  });

  test("a name that is taken, in whatever case: nothing is written, and it says so", async () => {
    expect(await said(host.write({ sheets: [plan("B"), plan("JO'S")] }))).toMatch(
      /already .*a sheet named "JO'S"; nothing was written/,
    );
    expect(await host.sheetNames()).toEqual(["Sheet1", "A", "Jo's"]);
  });

  test("nothing is written any more once it is not to go on, and the reason comes back", async () => {
    const abort = new AbortController();
    abort.abort(new Error("enough"));
    const tell = jest.fn();
    expect(await said(host.write({ sheets: [plan("B")] }, { tell, signal: abort.signal }))).toBe("enough");
    expect(await host.sheetNames()).toEqual(["Sheet1", "A", "Jo's"]);
    expect(tell).not.toHaveBeenCalled();
    await host.write({ sheets: [plan("B")] }, { tell, signal: new AbortController().signal });
    expect(tell).toHaveBeenLastCalledWith(1, 1);
  });

  test("values put in as what they are", async () => {
    const values: CellValue[] = [30, "007", false, "=1+1", null];
    await host.change(values.map((value, row) => ({ sheet: "Jo's", row, column: 1, value })));
    const cells = (await host.sheetsNaming("volume")).find(({ name }) => name === "Jo's")!.cells;
    const found = ["volume", "term", "ready", "double", "failed"].map((name) => cells.get(name));
    expect(found.map((cell) => cell?.value)).toEqual(values);
    expect(found.map((cell) => cell?.calculated)).toEqual(values.map(() => false));
  });

  test("a change in a sheet that is gone: nothing is changed, and the sheet is named", async () => {
    opened.remove("Jo's");
    const change = (sheet: string) => ({ sheet, row: 0, column: 1, value: 99 });
    expect(await said(host.change([change("A"), change("Jo's")]))).toBe(
      'There is no sheet named "Jo\'s" any more; nothing was changed.',
    );
    expect(opened.valueAt("A", "B1")).toBe(12.5);
  });

  test.each([
    ["B1", "12.5"],
    ["B2", "Brut"],
    ["B4", "=B1*2"],
    ["B6", ""],
    ["B7", "=1+1"],
  ])("the selected cell %s holds %j", async (address, content) => {
    opened.select("Jo's", address);
    expect(await host.selectedCell()).toEqual({ sheet: "Jo's", address, content });
  });

  test("a formula goes into the cell as it was looked at, not into a changed one", async () => {
    opened.select("A", "B1");
    const cell = await host.selectedCell();
    await host.typeFormula(cell, "=2*3");
    expect(opened.formulaAt("A", "B1")).toBe("=2*3");
    // it holds something else by now
    expect(await said(host.typeFormula(cell, "=4*5"))).toBe(
      'B1 of "A" has changed meanwhile, so nothing was put in: try again.',
    );
    expect(opened.formulaAt("A", "B1")).toBe("=2*3");
    opened.type("A", "B2", "Extra brut");
    expect(await said(host.typeFormula({ sheet: "A", address: "B2", content: "Brut" }, "=1"))).toMatch(
      /changed meanwhile/,
    );
    opened.remove("A");
    expect(await said(host.typeFormula(cell, "=1"))).toBe('There is no sheet named "A" any more.');
  });

  test("freezing counts the formulas, once; a sheet that is gone is named", async () => {
    expect(await host.freeze("A")).toBe(2);
    expect(["B4", "B5"].map((address) => opened.formulaAt("A", address))).toEqual(["", ""]);
    expect(opened.formulaAt("Jo's", "B4")).toBe("=B1*2");
    expect(await host.freeze("A")).toBe(0);
    expect(await host.freeze("Sheet1")).toBe(0);
    expect(await said(host.freeze("Gone"))).toBe(
      'There is no sheet named "Gone" any more; nothing was changed.',
    );
  });

  test("what is kept is recalled, what is not is nothing", async () => {
    expect(await host.recall("units")).toBeUndefined();
    await host.keep("units", "US");
    await host.keep("units", "metric");
    expect(await host.recall("units")).toBe("metric");
    expect(await host.recall("country")).toBeUndefined();
  });
});

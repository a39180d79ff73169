/**
 * Formulas that need their own result: an error in the grid, not a number that changes with each calculation.
 */
import fc from "fast-check";
import "@univerjs/sheets-conditional-formatting/facade";
import { inCircles } from "../../src/hosts/grid/circles";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { frozen } from "../../src/workbook/frozen";
import { cell, sheetOf } from "../support/excel-writing";
import { always } from "../support/fuzz";
import { packageParts } from "../support/ooxml";
import { headlessGrid, type HeadlessGrid } from "../support/grid";

const CIRCLE = "#CYCLE!";
const corner = cell("the last one", { row: 9, column: 9 });

describe("in the grid", () => {
  let grid: HeadlessGrid;
  let host: GridHost;
  beforeEach(async () => {
    grid = await headlessGrid();
    host = gridHost(grid.api);
    const done = grid.settled();
    await host.write({ sheets: ["A", "B"].map((name) => sheetOf([cell(4), corner], { name })) });
    await done;
  });
  afterEach(() => grid.dispose());

  const at = (address: string, sheet = "A") =>
    grid.api.getActiveWorkbook()!.getSheetByName(sheet)!.getRange(address);
  const values = (addresses: string, sheet = "A") =>
    addresses.split(" ").map((each) => at(each, sheet).getRawValue());
  async function put(contents: Readonly<Record<string, string | number>>, sheet = "A"): Promise<void> {
    const done = grid.settled();
    for (const [address, content] of Object.entries(contents))
      at(address, sheet).setValue(typeof content === "string" ? { f: content } : content);
    await done;
  }
  async function calculatedAnew(): Promise<void> {
    const done = grid.settled();
    grid.api.getFormula().executeCalculation();
    await done;
  }

  test.each([
    ["itself", { B1: "=B1+1" }],
    ["a range with itself in it", { B1: "=SUM(A1:B3)" }],
    ["one that reads it", { B1: "=C1+A1", C1: "=B1*2" }],
    ["one that reads it after two more", { B1: "=C1", C1: "=D1", D1: "=E1+1", E1: "=IF(A1>0,B1,0)" }],
    ["an address that is a result", { B1: '=INDIRECT("C"&1)', C1: "=B1+1" }],
    ["a cell so far away", { B1: "=OFFSET(A1,0,2)", C1: "=B1+1" }],
    ["a function of ours", { B1: "=MOUSSE.SUGAR.INVERT(C1)", C1: "=B1+1" }],
    ["what it fills itself", { B1: "=SEQUENCE(C1)", C1: "=SUM(B1:B9)" }],
  ] as [string, Record<string, string>][])("a formula that needs %s", async (_, formulas) => {
    await put(formulas);
    const places = Object.keys(formulas).join(" ");
    expect(values(places)).toEqual(Object.keys(formulas).map(() => CIRCLE));
    await calculatedAnew();
    expect(values(places)).toEqual(Object.keys(formulas).map(() => CIRCLE));
  });

  // Excel takes these too: they ask where their cell is, not what it holds
  test.each([
    ["=ROW(B5)-4", 1, 2],
    ["=ROWS(B1:B9)", 9, 10],
    ["=COLUMN(B5)*100+columns(A5:C5)", 203, 203],
    ["=AREAS(B5)", 1, 1],
    ["=SUM(ROW(B5:B7))", 18, 21],
    ["=A1*ROW($B$5)", 20, 24],
    ["=SUM(A1:OFFSET(B5,-1,-1))", 4, 4],
    ["=OFFSET(B5,-4,-1)+1", 5, 1],
  ])("%s in its own cell", async (formula, found, afterRow) => {
    await put({ B5: formula });
    expect(values("B5")).toEqual([found]);
    const done = grid.settled();
    grid.api.getActiveWorkbook()!.getSheetByName("A")!.insertRows(2, 1);
    await done;
    expect(values("B6")).toEqual([afterRow]);
  });

  test("what is asked where it is may be a result", async () => {
    await put({ B5: '=ROW(INDIRECT("B"&A1))' });
    expect(values("B5")).toEqual([4]);
    await put({ A1: 7 });
    expect(values("B5")).toEqual([7]);
    await put({ B5: "=ROW(B5)+B5" });
    expect(values("B5")).toEqual([CIRCLE]);
  });

  test("what has read a cell of it before is an error too", async () => {
    await put({ A1: 60, A2: "=A1*2", A3: "=A2+1", B1: "=A1*10", B2: "=20*A1/1000", B3: "=B1+1" });
    await put({ C1: '=IFERROR(A1+1,"err")', C2: '=IF(A1>0,"ok","no")', C3: "=MOUSSE.TIRAGE.SUGAR(A1,24)" });
    await put({ A1: "=A3/2" });
    expect(values("A1 A2 A3 B1 B2 B3 C1 C2 C3")).toEqual([
      CIRCLE,
      CIRCLE,
      CIRCLE,
      CIRCLE,
      CIRCLE,
      CIRCLE,
      "err",
      CIRCLE,
      CIRCLE,
    ]);
    await calculatedAnew();
    expect(values("B1 B3 C1 C2")).toEqual([CIRCLE, CIRCLE, "err", CIRCLE]);
  });

  test("between two circles a formula may say otherwise", async () => {
    await put({ B1: "=B1+1", C1: "=IFERROR(B1,7)", D1: "=C1+D1" });
    expect(values("B1 C1 D1")).toEqual([CIRCLE, 7, CIRCLE]);
  });

  test("highlights and rules stand in no cell, whatever cells they name", async () => {
    await put({ B1: "=A1+1", B2: "=A1*2", B3: "=SUM(B1:B2)" });
    const sheet = grid.api.getActiveWorkbook()!.getSheetByName("A")!;
    const rule = sheet
      .newConditionalFormattingRule()
      .whenFormulaSatisfied("=$B1>AVERAGE($B$1:$B$3)")
      .setRanges([at("A1:C4").getRange()])
      .setBold(true)
      .build();
    sheet.addConditionalFormattingRule(rule);
    await calculatedAnew();
    await put({ A1: 5 });
    expect(values("B1 B2 B3")).toEqual([6, 10, 16]);
    await calculatedAnew();
    expect(values("B1 B2 B3")).toEqual([6, 10, 16]);
  });

  test("no mark is left of a circle that is gone", async () => {
    const C = { C3: "=A1*10", C4: "=C3", C5: "=C4" };
    await put({ A1: 1, B1: "=C1", C1: "=B1", ...C, D1: "=OFFSET(A5,0,B1)" });
    await put({ C1: 2 });
    expect(values("B1 D1")).toEqual([2, 10]);
    await put({ A1: 3 });
    expect(values("D1")).toEqual([30]);
  });

  test("no mark is left either where the grid is a host twice", async () => {
    await put({ B1: "=B1+1" });
    gridHost(grid.api);
    await put({ B1: "=A1+1" });
    expect(values("B1")).toEqual([5]);
  });

  test("what reads from a circle is an error, and may say otherwise; what does not, calculates", async () => {
    await put({ B1: "=C1+1", C1: "=B1+1", D1: "=C1*2", E1: "=IFERROR(D1,7)", F1: "=A1*2" });
    expect(values("B1 C1 D1 E1 F1")).toEqual([CIRCLE, CIRCLE, CIRCLE, 7, 8]);
  });

  test("a circle through another sheet", async () => {
    await put({ B1: "=B!B1+1" });
    expect(values("B1")).toEqual([1]);
    await put({ B1: "=A!B1+1" }, "B");
    expect([...values("B1"), ...values("B1", "B")]).toEqual([CIRCLE, CIRCLE]);
  });

  test("all calculates again once a value stands in the circle", async () => {
    await put({ B1: "=C1+1", C1: "=D1+1", D1: 5 });
    await put({ D1: "=B1+1" });
    expect(values("B1 C1 D1")).toEqual([CIRCLE, CIRCLE, CIRCLE]);
    await put({ D1: 10 });
    expect(values("B1 C1 D1")).toEqual([12, 11, 10]);
  });

  test("a saved file leaves the circle to the program that opens it; with values only it is an error", async () => {
    await put({ B1: "=B1+1", C1: "=A1+1" });
    const { sheets } = host.read();
    const written = async (kept: typeof sheets) => {
      const parts = packageParts(await writeWorkbookFile({ sheets: kept }));
      const sheet = parts.get("xl/worksheets/sheet2.xml")!.replace(/ s="\d+"/g, "");
      return sheet.match(/<c r="[BC]1".*?<\/c>/g);
    };
    expect(await written(sheets)).toEqual(['<c r="B1"><f>B1+1</f></c>', '<c r="C1"><f>A1+1</f><v>5</v></c>']);
    expect(await written(frozen(sheets))).toEqual([
      '<c r="B1" t="e"><v>#VALUE!</v></c>',
      '<c r="C1"><v>5</v></c>',
    ]);
  });
});

test("those that need their own result, whoever reads whom", () => {
  const NODES = 7;
  const ids = Array.from({ length: NODES }, (_, id) => id);
  // also readers that are not asked about
  const reading = fc.array(fc.tuple(fc.nat(NODES - 1), fc.nat(NODES)), { maxLength: 14 });
  always(reading, (pairs) => {
    // whom one comes to by whatever way: Warshall's closure
    const leads = ids.map((from) => ids.map((to) => pairs.some(([a, b]) => a === from && b === to)));
    for (const by of ids)
      for (const from of ids) for (const to of ids) leads[from]![to] ||= leads[from]![by]! && leads[by]![to]!;
    const found = inCircles(
      ids.map((treeId) => ({ treeId })),
      ({ treeId }) => pairs.filter(([from]) => from === treeId).map(([, to]) => to),
    );
    expect(found.map(({ treeId }) => treeId)).toEqual(ids.filter((id) => leads[id]![id]));
  });
});

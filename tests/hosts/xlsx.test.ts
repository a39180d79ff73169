/**
 * The file host: read back by a second library, held against the published schemas, opened in LibreOffice.
 */
import { read, type WorkBook, type WorkSheet } from "@e965/xlsx";
import { readFile } from "node:fs/promises";
import { storedFormula } from "../../src/hosts/xlsx/formula";
import { cut } from "../../src/workbook/rule-text";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import type { CellValue, PlacedCell, SheetData, Validation } from "../../src/workbook/data";
import { convertBytes, libreOfficeTest, removeConversions } from "../support/libreoffice";
import { packageParts, packageProblems, schemaTest } from "../support/ooxml";

const emptySheet: SheetData = {
  name: "Empty",
  cells: [],
  columnWidths: [],
  rowHeights: new Map(),
  merges: [],
  frozenRows: 0,
  names: [],
  validations: [],
  frozenColumns: 0,
  highlights: [],
  tables: [],
  charts: [],
  landscape: false,
  gridlines: false,
  pagesTall: 2,
};

const prompt = { title: "Volume", message: "In hectolitres, 0.1 to 5000.", allowBlank: false };
const text = (row: number, value: CellValue): PlacedCell => ({ row, column: 0, value, style: "label" });

const sheetWith = (cells: readonly PlacedCell[]): SheetData => ({ ...emptySheet, name: "Cells", cells });
const sheetValidating = (validation: Validation): SheetData => ({ ...emptySheet, validations: [validation] });

const brut: SheetData = {
  name: "O'Brut 24",
  cells: [
    { row: 0, column: 0, value: "Oxlip Hill brut", style: "title" },
    { row: 2, column: 0, value: "Tirage", style: "heading" },
    { row: 3, column: 0, value: "Volume", style: "label" },
    { row: 3, column: 1, value: 50, style: "input", format: "0.0" },
    { row: 4, column: 1, value: 45000, style: "input", format: "dd mmm yyyy" },
    { row: 5, column: 1, value: true, style: "input" },
    { row: 6, column: 1, value: null, style: "input" },
    {
      row: 7,
      column: 1,
      value: 121.83,
      formula: "MOUSSE.TIRAGE.SUGAR(B4, 24)",
      style: "key",
      format: "0.00",
    },
    { row: 8, column: 1, value: 7.5, formula: "INDEX(MOUSSE.TIRAGE.LIQUEUR(B4, 24), 1, 2)", style: "result" },
    { row: 9, column: 1, value: "extra dry", formula: "MOUSSE.SWEETNESS.TERM(12)", style: "verdict" },
    { row: 10, column: 1, value: false, formula: "B4>60", style: "result" },
    { row: 11, column: 1, value: null, formula: "MOUSSE.TIRAGE.SUGAR(-1, 24)", style: "result" },
    { row: 12, column: 1, value: 50, formula: "'O''Brut 24'!B4", style: "total" },
  ],
  columnWidths: [28, 12.5],
  rowHeights: new Map([
    [0, 24],
    [20, 40],
  ]),
  merges: [
    { row: 2, column: 0, lastColumn: 3 },
    { row: 3, column: 0, lastColumn: 0 },
  ],
  frozenRows: 2,
  names: [
    { name: "tirage_sugar_kg", row: 7, column: 1 },
    { name: "base_hL", row: 3, column: 1 },
  ],
  validations: [
    { ...prompt, row: 3, column: 1, kind: "decimal", min: 0.1, max: 5000 },
    { ...prompt, row: 4, column: 1, kind: "date", min: 36526, max: 73050 },
    { ...prompt, row: 5, column: 1, kind: "list", options: ["yes", "no", 'the "old" way'] },
    { ...prompt, row: 6, column: 1, kind: "textLength", max: 40, allowBlank: true },
    { ...prompt, row: 7, column: 1, kind: "whole", min: 1, max: 9 },
  ],
  frozenColumns: 0,
  highlights: [],
  tables: [],
  charts: [],
  landscape: false,
  gridlines: false,
  pagesTall: 2,
};
const portable = sheetWith([{ row: 0, column: 0, value: 2, formula: "1+1", style: "result" }]);
const book = { sheets: [brut, emptySheet, { ...portable, names: [{ name: "base_hL", row: 0, column: 0 }] }] };

const part = (file: Uint8Array, path: string) => packageParts(file).get(path) ?? "";
const firstSheet = async (sheet: SheetData) =>
  part(await writeWorkbookFile({ sheets: [sheet] }), "xl/worksheets/sheet1.xml");

let file: Uint8Array;
let readBook: WorkBook;
let sheet: WorkSheet;
beforeAll(async () => {
  file = await writeWorkbookFile(book);
  readBook = read(file, { type: "array", cellStyles: true, cellNF: true });
  sheet = readBook.Sheets[brut.name] ?? {};
});
afterAll(removeConversions);

describe("read back", () => {
  test.each([
    ["A1", "s", "Oxlip Hill brut", undefined],
    ["B4", "n", 50, undefined],
    ["B6", "b", true, undefined],
    ["B8", "n", 121.83, "_xldudf_MOUSSE_TIRAGE_SUGAR(B4, 24)"],
    ["B9", "n", 7.5, "INDEX(_xldudf_MOUSSE_TIRAGE_LIQUEUR(B4, 24), 1, 2)"],
    ["B10", "s", "extra dry", "_xldudf_MOUSSE_SWEETNESS_TERM(12)"],
    ["B11", "b", false, "B4>60"],
    ["B13", "n", 50, "'O''Brut 24'!B4"],
  ])("%s", (address, t, v, f) => {
    expect(sheet[address]).toMatchObject(f === undefined ? { t, v } : { t, v, f });
  });

  test("a formula with an error has no cached value", () => {
    expect(part(file, "xl/worksheets/sheet1.xml")).toMatch(/<c r="B12"[^>]*><f>[^<]*<\/f><\/c>/);
  });

  test("formats and fills", () => {
    expect(sheet.B4).toMatchObject({ z: "0.0", s: { fgColor: { rgb: "FFF6DC" } } });
    expect(sheet.B5).toMatchObject({ z: "dd mmm yyyy", w: "15 Mar 2023" });
    expect(sheet.B8).toMatchObject({ z: "0.00" });
    expect(sheet.B9).toMatchObject({ z: "General" });
  });

  test("names hold within their sheet", () => {
    expect(readBook.Workbook?.Names).toEqual([
      { Name: "tirage_sugar_kg", Sheet: 0, Ref: "'O''Brut 24'!$B$8" },
      { Name: "base_hL", Sheet: 0, Ref: "'O''Brut 24'!$B$4" },
      { Name: "base_hL", Sheet: 2, Ref: "'Cells'!$A$1" },
    ]);
  });

  test("widths in characters, heights in points", () => {
    expect(sheet["!cols"]?.map(({ wch }) => wch)).toEqual([28, expect.closeTo(12.5, 0)]);
    expect([0, 1, 20].map((row) => sheet["!rows"]?.[row]?.hpt)).toEqual([24, undefined, 40]);
  });

  test("a merge, whose border runs under all of it; one cell is no merge", () => {
    expect(sheet["!merges"]).toEqual([{ s: { r: 2, c: 0 }, e: { r: 2, c: 3 } }]);
    const styles = [
      ...part(file, "xl/worksheets/sheet1.xml").matchAll(/<c r="[A-D]3" (?:t="s" )?s="(\d+)"/g),
    ];
    expect(styles.map(([, style]) => style)).toEqual(Array(4).fill(styles[0]?.[1]));
  });

  test("frozen rows, A4 one page wide and two tall, no gridlines", () => {
    const xml = part(file, "xl/worksheets/sheet1.xml");
    expect(xml).toContain('<pane ySplit="2" topLeftCell="A3" state="frozen"');
    expect(xml).toContain('<pageSetup paperSize="9" orientation="portrait" fitToWidth="1" fitToHeight="2"/>');
  });
});

describe("add-in functions", () => {
  test.each([
    ["MOUSSE.PRESSURE.AT20(4.5, 10)", "_xldudf_MOUSSE_PRESSURE_AT20(4.5, 10)"],
    ['IF(A1>0, MOUSSE.A.B(MOUSSE.C.D(1)), "")', 'IF(A1>0, _xldudf_MOUSSE_A_B(_xldudf_MOUSSE_C_D(1)), "")'],
    [
      '"MOUSSE.A.B(" & MOUSSE.A.B("say ""MOUSSE.A.B(1)""")',
      '"MOUSSE.A.B(" & _xldudf_MOUSSE_A_B("say ""MOUSSE.A.B(1)""")',
    ],
    ["'a''b MOUSSE.A.B(1)'!A1+MOUSSE.A.B(1)", "'a''b MOUSSE.A.B(1)'!A1+_xldudf_MOUSSE_A_B(1)"],
    ["NOTMOUSSE.A.B(1)+MY.MOUSSE.A.B(1)+MOUSSE.A", "NOTMOUSSE.A.B(1)+MY.MOUSSE.A.B(1)+MOUSSE.A"],
  ])("%s", (formula, stored) => expect(storedFormula(formula, "A1")).toBe(stored));

  test("their cached values are not thrown away on opening; plain formulas are recalculated", async () => {
    expect(part(file, "xl/workbook.xml")).toContain('<calcPr calcId="191029"/>');
    expect(part(file, "docProps/app.xml")).toContain("<Application>Microsoft Excel compatible</Application>");
    const plain = await writeWorkbookFile({ sheets: [portable] });
    expect(part(plain, "xl/workbook.xml")).toContain('fullCalcOnLoad="1"');
  });
});

describe("text", () => {
  test.each([
    "=1+1",
    "@x",
    "+7",
    "-A1",
    "007",
    "#N/A",
    "1e5",
    "TRUE",
    " outer ",
    "two\nlines",
    "_x0041_",
    "<&>\"'",
    "🍾 brut",
    "نبيذ",
  ])("%j stays text", async (value) => {
    const written = read(await writeWorkbookFile({ sheets: [sheetWith([text(0, value)])] }), {
      type: "array",
    });
    expect(written.Sheets.Cells?.A1).toMatchObject({ t: "s", v: value });
    expect(written.Sheets.Cells?.A1).not.toHaveProperty("f");
  });

  test("what XML cannot hold becomes U+FFFD", async () => {
    const cells = [
      text(0, "a\u0000\u0008\u001Fb\uFFFE\uD83C"),
      { ...text(1, "\u0001"), formula: '"\u0001"' },
    ];
    const written = read(await writeWorkbookFile({ sheets: [sheetWith(cells)] }), { type: "array" });
    expect(written.Sheets.Cells?.A1).toMatchObject({ v: "a\uFFFD\uFFFD\uFFFDb\uFFFD\uFFFD" });
    expect(written.Sheets.Cells?.A2).toMatchObject({ v: "\uFFFD", f: '"\uFFFD"' });
  });

  test("cut between words, and not through a character", () => {
    expect(cut("0.1 to 5000", 11)).toBe("0.1 to 5000");
    expect(cut("In hectolitres, please", 18)).toBe("In hectolitres,…");
    expect(cut("ab🍾cd", 4)).toBe("ab…");
  });
});

describe("validation", () => {
  const list = (options: readonly string[]): Validation => ({
    ...prompt,
    row: 0,
    column: 0,
    kind: "list",
    options,
  });

  test("rules, with the message on entry and on refusal", () => {
    const xml = part(file, "xl/worksheets/sheet1.xml");
    expect(xml).toMatch(
      /type="decimal" sqref="B4" operator="between"[^>]*><formula1>0.1<\/formula1><formula2>5000</,
    );
    expect(xml).toMatch(/type="date" sqref="B5"[^>]*><formula1>36526<\/formula1><formula2>73050</);
    expect(xml).toContain('<formula1>"yes,no,the ""old"" way"</formula1>');
    expect(xml).toMatch(
      /type="textLength" sqref="B7" operator="lessThanOrEqual" allowBlank="1"[^>]*><formula1>40</,
    );
    expect(xml).toMatch(/promptTitle="Volume" prompt="In hect[^"]*" errorTitle="Volume" error="In hect/);
  });

  test("long texts are cut to what Excel opens", async () => {
    const long = { ...list(["a"]), title: "t".repeat(40), message: "word ".repeat(60).trim() };
    const xml = await firstSheet(sheetValidating(long));
    const lengthOf = (name: string) => new RegExp(` ${name}="([^"]*)"`).exec(xml)?.[1]?.length;
    expect(["promptTitle", "prompt", "errorTitle", "error"].map(lengthOf)).toEqual([32, 255, 32, 220]);
  });

  test.each([
    ["255 characters", ["a".repeat(127), "b".repeat(127)], true],
    ["256 characters", ["a".repeat(128), "b".repeat(127)], false],
    ["a comma in an option", ["Brut, nature", "Sec"], false],
    ["no options", [], false],
  ])("list of %s", async (_name, options, fits) => {
    const xml = await firstSheet(sheetValidating(list(options)));
    // without the list the message on entry remains, and anything may be entered
    expect(xml).toContain(fits ? 'type="list"' : 'type="custom"');
    expect(xml.includes("showErrorMessage")).toBe(fits);
    expect(xml).toContain('prompt="In hectolitres');
  });
});

test("same data, same bytes, whatever the day", async () => {
  jest.useFakeTimers({
    now: Date.UTC(2031, 4, 5),
    doNotFake: ["setImmediate", "setTimeout", "nextTick", "queueMicrotask"],
  });
  const later = await writeWorkbookFile(book);
  jest.useRealTimers();
  expect(Buffer.from(later).equals(Buffer.from(file))).toBe(true);
  expect(part(file, "docProps/core.xml")).toContain("1980-01-01T00:00:00Z</dcterms:modified>");
});

test("no person's name", () => expect(part(file, "docProps/core.xml")).not.toMatch(/creator|lastModifiedBy/));

test.each([
  ["no sheets", [], "no sheets"],
  ["endless number", [sheetWith([text(0, Infinity)])], "'Cells'!A1 has the value Infinity"],
  ["long text", [sheetWith([text(2, "x".repeat(32768))])], "The text in 'Cells'!A3 has 32768 characters"],
  [
    "long text in a formula",
    [sheetWith([{ ...text(0, ""), formula: `"${"x".repeat(256)}"` }])],
    "'Cells'!A1 has 256",
  ],
  ["sheet name", [{ ...emptySheet, name: "a/b" }], "a/b"],
])("refused: %s", (_name, sheets, message) => expect(writeWorkbookFile({ sheets })).rejects.toThrow(message));

describe("schemas", () => {
  schemaTest(
    "every part keeps to ISO/IEC 29500 transitional",
    async () => {
      expect([...packageParts(file).keys()]).toContain("xl/worksheets/sheet3.xml");
      expect(await packageProblems(file)).toEqual([]);
    },
    60_000,
  );

  schemaTest(
    "odd texts and an empty workbook, too",
    async () => {
      const odd = sheetWith([text(0, " a\nb "), text(1, "#N/A"), text(2, "\u0000"), text(3, "")]);
      expect(await packageProblems(await writeWorkbookFile({ sheets: [odd] }))).toEqual([]);
      expect(await packageProblems(await writeWorkbookFile({ sheets: [emptySheet] }))).toEqual([]);
    },
    60_000,
  );
});

libreOfficeTest(
  "LibreOffice, which has no such functions, shows the cached values",
  async () => {
    const csv = await readFile(await convertBytes(file, "book.xlsx", "csv"), "utf8");
    const shown = csv.split("\n").map((line) => line.split(",")[1]);
    expect([7, 8, 9, 10, 12].map((row) => shown[row])).toEqual(["121.83", "7.5", "extra dry", "FALSE", "50"]);
    const recalculated = await readFile(
      await convertBytes(file, "book.xlsx", "csv", { recalculate: true }),
      "utf8",
    );
    expect(recalculated.split("\n")[7]).toBe(",#NAME?");
  },
  60_000,
);

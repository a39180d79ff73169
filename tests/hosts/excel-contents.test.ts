/**
 * Values, formulas and number formats as they reach Excel, on the genuine Excel proxies.
 */
import { asTyped } from "../../src/hosts/excel/contents";
import {
  planLike,
  sheetOf,
  cell,
  written,
  operationsOf,
  namesOf,
  settings,
  matching,
  blockOf,
} from "../support/excel-writing";

describe("contents", () => {
  test("formulas exactly, values as they are, blanks empty", async () => {
    const workbook = await written([
      sheetOf([
        cell(12.5),
        cell(7, { column: 1, formula: 'IF(A1="","",MOUSSE.TIRAGE.SUGAR(A1, 0))' }),
        cell(null, { column: 3, formula: "MOUSSE.LABEL(A1)" }),
        cell(false, { row: 1 }),
        cell(null, { row: 1, column: 1 }),
        cell(-0.1, { row: 1, column: 2 }),
        cell("Base wine", { row: 1, column: 3 }),
      ]),
    ]);
    expect(blockOf(workbook, "Formulas")).toEqual([
      [12.5, '=IF(A1="","",MOUSSE.TIRAGE.SUGAR(A1, 0))', "", "=MOUSSE.LABEL(A1)"],
      [false, "", -0.1, "Base wine"],
    ]);
    expect(matching(workbook, /^GetRange\(A1:D2\)$/, "Formulas")).toHaveLength(1);
  });

  test("every cell of a long sheet, in order", async () => {
    const sheet = planLike("Plan", 2000);
    const block = blockOf(await written([sheet]), "Formulas");
    expect(block).toHaveLength(2000);
    for (const { row, column, value, formula } of sheet.cells) {
      expect(block[row]![column]).toBe(formula === undefined ? value : `=${formula}`);
    }
  });

  test.each([
    "=1+1",
    "@x",
    "+7",
    "-A1",
    "007",
    "1/2",
    "TRUE",
    "false",
    "True ",
    "'quoted",
    "''",
    " =1+1",
    "12",
    "1e5",
    "5%",
    "12:30",
    "May 5",
    "3 March 2026",
    "Mar-26",
    "CHF 5",
    "€5",
    "(5)",
    ".5",
    "#N/A",
    "１２",
    "＝1+1",
    "\t=1",
    "/x",
    "SO2",
    "=",
    "\n=1",
  ])("%j stays text", async (text) => {
    expect(asTyped(text)).toBe(`'${text}`);
    expect(blockOf(await written([sheetOf([cell(text)])]), "Formulas")).toEqual([[`'${text}`]]);
  });

  test.each([
    "Oxlip Hill Brut",
    "hL",
    "mg/L",
    "Été",
    "Überschaum: trocken",
    "A=B",
    "Truest",
    "",
    "Glucose + fructose as analysed, 24.0 g/L for 6 bar at 20 °C in the bottle",
  ])("%j needs no apostrophe", (text) => expect(asTyped(text)).toBe(text));

  test("number formats only where there are any, and General under formulas without one", async () => {
    const workbook = await written([
      sheetOf([
        cell("Tirage date"),
        cell("Volume", { row: 1 }),
        cell(46000, { row: 1, column: 1, format: "yyyy-mm-dd" }),
        cell(2, { row: 2, column: 1, formula: "B2+1" }),
        cell(2, { row: 2, column: 2, format: "0.0" }),
      ]),
    ]);
    expect(settings(workbook, "NumberFormat")).toEqual([
      'GetRange(B2:C3): [["yyyy-mm-dd",null],["General","0.0"]]',
    ]);
    const order = operationsOf(workbook).map(({ name }) => name);
    expect(order.indexOf("Formulas")).toBeLessThan(order.indexOf("NumberFormat"));
  });

  test("an empty sheet is only added", async () => {
    const workbook = await written([sheetOf([])]);
    expect(blockOf(workbook, "Formulas")).toEqual([]);
    expect(namesOf(workbook)).toContain("Plan · Brut");
  });
});

/**
 * The Excel host, on the genuine Excel proxies: what reaches Excel, in how many round trips, and what is left
 * when any of them fails.
 */
import { asTyped } from "../../src/hosts/excel/contents";
import { excelHost } from "../../src/hosts/excel/excel-host";
import type { PlacedCell, SheetData, Validation } from "../../src/workbook/data";
import { FONT, FONT_SIZE, looks } from "../../src/workbook/styles";
import { standInWorkbook, type Operation, type StandIn, type StandInOptions } from "../support/excel-proxies";

const everything = () => true;
const PLAIN_COLOR = `#${looks.label.color}`;

/** Shaped like a plan: sections of labels, inputs, units, notes and formulas, and a table with a total. */
function planLike(name: string, rows: number): SheetData {
  const cells: PlacedCell[] = [
    { row: 0, column: 0, value: name, style: "title" },
    ...["What", "Value", "Unit", "Note"].map((value, column): PlacedCell => ({
      row: 1,
      column,
      value,
      style: "columnHead",
    })),
  ];
  for (let row = 2; row < rows; row++) {
    if (row % 20 === 2) {
      for (let column = 0; column < 8; column++) {
        cells.push({ row, column, value: column === 0 ? "Tirage" : "", style: "heading" });
      }
    } else if (row % 20 > 15) {
      const at = row + 1;
      cells.push(
        { row, column: 0, value: "Sugar for the tirage", style: "label" },
        {
          row,
          column: 1,
          value: 24.5 * row,
          formula: `MOUSSE.TIRAGE.SUGAR(B${at - 6}, 0)`,
          style: "result",
          format: "0.0",
        },
        { row, column: 3, value: 2 * row, formula: `B${at}*D$5`, style: "result", format: "#,##0.00" },
        { row, column: 4, value: 46000 + row, style: "input", format: "yyyy-mm-dd" },
        { row, column: 7, value: true, formula: `B${at}>0`, style: row % 20 === 19 ? "total" : "result" },
      );
    } else {
      cells.push(
        { row, column: 0, value: "Volume of base wine", style: "label" },
        { row, column: 1, value: row * 1.25, style: "input", format: "#,##0.00" },
        { row, column: 2, value: "hL", style: "unit" },
        { row, column: 3, value: "as measured in the tank", style: "note" },
      );
    }
  }
  return {
    name,
    cells,
    columnWidths: [38, 14, 14, 11, 11, 14, 12, 14],
    rowHeights: new Map([
      [2, 29],
      [3, 29],
      [6, 42.5],
    ]),
    merges: [],
    frozenRows: 2,
    names: [],
    validations: [],
    charts: [],
    landscape: false,
    gridlines: false,
    pagesTall: 2,
  };
}

function sheetOf(cells: readonly PlacedCell[], more: Partial<SheetData> = {}): SheetData {
  return {
    ...planLike("Plan · Brut", 0),
    cells,
    columnWidths: [],
    rowHeights: new Map(),
    frozenRows: 0,
    ...more,
  };
}

const cell = (value: PlacedCell["value"], more: Partial<PlacedCell> = {}): PlacedCell => ({
  row: 0,
  column: 0,
  value,
  style: "label",
  ...more,
});

async function written(
  sheets: readonly SheetData[],
  options: StandInOptions = {},
  offers: (version: string) => boolean = everything,
) {
  const workbook = standInWorkbook(options);
  await excelHost((set, version) => set === "ExcelApi" && offers(version)).write({ sheets });
  return workbook;
}

const operationsOf = (workbook: StandIn) => workbook.roundTrips.flatMap(({ operations }) => operations);
const bytesOf = (workbook: StandIn) => workbook.roundTrips.reduce((sum, { bytes }) => sum + bytes, 0);
const namesOf = (workbook: StandIn) => workbook.sheets.map(({ name }) => name);

/** What was set under this name, as "where: value". */
const settings = (workbook: StandIn, name: string) =>
  operationsOf(workbook)
    .filter((each) => each.name === name)
    .map(({ on, args }) => `${on}: ${JSON.stringify(args[0])}`);
const matching = (workbook: StandIn, on: RegExp, name?: string): Operation[] =>
  operationsOf(workbook).filter((each) => on.test(each.on) && (name === undefined || each.name === name));

/** A long block arrives in slices. */
function blockOf(workbook: StandIn, property: "Formulas" | "NumberFormat"): unknown[][] {
  return operationsOf(workbook)
    .filter(({ name }) => name === property)
    .flatMap(({ args }) => args[0] as unknown[][]);
}

/** "B3:C4,E5" as single cells. */
function cellsIn(on: string): string[] {
  const addresses = /^GetRanges?\(([^)]*)\)/.exec(on)![1]!.split(",");
  return addresses.flatMap((address) => {
    const [first, last = first] = address.split(":");
    const [, left, top] = /^([A-Z])(\d+)$/.exec(first!)!;
    const [, right, bottom] = /^([A-Z])(\d+)$/.exec(last!)!;
    const cells: string[] = [];
    for (let row = Number(top); row <= Number(bottom); row++) {
      for (let column = left!.charCodeAt(0); column <= right!.charCodeAt(0); column++) {
        cells.push(`${String.fromCharCode(column)}${row}`);
      }
    }
    return cells;
  });
}

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
  /** The least that the same cells can cost: one block of contents, one of number formats, and no looks. */
  async function bareBytes({ cells }: SheetData): Promise<number> {
    const workbook = standInWorkbook();
    const rows = Math.max(...cells.map(({ row }) => row)) + 1;
    const columns = Math.max(...cells.map(({ column }) => column)) + 1;
    const blank = <Entry>(entry: Entry) =>
      Array.from({ length: rows }, () => Array<Entry>(columns).fill(entry));
    const formulas = blank<unknown>("");
    const formats = blank("General");
    for (const { row, column, value, formula, format } of cells) {
      formulas[row]![column] = formula === undefined ? (value ?? "") : `=${formula}`;
      formats[row]![column] = format ?? "General";
    }
    await Excel.run(async (context) => {
      const range = context.workbook.worksheets.getItem("Sheet1").getRangeByIndexes(0, 0, rows, columns);
      range.formulas = formulas;
      range.numberFormat = formats;
      await context.sync();
    });
    return bytesOf(workbook);
  }

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

describe("looks", () => {
  const sheet = planLike("Plan", 400);
  const addressesOf = (style: PlacedCell["style"]) =>
    sheet.cells
      .filter((each) => each.style === style)
      .map(({ row, column }) => `${String.fromCharCode(65 + column)}${row + 1}`);

  test("fills and font traits reach the cells that have them, and no others", async () => {
    const workbook = await written([sheet]);
    const filled = matching(workbook, /\.Fill$/, "Color").filter(
      ({ args }) => args[0] === `#${looks.input.fill}`,
    );
    expect(filled.flatMap(({ on }) => cellsIn(on)).sort()).toEqual(addressesOf("input").sort());
    const bold = matching(workbook, /\.Font$/, "Bold").flatMap(({ on }) => cellsIn(on));
    const styles = ["title", "heading", "columnHead", "total"] as const;
    expect(bold.sort()).toEqual(styles.flatMap(addressesOf).sort());
  });

  test("the plain look is set once", async () => {
    const workbook = await written([sheet]);
    expect(
      matching(workbook, /^GetRange\(\)\.Format\.Font$/).map(({ name, args }) => [name, args[0]]),
    ).toEqual([
      ["Name", FONT],
      ["Size", FONT_SIZE],
      ["Color", PLAIN_COLOR],
    ]);
    expect(
      matching(workbook, /^GetRanges?\(.+\)\.Format\.Font$/, "Color").every(
        ({ args }) => args[0] !== PLAIN_COLOR,
      ),
    ).toBe(true);
  });

  test("each input is boxed: inside lines where inputs touch, none where they do not", async () => {
    const at = (row: number, column: number) => cell(1, { row, column, style: "input" });
    const workbook = await written([
      sheetOf([at(0, 0), at(2, 0), at(3, 0), at(5, 0), at(5, 1), at(7, 0), at(7, 1), at(8, 0), at(8, 1)]),
    ]);
    const edges = new Map<string, string[]>();
    for (const { on } of matching(workbook, /Borders/, "Style")) {
      const [, range, edge] = /^GetRanges?\((.*?)\).*GetItem\((\w+)\)$/.exec(on)!;
      edges.set(range!, [...(edges.get(range!) ?? []), edge!]);
    }
    const outside = ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight"];
    expect(Object.fromEntries(edges)).toEqual({
      A1: outside,
      "A3:A4": [...outside, "InsideHorizontal"],
      "A6:B6": [...outside, "InsideVertical"],
      "A8:B9": [...outside, "InsideHorizontal", "InsideVertical"],
    });
  });

  test("what is aligned is aligned", async () => {
    const workbook = await written([sheetOf([cell(1, { style: "key" }), cell(2, { row: 1 })])]);
    const expected = looks.key.align === "right" ? ['GetRange(A1).Format: "Right"'] : [];
    expect(settings(workbook, "HorizontalAlignment")).toEqual(expected);
  });

  test("no address is longer than Excel takes", async () => {
    const alternating = Array.from({ length: 1000 }, (_, row) =>
      cell("x", { row, style: row % 2 ? "note" : "label" }),
    );
    const workbook = await written([sheetOf(alternating)]);
    const italic = matching(workbook, /\.Font$/, "Italic");
    for (const { on } of italic) expect(/\(([^)]*)\)/.exec(on)![1]!.length).toBeLessThanOrEqual(255);
    expect(new Set(italic.flatMap(({ on }) => cellsIn(on))).size).toBe(500);
  });
});

describe("layout", () => {
  test("widths, heights, merges, frozen rows and pages", async () => {
    const workbook = await written([
      sheetOf(
        [
          cell("A note that runs on", { style: "note" }),
          cell("Another", { row: 1, style: "note" }),
          cell("Third", { row: 4 }),
        ],
        {
          columnWidths: [38, 14, 14, 11, 14],
          rowHeights: new Map([
            [0, 29],
            [1, 29],
            [4, 29],
            [5, 56],
          ]),
          merges: [0, 1, 4].map((row) => ({ row, column: 0, lastColumn: 4 })),
          frozenRows: 2,
          gridlines: false,
          pagesTall: 2,
        },
      ),
    ]);
    expect(settings(workbook, "ColumnWidth")).toEqual([
      "GetRange(A:A).Format: 203.25",
      "GetRanges(B:C,E:E).Format: 77.25",
      "GetRange(D:D).Format: 61.5",
    ]);
    expect(settings(workbook, "RowHeight")).toEqual([
      "GetRanges(1:2,5:5).Format: 29",
      "GetRange(6:6).Format: 56",
    ]);
    expect(settings(workbook, "Merge")).toEqual(["GetRange(A1:E2): true", "GetRange(A5:E5): true"]);
    expect(settings(workbook, "WrapText")).toEqual(["GetRanges(A1:E2,A5:E5).Format: true"]);
    expect(settings(workbook, "Italic")).toEqual(["GetRange(A1:E2).Format.Font: true"]);
    expect(settings(workbook, "FreezeRows")).toEqual(["FreezePanes: 2"]);
    expect(matching(workbook, /^PageLayout$/).map(({ name, args }) => [name, args[0]])).toEqual([
      ["Orientation", "Portrait"],
      ["PaperSize", "A4"],
      ["Zoom", { horizontalFitToPages: 1, verticalFitToPages: 2 }],
    ]);
  });

  test("names hold within their sheet", async () => {
    const names = [
      { name: "plan_volume_hL", row: 4, column: 1 },
      { name: "plan_total", row: 9, column: 27 },
    ];
    const workbook = await written([sheetOf([cell(1)], { name: "Plan · Jo's", names })]);
    expect(
      matching(workbook, /^Names$/, "Add").map(({ sheet, args }) => [sheet!.name, args[0], args[1]]),
    ).toEqual([
      ["Plan · Jo's", "plan_volume_hL", "='Plan · Jo''s'!$B$5"],
      ["Plan · Jo's", "plan_total", "='Plan · Jo''s'!$AB$10"],
    ]);
  });

  test("validations say what is allowed, cells under one rule together", async () => {
    const common = { title: "Volume", message: "Give 0 to 10 hL.", allowBlank: false };
    const validations: Validation[] = [
      { ...common, row: 0, column: 1, kind: "decimal", min: 0.5, max: 10 },
      { ...common, row: 1, column: 1, kind: "decimal", min: 0.5, max: 10 },
      { ...common, row: 5, column: 1, kind: "decimal", min: 0.5, max: 10 },
      { ...common, row: 6, column: 1, kind: "whole", min: 1, max: 60 },
      { ...common, row: 7, column: 1, kind: "date", min: 61, max: 46_000 },
      { ...common, row: 8, column: 1, kind: "textLength", max: 40, allowBlank: true },
      { ...common, row: 9, column: 1, kind: "list", options: ["EU", "OIV"] },
      { ...common, row: 10, column: 1, kind: "list", options: ["white, still", "red"] },
      {
        ...common,
        row: 11,
        column: 1,
        kind: "list",
        options: Array.from({ length: 60 }, (_, index) => `choice ${index}`),
      },
    ];
    const workbook = await written([sheetOf([cell(1)], { validations })]);
    const rules = matching(workbook, /DataValidation$/, "Rule").map(({ on, args }) => [
      /\((.*)\)/.exec(on)![1],
      args[0],
    ]);
    expect(rules).toEqual([
      ["B1:B2,B6", { decimal: { formula1: 0.5, formula2: 10, operator: "Between" } }],
      ["B7", { wholeNumber: { formula1: 1, formula2: 60, operator: "Between" } }],
      ["B8", { date: { formula1: "1900-03-01", formula2: "2025-12-09", operator: "Between" } }],
      ["B9", { textLength: { formula1: 40, operator: "LessThanOrEqualTo" } }],
      ["B10", { list: { inCellDropDown: true, source: "EU,OIV" } }],
      // not sayable as one text: the prompt remains
      ["B11", { custom: { formula: "=TRUE" } }],
      ["B12", { custom: { formula: "=TRUE" } }],
    ]);
    const on = (name: string) =>
      matching(workbook, /DataValidation$/, name).map((each) => /\((.*)\)/.exec(each.on)![1]);
    expect(on("IgnoreBlanks")).toEqual(["B1:B2,B6", "B7", "B8", "B10", "B11", "B12"]);
    expect(on("Prompt")).toHaveLength(7);
    expect(matching(workbook, /DataValidation$/, "Prompt")[0]!.args).toEqual([
      { showPrompt: true, title: "Volume", message: "Give 0 to 10 hL." },
    ]);
    expect(on("ErrorAlert")).toEqual(["B1:B2,B6", "B7", "B8", "B9", "B10"]);
    expect(matching(workbook, /DataValidation$/, "ErrorAlert")[0]!.args).toEqual([
      { showAlert: true, style: "Stop", title: "Volume", message: "Give 0 to 10 hL." },
    ]);
  });

  test("titles and messages are cut to what Excel takes", async () => {
    const validations: Validation[] = [
      {
        row: 0,
        column: 0,
        kind: "textLength",
        max: 5,
        allowBlank: true,
        title: "T".repeat(40),
        message: "m".repeat(300),
      },
    ];
    const workbook = await written([sheetOf([cell(1)], { validations })]);
    const lengths = ["Prompt", "ErrorAlert"].map((name) => {
      const { title, message } = matching(workbook, /DataValidation$/, name)[0]!.args[0] as {
        title: string;
        message: string;
      };
      return [title.length, message.length];
    });
    expect(lengths).toEqual([
      [32, 255],
      [32, 224],
    ]);
  });
});

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
          if (roundTrip === moment) sheets.push({ id: "{theirs}", name: "Plan 2" });
        },
      });
      const sheets = [planLike("Plan 1", 10), planLike("Plan 2", 10)];
      await expect(excelHost(everything).write({ sheets })).rejects.toThrow(/Plan 2 is taken/);
      expect(workbook.sheets.map(({ id }) => id)).toEqual(["{existing-0}", "{theirs}"]);
    }
  });
});

describe("a failure leaves the workbook as it was", () => {
  const sheets = [planLike("Plan 1", 30), planLike("Plan 2", 30)];

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

describe("what Excel offers", () => {
  const sheet: SheetData = {
    ...planLike("Plan", 60),
    merges: [{ row: 0, column: 0, lastColumn: 3 }],
    names: [{ name: "plan_volume", row: 3, column: 1 }],
    validations: [
      { row: 3, column: 1, kind: "decimal", min: 0, max: 1, title: "t", message: "m", allowBlank: true },
    ],
  };
  const before = (limit: number) => (version: string) => Number(version.split(".")[1]) < limit;
  const bareWorkbook = async () => blockOf(await written([sheet]), "Formulas");

  test.each([
    [1, []],
    [4, ["Merge", "ColumnWidth"]],
    [7, ["Merge", "ColumnWidth", "SuspendApiCalculationUntilNextSync"]],
    [9, ["Merge", "ColumnWidth", "SuspendApiCalculationUntilNextSync", "FreezeRows", "Rule"]],
    [
      20,
      [
        "Merge",
        "ColumnWidth",
        "SuspendApiCalculationUntilNextSync",
        "FreezeRows",
        "Rule",
        "SuspendScreenUpdatingUntilNextSync",
        "Zoom",
      ],
    ],
  ])("before ExcelApi 1.%i the rest is left out and the cells are whole", async (limit, expected) => {
    const workbook = await written([sheet], {}, before(limit));
    const features = [
      "Merge",
      "ColumnWidth",
      "SuspendApiCalculationUntilNextSync",
      "FreezeRows",
      "Rule",
      "SuspendScreenUpdatingUntilNextSync",
      "Zoom",
    ];
    const used = new Set(operationsOf(workbook).map(({ name }) => name));
    expect(features.filter((feature) => used.has(feature))).toEqual(expected);
    expect(matching(workbook, /^Names$/).length > 0).toBe(limit > 4);
    expect(matching(workbook, /GetRanges/).length > 0).toBe(limit > 9);
    expect(blockOf(workbook, "Formulas")).toEqual(await bareWorkbook());
    expect(workbook.roundTrips).toHaveLength(limit > 9 ? 4 : 3);
  });

  test("without areas each range gets the same look by itself", async () => {
    const cellsWith = (workbook: StandIn, name: string) =>
      matching(workbook, /\.Format\.(Font|Fill)$/, name)
        .flatMap(({ on, args }) =>
          on.includes("()") ? [] : cellsIn(on).map((at) => `${at} ${String(args[0])}`),
        )
        .sort();
    const one = await written([sheet]);
    const other = await written([sheet], {}, before(9));
    for (const name of ["Bold", "Italic", "Size", "Color"])
      expect(cellsWith(other, name)).toEqual(cellsWith(one, name));
  });

  test("where the user calculates by hand, the new sheets are calculated", async () => {
    const workbook = await written([sheet], { calculationMode: "Manual" });
    expect(matching(workbook, /^Application$/, "SuspendApiCalculationUntilNextSync")).toEqual([]);
    expect(matching(workbook, /^$/, "Calculate").map(({ sheet: on, args }) => [on!.name, args[0]])).toEqual([
      ["Plan", true],
    ]);
  });

  test("one step to undo, where there is that", async () => {
    standInWorkbook();
    const run = jest.spyOn(Excel, "run");
    await excelHost(everything).write({ sheets: [sheet] });
    expect(run.mock.calls[0]![0]).toEqual({ mergeUndoGroup: true });
    standInWorkbook();
    run.mockClear();
    await excelHost((_set, version) => version !== "1.20").write({ sheets: [sheet] });
    expect(run.mock.calls[0]![0]).toEqual({});
    run.mockRestore();
  });

  test("Office is asked, and only once something is written", async () => {
    const workbook = standInWorkbook();
    const isSetSupported = jest.fn((_set: string, version: string) => version !== "1.4");
    const host = excelHost();
    Object.assign(globalThis, { Office: { context: { requirements: { isSetSupported } } } });
    await host.write({ sheets: [sheet] });
    expect(isSetSupported).toHaveBeenCalledWith("ExcelApi", "1.4");
    expect(matching(workbook, /^Names$/)).toEqual([]);
    Reflect.deleteProperty(globalThis, "Office");
  });
});

/**
 * Highlights, tables, notes and frozen columns in a file: looked into, read by a second library, held against the
 * published schemas, opened in LibreOffice.
 */
import { read } from "@e965/xlsx";
import { readFile } from "node:fs/promises";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { seasonBook } from "../../src/workbook/book";
import { cellAddress, type PlacedCell, type SheetData } from "../../src/workbook/data";
import { highlightLooks } from "../../src/workbook/styles";
import { cell, sheetOf } from "../support/excel-writing";
import { convertBytes, libreOfficeTest, removeConversions } from "../support/libreoffice";
import { packageParts, packageProblems, schemaTest } from "../support/ooxml";
import { seasonBatches } from "../support/season";
afterAll(removeConversions);

const HEADS = ["Lot", "Bottles & more", "State", 'Term "as sold"'];
const ROWS: readonly (readonly (string | number)[])[] = [
  ["=1+1", 7900, "stop", "brut"],
  ["007", 8100, "check", "extra <dry>"],
  ["_x0041_", 0, "all right", " demi-sec "],
];
const placed = (values: readonly (string | number)[], row: number): PlacedCell[] =>
  values.map((value, index) => cell(value, { row, column: index + 1 }));
const at = (row: number, column: number) => ({ row, column });
const batches = (name: string, table: string): SheetData =>
  sheetOf(
    [
      cell("Season", { style: "title" }),
      ...placed(HEADS, 2),
      ...ROWS.flatMap((values, index) => placed(values, index + 3)),
      cell(16_000, { row: 7, column: 2, formula: "SUM(C4:C6)", note: "=SUM of <all> & more" }),
    ],
    {
      name,
      frozenRows: 3,
      frozenColumns: 2,
      highlights: [
        { word: "stop", look: "bad", cells: [at(3, 3), at(4, 3), at(5, 3), at(8, 1)] },
        { word: 'a "check" & so', look: "doubtful", cells: [at(3, 3)] },
      ],
      tables: [{ name: table, area: { row: 2, column: 1, lastRow: 5, lastColumn: 4 } }],
    },
  );
const sheets = [
  batches("Season", "season_batches"),
  batches("Jo's", "more"),
  sheetOf([cell(1)], { name: "Columns", frozenColumns: 1 }),
];

let file: Uint8Array;
let parts: Map<string, string>;
beforeAll(async () => {
  file = await writeWorkbookFile({ sheets });
  parts = packageParts(file);
});
const part = (path: string) => parts.get(path) ?? "";
const attribute = (xml: string, name: string) => new RegExp(`\\b${name}="([^"]*)"`).exec(xml)?.[1];

describe("highlights", () => {
  const rules = (path: string) =>
    [
      ...part(path).matchAll(/<conditionalFormatting sqref="([^"]*)"[^>]*>(.*?)<\/conditionalFormatting>/gs),
    ].map(([, cells = "", rule = ""]) => ({ cells, rule }));

  test("each word on its own cells", () => {
    const found = rules("xl/worksheets/sheet1.xml");
    expect(found.map(({ cells }) => cells)).toEqual(["D4 D5 D6 B9", "D4"]);
    expect(found.map(({ rule }) => /<formula>(.*?)<\/formula>/.exec(rule)?.[1])).toEqual([
      expect.stringMatching(/^("|&quot;)stop("|&quot;)$/),
      expect.stringMatching(/^("|&quot;)a ("|&quot;){2}check("|&quot;){2} &amp; so("|&quot;)$/),
    ]);
    for (const { rule } of found) {
      expect([attribute(rule, "type"), attribute(rule, "operator")]).toEqual(["cellIs", "equal"]);
    }
  });

  test("in the look that goes with it", () => {
    const looks = [...part("xl/styles.xml").matchAll(/<dxf>.*?<\/dxf>/gs)].map(([xml]) => xml);
    const of = rules("xl/worksheets/sheet1.xml").map(({ rule }) => looks[Number(attribute(rule, "dxfId"))]!);
    [highlightLooks.bad, highlightLooks.doubtful].forEach(({ color, fill }, index) => {
      expect(of[index]).toMatch(new RegExp(`<font>.*<b/>.*<color rgb="(FF)?${color}"/>.*</font>`, "s"));
      // of a rule's fill programs read the background
      expect(of[index]).toMatch(new RegExp(`<bgColor rgb="(FF)?${fill}"/>`));
    });
  });

  test("none where there are none", () => expect(rules("xl/worksheets/sheet3.xml")).toEqual([]));
});

describe("tables", () => {
  test("over their cells, with the heads that stand there, each under a number and a name of its own", () => {
    const tables = [part("xl/tables/table1.xml"), part("xl/tables/table2.xml")];
    expect(tables.map((xml) => attribute(xml, "ref"))).toEqual(["B3:E6", "B3:E6"]);
    expect(tables.map((xml) => attribute(xml, "displayName"))).toEqual(["season_batches", "more"]);
    expect(new Set(tables.map((xml) => attribute(xml, "id"))).size).toBe(2);
    for (const xml of tables) {
      const heads = [...xml.matchAll(/<tableColumn [^>]*name="([^"]*)"/g)].map(([, name]) => name);
      expect(heads).toEqual(["Lot", "Bottles &amp; more", "State", "Term &quot;as sold&quot;"]);
      expect(xml).toContain('<autoFilter ref="B3:E6"');
      expect(attribute(xml, "showRowStripes")).toBe("0");
      expect(attribute(xml, "totalsRowCount") ?? "0").toBe("0");
    }
    expect(parts.has("xl/tables/table3.xml")).toBe(false);
  });

  test("a second reader finds texts as texts and numbers as numbers", () => {
    const sheet = read(file, { type: "array" }).Sheets.Season!;
    [HEADS, ...ROWS].forEach((values, down) =>
      values.forEach((value, across) => {
        const found = sheet[cellAddress(down + 2, across + 1)] as { t: string; v: unknown; f?: string };
        expect(found).toMatchObject({ t: typeof value === "number" ? "n" : "s", v: value });
        expect(found.f).toBeUndefined();
      }),
    );
  });

  // Excel mends a file in which they are not so, and says that it is damaged
  test.each(["add-in", "portable", "values"] as const)(
    "in a season, %s, heads are different texts",
    (formulas) => {
      const season = seasonBook(seasonBatches(2), formulas);
      const all = season.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, ...table })));
      expect(all.length).toBeGreaterThan(0);
      expect(new Set(all.map(({ name }) => name.toLowerCase())).size).toBe(all.length);
      for (const { sheet, name, area } of all) {
        expect(name).toMatch(/^[A-Za-z_][\w.]*$/);
        const heads = sheet.cells.filter(
          ({ row, column }) => row === area.row && column >= area.column && column <= area.lastColumn,
        );
        expect(heads).toHaveLength(area.lastColumn - area.column + 1);
        for (const { value, formula } of heads) {
          expect([typeof value, value === "", formula]).toEqual(["string", false, undefined]);
        }
        expect(new Set(heads.map(({ value }) => String(value).toLowerCase())).size).toBe(heads.length);
        const merged = sheet.merges.filter(({ row }) => row >= area.row && row <= area.lastRow);
        expect(merged).toEqual([]);
        // a defined name of the same spelling would be in the way
        expect(season.flatMap(({ names }) => names.map((each) => each.name))).not.toContain(name);
      }
    },
  );
});

test("frozen: rows and columns, and columns alone", () => {
  const pane = (sheet: number) => /<pane [^>]*>/.exec(part(`xl/worksheets/sheet${sheet}.xml`))![0];
  const of = (xml: string) =>
    ["xSplit", "ySplit", "topLeftCell", "activePane", "state"].map((name) => attribute(xml, name));
  expect(of(pane(1))).toEqual(["2", "3", "C4", "bottomRight", "frozen"]);
  expect(of(pane(3)).filter(Boolean)).toEqual(["1", "B1", "topRight", "frozen"]);
});

test("a note as it is", () => {
  const comments = [...parts].find(([path]) => /^xl\/comments\w*\.xml$/.test(path))![1];
  expect(comments).toMatch(/<comment ref="C8"/);
  expect(comments).toContain("=SUM of &lt;all&gt; &amp; more");
});

schemaTest("every part keeps to ISO/IEC 29500 transitional", async () => {
  expect([...parts.keys()]).toEqual(expect.arrayContaining(["xl/tables/table1.xml", "xl/tables/table2.xml"]));
  const problems = await packageProblems(file);
  // the shapes of notes are in a language of their own that the schemas leave to programs
  expect(problems.filter((each) => !each.includes("vmlDrawing"))).toEqual([]);
});

libreOfficeTest("LibreOffice has the tables with their text, and the words that light cells up", async () => {
  const lines = (await readFile(await convertBytes(file, "extras.xlsx", "csv"), "utf8")).split("\n");
  const quoted = (value: string | number) =>
    /[",]/.test(String(value)) ? `"${String(value).replaceAll('"', '""')}"` : String(value);
  [HEADS, ...ROWS].forEach((values, down) => {
    expect(lines[down + 2]).toBe(["", ...values.map(quoted)].join(","));
  });
  const flat = await readFile(await convertBytes(file, "extras.xlsx", "fods"), "utf8");
  const found = (pattern: RegExp) => [...flat.matchAll(pattern)].map(([, each]) => each!);
  const tables = found(/<table:database-range ([^>]*)>/g);
  expect(tables).toHaveLength(2);
  expect(tables.find((each) => each.includes('"season_batches"'))).toMatch(
    /target-range-address="\$?Season\.\$?B\$?3:\$?Season\.\$?E\$?6"/,
  );
  expect(found(/<calcext:conditional-format calcext:target-range-address="([^"]*)"/g)).toContain(
    ["D4", "D5", "D6", "B9"].map((each) => `Season.${each}:Season.${each}`).join(" "),
  );
  expect(found(/<calcext:condition [^>]*calcext:value="([^"]*)"/g)).toContain("=&quot;stop&quot;");
});

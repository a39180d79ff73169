/**
 * Names, lots and notes that look like formulas, markup or sheet names, through the whole chain: from the form to a
 * sheet of each host and back they stay the texts that they are.
 */
import { read, type CellObject } from "@e965/xlsx";
import fc from "fast-check";
import { readFile } from "node:fs/promises";
import { parseBatchInputs } from "../../src/cellar/batch/inputs";
import { planBatch } from "../../src/cellar/batch/plan";
import { excelHost } from "../../src/hosts/excel/excel-host";
import { gridHost } from "../../src/hosts/grid/grid-host";
import type { Host } from "../../src/hosts/host";
import { legalText } from "../../src/hosts/xlsx/text";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { plansIn, plansInFile } from "../../src/taskpane/workbook-actions";
import { batchBook, seasonBook, type Batch } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { batchOnSheet } from "../../src/workbook/plan/read";
import { HOSTILE_TEXTS, UNHOLDABLE_TEXTS, alwaysLater, runsMade } from "../support/fuzz";
import { cell, everything, sheetOf } from "../support/excel-writing";
import { standInWorkbook } from "../support/excel-proxies";
import { headlessGrid } from "../support/grid";
import { convertBytes, libreOfficeTest, removeConversions } from "../support/libreoffice";
import { inputsOf, sampleJson } from "../support/samples";

jest.setTimeout(600_000);
afterAll(removeConversions);
afterAll(() => process.stdout.write(`injection: ${runsMade()} runs\n`));

/** Every field that takes words of one's own, with its limit. */
const FIELDS = [
  ["batch.name", 60],
  ["batch.lot", 60],
  ["batch.currency", 8],
  ["baseWine.dryness", 200],
  ["materials.other1.name", 40],
  ["materials.other2.name", 40],
] as const;

type Tree = { [key: string]: Tree | string | number };
const at = (tree: unknown, dotted: string) =>
  dotted.split(".").reduce<unknown>((node, key) => (node as Tree)[key], tree);

/** The texts in their fields, in turn and as long as fits; a blank one is none. */
function given(texts: readonly string[]): Record<string, Record<string, unknown>> {
  const batch = sampleJson("oxlip-hill-brut.json");
  FIELDS.forEach(([dotted, longest], index) => {
    const path = dotted.split(".");
    let node = batch as Tree;
    for (const key of path.slice(0, -1)) node = (node[key] ??= {}) as Tree;
    const text = texts[index % texts.length]!.slice(0, longest);
    node[path.at(-1)!] = text.trim() === "" ? "x" : text;
  });
  return batch;
}
function batchWith(texts: readonly string[]): Batch {
  const inputs = inputsOf(given(texts));
  return { inputs, plan: planBatch(inputs) };
}

const chunks = (texts: readonly string[]) =>
  texts.flatMap((_, index) => (index % 6 === 0 ? [texts.slice(index, index + 6)] : []));
const groups = chunks([...HOSTILE_TEXTS, "x".repeat(300), "🍾".repeat(150), "'".repeat(60)]);
const texts = fc.array(
  fc.oneof(
    fc.constantFrom(...HOSTILE_TEXTS),
    fc.string({ unit: "grapheme", minLength: 1, maxLength: 60 }),
    fc
      .tuple(fc.constantFrom("=", "+", "-", "@", "\t", "\n", "'", '"', "<", "#", "{"), fc.string())
      .map((pair) => pair.join("")),
  ),
  { minLength: 1, maxLength: 6 },
);

function expectSame(found: unknown, wanted: Batch, as: (text: string) => string = (text) => text): void {
  for (const [dotted] of FIELDS) {
    expect([dotted, at(found, dotted)]).toEqual([dotted, as(at(wanted.inputs, dotted) as string)]);
  }
}

/** A formula's quoted sheets are sheets that there are, and what remains holds nothing that was typed. */
function expectIntact(sheets: readonly SheetData[], typed: readonly string[]): void {
  const names = sheets.map(({ name }) => name);
  expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
  for (const name of names) {
    expect(name).not.toMatch(/[[\]:*?/\\\u0000-\u001f]|^'|'$/);
    expect([name, name.length <= 31]).toEqual([name, true]);
  }
  const telling = typed.filter((text) => text.length > 3 && /[^A-Za-z0-9]/.test(text));
  for (const { cells, name } of sheets) {
    for (const { formula, style } of cells) {
      if (formula === undefined) continue;
      expect([name, style]).not.toEqual([name, "input"]);
      const rest = formula.replace(/'((?:[^']|'')*)'!|"(?:[^"]|"")*"/g, (_, quoted?: string) => {
        if (quoted !== undefined) expect(names).toContain(quoted.replaceAll("''", "'"));
        return "";
      });
      expect([rest, telling.find((text) => rest.includes(text))]).toEqual([rest, undefined]);
    }
  }
}

const sheetsOf = (batch: Batch) => batchBook([batch], []).sheets;

async function throughFile(batch: Batch): Promise<void> {
  const sheets = sheetsOf(batch);
  expectIntact(
    sheets,
    FIELDS.map(([dotted]) => at(batch.inputs, dotted) as string),
  );
  const file = await writeWorkbookFile({ sheets });
  const [found] = await plansInFile(file);
  expectSame(found!.batch, batch, legalText);
  const book = read(file, { type: "array" });
  expect(book.SheetNames).toEqual(sheets.map(({ name }) => legalText(name)));
  for (const { name, cells } of sheets) {
    const there = Object.values(book.Sheets[legalText(name)]!) as CellObject[];
    const formulas = cells.filter(({ formula }) => formula !== undefined).length;
    expect(there.filter(({ f }) => f !== undefined)).toHaveLength(formulas);
  }
}

async function throughHost(host: Host, batch: Batch, as: (text: string) => string): Promise<void> {
  const sheets = sheetsOf(batch).slice(0, 1);
  await host.write({ sheets });
  const found = (await plansIn(host)).find(({ name }) => name === sheets[0]!.name)!;
  expectSame(batchOnSheet(found.cells), batch, as);
  for (const [dotted] of FIELDS)
    expect([dotted, found.cells.get(dotted.replaceAll(".", "_"))?.calculated]).toEqual([dotted, false]);
}

describe("texts of each kind", () => {
  test.each(groups.map((each) => [each]))("in a file: %j", (each) => throughFile(batchWith(each)));

  test.each(groups.map((each) => [each]))("in Excel: %j", async (each) => {
    standInWorkbook();
    await throughHost(excelHost(everything), batchWith(each), (text) => text);
  });

  test("in the grid", async () => {
    const grid = await headlessGrid();
    for (const each of groups) {
      const done = grid.settled();
      const host = gridHost(grid.api);
      const before = await host.sheetNames();
      await throughHost(host, batchWith(each), (text) => text);
      await done;
      await host.remove((await host.sheetNames()).filter((name) => !before.includes(name)));
    }
    grid.dispose();
  });

  test("a season of them", async () => {
    const batches = groups.map(batchWith);
    const sheets = seasonBook(batches);
    expectIntact(sheets, HOSTILE_TEXTS);
    const found = await plansInFile(await writeWorkbookFile({ sheets }));
    expect(found).toHaveLength(batches.length);
    found.forEach(({ batch }, index) => expectSame(batch, batches[index]!, legalText));
  });
});

test("any texts, in a file and in Excel", () =>
  alwaysLater(
    texts,
    async (each) => {
      await throughFile(batchWith(each));
      standInWorkbook();
      await throughHost(excelHost(everything), batchWith(each), (text) => text);
    },
    0.03,
  ));

test("what XML has no room for is seen to be missing, and breaks nothing", async () => {
  for (const each of chunks(UNHOLDABLE_TEXTS)) await throughFile(batchWith(each));
});

test.each(FIELDS)("%s takes %i characters and no more", (dotted, longest) => {
  for (const unit of ["x", "=", "🍾"]) {
    const right = unit.repeat(longest).slice(0, longest);
    const put = (text: string) => {
      const batch = given(["y"]);
      const path = dotted.split(".");
      (path.slice(0, -1).reduce<unknown>((node, key) => (node as Tree)[key], batch) as Tree)[path.at(-1)!] =
        text;
      return parseBatchInputs(batch);
    };
    expect(put(right).ok).toBe(true);
    const refused = put(`${right}x`);
    expect(refused.ok ? [] : refused.problems.map(({ field, remedy }) => [field, remedy])).toEqual([
      [dotted, `give text of at most ${longest} characters`],
    ]);
  }
});

libreOfficeTest("LibreOffice shows each as the text that it is, none as a result", async () => {
  const shown = HOSTILE_TEXTS.filter((text) => !/[\n\r\t]/.test(text));
  const sheet = sheetOf(
    shown.map((text, row) => cell(text, { row, style: row % 2 ? "input" : "label" })),
    { name: "Texts" },
  );
  const file = await writeWorkbookFile({ sheets: [sheet] });
  const csv = await readFile(
    await convertBytes(file, "texts.xlsx", "csv:Text - txt - csv (StarCalc):44,34,76", { recalculate: true }),
    "utf8",
  );
  const lines = csv
    .split("\n")
    .map((line) => (line.startsWith('"') ? line.slice(1, -1).replaceAll('""', '"') : line));
  expect(lines.slice(0, shown.length)).toEqual(shown);
});

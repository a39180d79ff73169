/**
 * Workbooks that are damaged, odd or made to do harm, opened as the pane opens them: what can be read is read, the rest
 * is refused in words, soon and without filling the memory.
 */
import fc from "fast-check";
import { strToU8 } from "fflate";
import { planned } from "../../src/taskpane/planned";
import { plansInFile, type PlanInFile } from "../../src/taskpane/workbook-actions";
import { LIMITS } from "../../src/hosts/xlsx/package";
import { alwaysLater, repeated, runsMade, worked_ms } from "../support/fuzz";
import {
  SHEET,
  STRINGS,
  WORKBOOK,
  addressOf,
  inflating,
  lying,
  partsOf,
  planFile,
  recelled,
  renaming,
  withXml,
  zipped,
  type Parts,
} from "../support/fuzz-workbooks";

jest.setTimeout(600_000);
const SLOW_MS = 5000;
const MB = 1_000_000;
const MOST_BYTES = 400 * MB;

let file: Uint8Array;
let parts: Parts;
let whole: PlanInFile;
beforeAll(async () => {
  file = await planFile();
  parts = partsOf(file);
  [whole] = (await plansInFile(file)) as [PlanInFile];
  expect(whole.unread).toEqual([]);
});
afterAll(() => process.stdout.write(`workbooks: ${runsMade()} runs\n`));

/** The plans, or the sentence that the pane shows. */
async function opened(bytes: Uint8Array): Promise<readonly PlanInFile[] | string> {
  const [start, before] = [worked_ms(), process.memoryUsage().rss];
  const outcome = await plansInFile(bytes).catch((error: unknown) => {
    if (!(error instanceof Error)) throw error;
    return error.message;
  });
  expect(worked_ms() - start).toBeLessThan(SLOW_MS);
  expect(process.memoryUsage().rss - before).toBeLessThan(MOST_BYTES);
  if (typeof outcome === "string") expect(outcome).toMatch(/^(it|the cells) [a-z ]+/);
  // whatever is read is a batch to be planned or mended
  else for (const { batch } of outcome) expect(planned(batch)).toBeTruthy();
  return outcome;
}
type Batch = Record<string, Record<string, unknown>>;
async function batchOf(bytes: Uint8Array): Promise<Batch> {
  const found = await opened(bytes);
  if (typeof found === "string") throw new Error(found);
  return found[0]!.batch as Batch;
}

describe("not a workbook", () => {
  test.each<[string, Uint8Array | string, string]>([
    ["nothing", "", "it is empty"],
    ["a few bytes", "PK", "it is not a whole .xlsx workbook"],
    [
      "an .xls",
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, ...Array<number>(600).fill(0)]),
      "it is an .xls workbook",
    ],
    ["a PDF", `%PDF-1.7\n${"x".repeat(5000)}\n%%EOF`, "it is not a whole .xlsx workbook"],
    ["a page", "<!doctype html><script>1</script>", "it is not a whole .xlsx workbook"],
    ["a batch file", '{"batch":{}}', "it is not a whole .xlsx workbook"],
    ["a zip of something else", zipped({ "a.txt": strToU8("x") }), "it is not an .xlsx workbook"],
    ["an empty zip", zipped({}), "it is not an .xlsx workbook"],
  ])("%s", async (_name, content, reason) => {
    const bytes = typeof content === "string" ? strToU8(content) : content;
    expect(await opened(bytes)).toContain(reason);
  });
});

describe("made to fill the memory", () => {
  const bomb = (path: string, megabytes: number) => inflating(parts, { [path]: megabytes });

  test("a small file of 600 MB is refused by its directory", async () => {
    const bytes = bomb(STRINGS, 600);
    expect(bytes.length).toBeLessThan(MB);
    expect(await opened(bytes)).toBe(
      "it holds a part of 600 MB, unpacked; at most 50 MB are read. " +
        "Save the plans in a workbook of their own, and open that",
    );
  });

  test("so are many parts that are large together", async () => {
    const sheets = Array.from({ length: 6 }, (_, index) => [`xl/worksheets/x${index}.xml`, 45] as const);
    expect(await opened(inflating(parts, Object.fromEntries(sheets)))).toContain(
      `more than ${LIMITS.all / MB} MB`,
    );
    const many = Object.fromEntries(
      Array.from({ length: 21_000 }, (_, index) => [`x/${index}`, strToU8("x")]),
    );
    expect(await opened(zipped({ ...parts, ...many }))).toContain("parts; at most 20000 are read");
  });

  test("a large picture is not read, so it is in nobody's way", async () => {
    expect(await batchOf(bomb("xl/media/image1.png", 60))).toEqual(whole.batch);
  });

  test.each<[string, (view: DataView, at: number) => void]>([
    ["nothing", (view, at) => view.setUint32(at + 24, 0, true)],
    ["little", (view, at) => view.setUint32(at + 24, 1000, true)],
    [
      "nothing here, but in its own head",
      (view, at) => {
        view.setUint16(at + 8, 8, true);
        view.setUint32(at + 20, 0, true);
        view.setUint32(at + 24, 0, true);
      },
    ],
    ["what no number holds", (view, at) => view.setUint32(at + 24, 0xffff_ffff, true)],
    ["a start beyond the file", (view, at) => view.setUint32(at + 42, 0x7fff_ffff, true)],
  ])("a directory that says %s", async (_name, change) => {
    const found = await opened(lying(bomb(STRINGS, 120), STRINGS, change));
    expect(found).toMatch(/^it (is not a|holds)/);
  });

  test("a hundred thousand rows, in the plan and in another sheet", async () => {
    const rows = Array.from(
      { length: 100_000 },
      (_, index) => `<row r="${index + 2000}"><c r="A${index + 2000}"><v>${index}</v></c></row>`,
    ).join("");
    const bytes = withXml(parts, { [SHEET]: (xml) => xml.replace("</sheetData>", `${rows}</sheetData>`) });
    expect(await batchOf(bytes)).toEqual(whole.batch);
  });

  test("cells and names at the far corner", async () => {
    const corner = '<row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData>';
    const far = (xml: string) => xml.replace("</sheetData>", corner);
    expect(await batchOf(withXml(parts, { [SHEET]: far }))).toEqual(whole.batch);
    const named = renaming("batch_lot", "'Plan · Oxlip Hill Brut 2025'!$XFD$1048576");
    expect(await opened(withXml(parts, { [SHEET]: far, [WORKBOOK]: named }))).toContain("lie as far apart");
  });

  test.each<[string, string, (xml: string) => string]>([
    [
      "entities of entities",
      STRINGS,
      (xml) => {
        const nine = Array.from(
          { length: 9 },
          (_, n) => `<!ENTITY a${n + 1} "${`&a${n};`.repeat(10)}">`,
        ).join("");
        const entities = `<!DOCTYPE x [<!ENTITY a0 "ha">${nine}]>`;
        return xml.replace(/(<sst)/, `${entities}$1`).replace(/<t([^>]*)>[^<]*/g, "<t$1>&a9;");
      },
    ],
    [
      "an entity from outside",
      STRINGS,
      (xml) =>
        xml
          .replace("<sst", '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/hosts">]><sst')
          .replace(/<t([^>]*)>/, "<t$1>&a;"),
    ],
    [
      "elements in elements",
      SHEET,
      (xml) => xml.replace("<sheetData>", `${"<a>".repeat(200_000)}${"</a>".repeat(200_000)}<sheetData>`),
    ],
    ["names in names", WORKBOOK, (xml) => xml.replace("<sheets>", `${"<a>".repeat(100_000)}<sheets>`)],
    [
      "one element of ten million letters",
      SHEET,
      (xml) => xml.replace("<sheetData>", `<${repeated("a", 1e7)}><sheetData>`),
    ],
    [
      "one attribute of a million",
      SHEET,
      (xml) => xml.replace("<sheetData>", `<a ${'b="1" '.repeat(1e5)}/><sheetData>`),
    ],
    ["numbers of twenty thousand digits", SHEET, (xml) => xml.replace(/<v>[^<]*/g, `<v>${"9".repeat(2e4)}`)],
    ["no end", SHEET, (xml) => xml.slice(0, xml.length / 2)],
    ["nothing in it", SHEET, () => ""],
    ["control characters", SHEET, (xml) => xml.replaceAll("<v>", "<v>\u0000\u0008")],
  ])("XML with %s", async (_name, path, edit) => {
    const found = await opened(withXml(parts, { [path]: edit }));
    const text = JSON.stringify(found);
    expect(text).not.toMatch(/haha|localhost/);
    expect(text.length).toBeLessThan(2 * MB);
  });
});

describe("changed by hand or by another program", () => {
  const NAME = "baseWine_volume_hL";
  const PLAN = "'Plan · Oxlip Hill Brut 2025'";

  test.each<[string, string | undefined]>([
    ["gone", undefined],
    ["broken", "#REF!"],
    ["on another sheet", "Notes!$A$1"],
    ["a whole column", `${PLAN}!$B:$B`],
    ["a range", `${PLAN}!$B$1:$B$9`],
    ["in another workbook", "[1]Plan!$B$4"],
    ["a constant", "50"],
    ["a formula", `OFFSET(${PLAN}!$A$1,ROW(),1)`],
    ["of row 0", `${PLAN}!$B$0`],
    ["itself", NAME],
  ])("a name that is %s", async (_name, reference) => {
    const [found] = (await opened(withXml(parts, { [WORKBOOK]: renaming(NAME, reference) }))) as [PlanInFile];
    expect(found.unread).toEqual(["Base wine"]);
    expect((found.batch as Batch).baseWine!.volume_hL).toBeNull();
  });

  test.each<[string, string, unknown]>([
    ["text", '<c r="@" t="inlineStr"><is><t>fifty</t></is></c>', "fifty"],
    ["a formula", '<c r="@"><f>25*2</f><v>50</v></c>', 50],
    ["a formula that shows an error", '<c r="@" t="e"><f>1/0</f><v>#DIV/0!</v></c>', null],
    ["a formula without a result", '<c r="@"><f>25*2</f></c>', null],
    ["a formula that reads itself", '<c r="@"><f>@+1</f><v>0</v></c>', 0],
    ["another workbook", '<c r="@"><f>[1]Plan!B4</f><v>48</v></c>', 48],
    ["TRUE", '<c r="@" t="b"><v>1</v></c>', true],
    ["no number", '<c r="@"><v>NaN</v></c>', "NaN"],
    ["too large a number", '<c r="@"><v>1e999</v></c>', Infinity],
    ["a text that is not there", '<c r="@" t="s"><v>999999</v></c>', null],
    ["markup", '<c r="@" t="inlineStr"><is><t>&lt;script&gt;</t></is></c>', "<script>"],
    ["blank", "", null],
  ])("an input that is %s", async (_name, cell, value) => {
    const address = addressOf(parts, NAME);
    const edit = recelled(address, cell.replaceAll("@", address));
    const batch = await batchOf(withXml(parts, { [SHEET]: edit }));
    expect(batch.baseWine!.volume_hL).toBe(value);
    const { baseWine: ours, ...rest } = whole.batch as Batch;
    const { baseWine: theirs, ...others } = batch;
    expect([others, { ...theirs, volume_hL: 0 }]).toEqual([rest, { ...ours, volume_hL: 0 }]);
  });

  test("another name of the sheet; names with it or not", async () => {
    const sheet = (xml: string) => xml.replace(/<sheet name="[^"]*"/, '<sheet name="A &amp; &apos;B"');
    expect(await opened(withXml(parts, { [WORKBOOK]: sheet }))).toEqual([]);
    const all = (xml: string) => sheet(xml).replaceAll(`${PLAN}!`, "'A &amp; &apos;&apos;B'!");
    const [found] = (await opened(withXml(parts, { [WORKBOOK]: all }))) as [PlanInFile];
    expect(found).toEqual({ ...whole, name: "A & 'B" });
  });

  test("parts twice, parts with odd paths, a part that is missing", async () => {
    const copy = "xl/worksheets/sheetX.xml";
    const twice = lying(zipped({ ...parts, [copy]: parts[SHEET]! }), copy, (view, at) => {
      strToU8(SHEET).forEach((byte, index) => view.setUint8(at + 46 + index, byte));
    });
    expect(await opened(twice)).toContain("it is not a whole");
    const odd = { "../../evil.txt": strToU8("x"), "/xl/workbook.xml": strToU8("x"), "C:\\x": strToU8("x") };
    expect(await batchOf(zipped({ ...parts, ...odd }))).toEqual(whole.batch);
    for (const path of Object.keys(parts)) {
      const { [path]: gone, ...others } = parts;
      expect([path, gone?.length, await opened(zipped(others))]).toBeTruthy();
    }
  });
});

describe("damaged on the way", () => {
  test("cut anywhere", () =>
    alwaysLater(
      fc.nat(file.length - 1),
      async (length) => {
        expect(await opened(file.slice(0, length))).toMatch(/^it is /);
      },
      0.5,
    ));

  test("a name in the directory, so that the texts seem to be in no part", async () => {
    const name = strToU8("xl/sharedStrings.xml");
    const bytes = file.slice();
    const at = Buffer.from(bytes).lastIndexOf(name);
    expect(at).toBeGreaterThan(bytes.length / 2);
    bytes[at + name.length - 1]! ^= 1;
    expect(await opened(bytes)).toBe("it is not a whole .xlsx workbook: it is damaged, or something else");
  });

  test("bytes turned anywhere: refused, or what is read is what was written", () =>
    alwaysLater(
      fc.array(fc.tuple(fc.nat(file.length - 1), fc.integer({ min: 1, max: 255 })), {
        minLength: 1,
        maxLength: 3,
      }),
      async (flips) => {
        const bytes = file.slice();
        for (const [at, bits] of flips) bytes[at]! ^= bits;
        const found = await opened(bytes);
        if (typeof found !== "string") for (const each of found) expect(each).toEqual(whole);
      },
      0.5,
    ));

  test("XML changed anywhere, well packed", () => {
    const pieces = fc.constantFrom(
      "<",
      ">",
      "/",
      '"',
      "&",
      "<v>",
      "</c>",
      '<c r="A0">',
      "<f>",
      "1",
      "]]>",
      "\u0000",
    );
    const places = fc.array(fc.tuple(fc.nat(), fc.nat(30), pieces), { minLength: 1, maxLength: 4 });
    return alwaysLater(
      fc.tuple(
        fc.constantFrom(SHEET, WORKBOOK, STRINGS, "xl/_rels/workbook.xml.rels", "_rels/.rels"),
        places,
      ),
      async ([path, edits]) => {
        const edit = (xml: string) =>
          edits.reduce((text, [at, gone, piece]) => {
            const from = at % Math.max(1, text.length);
            return text.slice(0, from) + piece + text.slice(from + gone);
          }, xml);
        await opened(withXml(parts, { [path]: edit }));
      },
      0.15,
    );
  });
});

/**
 * npm run plan, as a person runs it: the file it writes, and what it says when it writes none.
 */
import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import * as XLSX from "@e965/xlsx";
import { placedFields } from "../../src/cellar/batch/field-kinds";
import { fields } from "../../src/cellar/batch/fields";
import { planBatch } from "../../src/cellar/batch/plan";
import { planSheet } from "../../src/workbook/plan/sheet";
import { cellAddress } from "../../src/workbook/data";
import { convert, libreOfficeTest, removeConversions } from "../support/libreoffice";
import { packageProblems, schemaTest } from "../support/ooxml";
import { sampleFiles, sampleInputs, sampleJson, samplePath } from "../support/samples";

const ROOT = path.resolve(__dirname, "../..");
const folder = mkdtempSync(path.join(tmpdir(), "plan-"));
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await removeConversions();
});
const inFolder = (name: string) => path.join(folder, name);

const plan = (...args: string[]) => planIn(process.env, ...args);

function planIn(env: NodeJS.ProcessEnv, ...args: string[]) {
  const command = ["--import", "tsx", "src/commandline/plan.ts", ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, command, {
    cwd: ROOT,
    encoding: "utf8",
    env,
  });
  return { status, stdout, stderr };
}

function batchFile(name: string, content: unknown): string {
  const file = inFolder(name);
  writeFileSync(file, typeof content === "string" ? content : JSON.stringify(content));
  return file;
}

function latin1File(): string {
  const file = inFolder("latin1.json");
  writeFileSync(file, Buffer.from('{"batch":{"name":"Crémant"}}', "latin1"));
  return file;
}

function workbookAsBatch(): string {
  const file = inFolder("locked.xlsx");
  writeFileSync(file, Buffer.from("d0cf11e0a1b11ae1", "hex"));
  return file;
}

function withVolume(volume: unknown) {
  const batch = sampleJson("oxlip-hill-brut.json");
  batch.baseWine!.volume_hL = volume;
  return batch;
}

describe("a good batch file", () => {
  test.each(sampleFiles)("%s: every value and formula is in the file, read by another reader", (file) => {
    const out = inFolder(`${file}.xlsx`);
    expect(plan(samplePath(file), out)).toMatchObject({ status: 0, stderr: "" });
    const inputs = sampleInputs(file);
    const sheet = planSheet(inputs, planBatch(inputs), []);
    const read = XLSX.read(readFileSync(out), { cellFormula: true }).Sheets[sheet.name]!;
    const wrong = sheet.cells.filter(({ row, column, value, formula }) => {
      const found = read[cellAddress(row, column)] as XLSX.CellObject | undefined;
      const sameValue = value === null || value === "" ? (found?.v ?? "") === "" : found?.v === value;
      return !sameValue || (formula === undefined) !== (found?.f === undefined);
    });
    expect(wrong).toEqual([]);
  });

  schemaTest.each(sampleFiles)("%s: every part keeps to ISO/IEC 29500", async (file) => {
    const out = inFolder(`valid-${file}.xlsx`);
    expect(plan(samplePath(file), out).status).toBe(0);
    expect(await packageProblems(readFileSync(out))).toEqual([]);
  });

  libreOfficeTest("LibreOffice opens it with every cached value", async () => {
    const out = inFolder("opened.xlsx");
    expect(plan(samplePath("oxlip-hill-brut.json"), out).status).toBe(0);
    const again = XLSX.read(readFileSync(await convert(out, "xlsx")), { cellFormula: false });
    const inputs = sampleInputs("oxlip-hill-brut.json");
    const sheet = planSheet(inputs, planBatch(inputs), []);
    const read = again.Sheets[sheet.name]!;
    const calculated = sheet.cells.filter(({ formula, value }) => formula !== undefined && value !== "");
    expect(calculated.length).toBeGreaterThan(150);
    const lost = calculated.filter(({ row, column, value }) => {
      const found = (read[cellAddress(row, column)] as XLSX.CellObject | undefined)?.v;
      return typeof value === "number"
        ? !(typeof found === "number" && Math.abs(found - value) <= 1e-9 * Math.abs(value))
        : found !== value;
    });
    expect(lost.map(({ row, column, value }) => `${cellAddress(row, column)} ${String(value)}`)).toEqual([]);
  });

  test("writes the same bytes twice", () => {
    const [one, two] = [inFolder("one.xlsx"), inFolder("two.xlsx")];
    plan(samplePath("oxlip-hill-rose.json"), one);
    plan(samplePath("oxlip-hill-rose.json"), two);
    expect(readFileSync(one).equals(readFileSync(two))).toBe(true);
  });
});

describe("no workbook is written", () => {
  test("every problem of a bad batch file is listed with what was given and what is allowed", () => {
    const batch = sampleJson("oxlip-hill-brut.json");
    batch.baseWine!.alcohol_vol = 85;
    batch.batch!.tirageDate = "14.4.2026";
    batch.tirage!.presure_bar = 6;
    delete batch.lees!.lees_months;
    const out = inFolder("bad.xlsx");
    const { status, stderr } = plan(batchFile("bad.json", batch), out);
    expect(status).toBe(1);
    expect(stderr).toContain("4 problems");
    expect(stderr).toContain("baseWine.alcohol_vol is 85; give 5 to 16 % vol");
    expect(stderr).toContain('batch.tirageDate is "14.4.2026"; give a date like 2026-04-14');
    expect(stderr).toContain("tirage.presure_bar is 6; there is no such field");
    expect(stderr).toContain("lees.lees_months is blank; give a whole number, 0 to 600 months");
    expect(existsSync(out)).toBe(false);
  });

  test("a pressure that no dose reaches is refused at its field, with what can be reached", () => {
    const batch = sampleJson("oxlip-hill-brut.json");
    batch.tirage!.pressure_bar = 19;
    const out = inFolder("unreachable.xlsx");
    const { status, stderr } = plan(batchFile("unreachable.json", batch), out);
    expect(status).toBe(1);
    expect(stderr).toMatch(/tirage\.pressure_bar is 19; doses of 0 to 60 g\/L give .* bar at 12 °C/);
    expect(existsSync(out)).toBe(false);
  });

  test.each([
    ["not JSON", () => [batchFile("text.json", "{ not json"), inFolder("x.xlsx")], "is not JSON"],
    ["a list", () => [batchFile("list.json", []), inFolder("x.xlsx")], "the batch file is a list"],
    [
      "no such file",
      () => [inFolder("none.json"), inFolder("x.xlsx")],
      "none.json is not there; give the path",
    ],
    ["a folder as batch", () => [folder, inFolder("x.xlsx")], "is a folder; give a batch file"],
    [
      "a file as season",
      () => ["--season", samplePath("oxlip-hill-brut.json"), inFolder("x.xlsx")],
      "is a file; give a folder with batch files",
    ],
    [
      "a season that is nowhere",
      () => ["--season", inFolder("no"), inFolder("x.xlsx")],
      "no is not there; give a folder",
    ],
    [
      "a place below a file",
      () => [samplePath("oxlip-hill-brut.json"), path.join(batchFile("file.json", {}), "x.xlsx")],
      "file.json is a file, not a folder",
    ],
    [
      "a batch below a file",
      () => [path.join(batchFile("file.json", {}), "a.json"), inFolder("x.xlsx")],
      "a.json is not there",
    ],
    [
      "a name that is too long",
      () => [`${"a".repeat(300)}.json`, inFolder("x.xlsx")],
      "cannot be used: its name is too long",
    ],
    [
      "a workbook of another name",
      () => [workbookAsBatch(), inFolder("x.xlsx")],
      "it is a workbook or another packed file; a workbook is opened in the page",
    ],
    [
      "--fields with more",
      () => [samplePath("oxlip-hill-brut.json"), "--fields"],
      "--fields takes no other words",
    ],
    ["an empty name", () => ["", inFolder("x.xlsx")], "Usage"],
    ["text in another encoding", () => [latin1File(), inFolder("x.xlsx")], "is not in UTF-8"],
    [
      "a number in quotes",
      () => [batchFile("quotes.json", withVolume("32.5")), inFolder("x.xlsx")],
      'baseWine.volume_hL is "32.5"; give more than 0, at most 100000 hL\n  (A number stands without quotes',
    ],
    [
      "a section of another name",
      () => [
        batchFile("section.json", { ...sampleJson("oxlip-hill-brut.json"), cost: {} }),
        inFolder("x.xlsx"),
      ],
      "cost is a group of fields; there is no such field",
    ],
    [
      "not an .xlsx name",
      () => [samplePath("oxlip-hill-brut.json"), inFolder("x.ods")],
      "does not end in .xlsx",
    ],
    [
      "a folder that is not there",
      () => [samplePath("oxlip-hill-brut.json"), inFolder("no/x.xlsx")],
      "no is not there; make it first",
    ],
    [
      "one name too many",
      () => [samplePath("oxlip-hill-brut.json"), inFolder("x.xlsx"), "more"],
      "put a name with blanks in quotes",
    ],
    ["no arguments", () => [], "Usage"],
  ])("%s", (_name, args, words) => {
    const { status, stderr } = plan(...args());
    expect(status).toBe(1);
    expect(stderr).toContain(words);
    expect(existsSync(inFolder("x.xlsx"))).toBe(false);
  });

  test("an existing workbook stays, unless asked", () => {
    const out = inFolder("mine.xlsx");
    writeFileSync(out, "mine");
    const first = plan(samplePath("oxlip-hill-brut.json"), out);
    expect(first.status).toBe(1);
    expect(first.stderr).toContain("--overwrite");
    expect(readFileSync(out, "utf8")).toBe("mine");
    expect(plan(samplePath("oxlip-hill-brut.json"), out, "--overwrite").status).toBe(0);
    expect(readFileSync(out).subarray(0, 2).toString()).toBe("PK");
  });
});

describe("what is told", () => {
  test("each check that is not fine, with its limit and what was found", () => {
    const batch = sampleJson("oxlip-hill-brut.json");
    batch.lees!.lees_months = 3;
    const { status, stdout } = plan(batchFile("early.json", batch), inFolder("early.xlsx"));
    expect(status).toBe(0);
    expect(stdout).toContain('worst check "stop":\n    stop: Months on the lees at least 9 months: 3');
  });

  test("batches of a season that may be one", () => {
    const [twice, sample] = [inFolder("twice"), samplePath("oxlip-hill-brut.json")];
    mkdirSync(twice);
    for (const name of ["one.json", "copy.json"]) copyFileSync(sample, path.join(twice, name));
    const { status, stdout } = plan("--season", twice, inFolder("twice.xlsx"));
    expect(status).toBe(0);
    expect(stdout).toMatch(
      /Several batches are called "Oxlip Hill Brut 2025", lot ".+"; the season counts each/,
    );
    expect(plan("--season", path.dirname(sample), inFolder("all.xlsx")).stdout).not.toContain("Several");
  });

  test("every field of a batch file, with what is allowed", () => {
    const { status, stdout } = plan("--fields");
    expect(status).toBe(0);
    const [, listed] = stdout.split("\n\n");
    const named = listed!
      .trim()
      .split("\n")
      .map((line) => line.split(":")[0]);
    expect(named).toEqual(placedFields(fields).map(({ dotted }) => dotted));
    expect(stdout).toContain("baseWine.alcohol_vol: Alcohol; 5 to 16 % vol\n");
    expect(stdout).toContain("batch.bottle_mL: Bottle size; 50 to 30000 mL; 750 where left out\n");
  });

  test("names are those of the folder in which npm was started", () => {
    copyFileSync(samplePath("oxlip-hill-brut.json"), inFolder("here.json"));
    // as npm tells it to the script
    const env = { ...process.env, npm_lifecycle_event: "plan", INIT_CWD: folder };
    expect(planIn(env, "here.json", "here.xlsx")).toMatchObject({ status: 0, stderr: "" });
    expect(existsSync(inFolder("here.xlsx"))).toBe(true);
  });
});

describe("beside what is there", () => {
  test("a season takes batch files only", () => {
    const season = inFolder("season");
    mkdirSync(path.join(season, "sub.json"), { recursive: true });
    writeFileSync(path.join(season, "._a.json"), Buffer.from([0, 5, 22, 7, 0xff]));
    copyFileSync(samplePath("oxlip-hill-brut.json"), path.join(season, "a.json"));
    expect(plan("--season", season, inFolder("season.xlsx"))).toMatchObject({ status: 0, stderr: "" });
  });

  test("what a link leads to is written, and nothing is left beside it", () => {
    const place = inFolder("linked");
    mkdirSync(place);
    const real = path.join(place, "real.xlsx");
    writeFileSync(real, "old");
    symlinkSync(real, path.join(place, "link.xlsx"));
    const brut = samplePath("oxlip-hill-brut.json");
    expect(plan(brut, path.join(place, "link.xlsx"), "--overwrite").status).toBe(0);
    expect(readFileSync(real).subarray(0, 2).toString()).toBe("PK");
    expect(lstatSync(path.join(place, "link.xlsx")).isSymbolicLink()).toBe(true);
    expect(readdirSync(place)).toEqual(["link.xlsx", "real.xlsx"]);
  });

  test("a name as long as a disk takes", () => {
    const place = inFolder("long");
    mkdirSync(place);
    const name = `${"a".repeat(245)}.xlsx`;
    const done = plan(samplePath("oxlip-hill-brut.json"), path.join(place, name));
    expect(done).toMatchObject({ status: 0, stderr: "" });
    expect(readdirSync(place)).toEqual([name]);
  });
});

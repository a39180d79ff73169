/**
 * npm run plan, as a person runs it: the file it writes, and what it says when it writes none.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import * as XLSX from "@e965/xlsx";
import { planBatch } from "../../src/cellar/batch/plan";
import { planSheet } from "../../src/workbook/plan/sheet";
import { cellAddress } from "../../src/workbook/data";
import { convert, libreOfficeTest, removeConversions } from "../support/libreoffice";
import { packageProblems, schemaTest } from "../support/ooxml";
import { sampleFiles, sampleInputs, sampleJson, samplePath } from "../support/samples";

jest.setTimeout(120_000);

const ROOT = path.resolve(__dirname, "../..");
const folder = mkdtempSync(path.join(tmpdir(), "plan-"));
afterAll(async () => {
  rmSync(folder, { recursive: true });
  await removeConversions();
});
const inFolder = (name: string) => path.join(folder, name);

function plan(...args: string[]) {
  const tsx = path.join(ROOT, "node_modules/tsx/dist/cli.mjs");
  const { status, stdout, stderr } = spawnSync(process.execPath, [tsx, "src/commandline/plan.ts", ...args], {
    cwd: ROOT,
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

function batchFile(name: string, content: unknown): string {
  const file = inFolder(name);
  writeFileSync(file, typeof content === "string" ? content : JSON.stringify(content));
  return file;
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
    ["a list", () => [batchFile("list.json", []), inFolder("x.xlsx")], "the batch file is a range or list"],
    ["no such file", () => [inFolder("none.json"), inFolder("x.xlsx")], "cannot be read"],
    [
      "not an .xlsx name",
      () => [samplePath("oxlip-hill-brut.json"), inFolder("x.ods")],
      "does not end in .xlsx",
    ],
    [
      "a folder that is not there",
      () => [samplePath("oxlip-hill-brut.json"), inFolder("no/x.xlsx")],
      "cannot be written",
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

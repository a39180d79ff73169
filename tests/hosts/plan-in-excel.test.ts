/**
 * The real plan, written to Excel's genuine proxies: what is asked, in which order, and what it costs.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { seasonBook } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import type { RoundTrip } from "../support/excel-proxies";
import { versionOf } from "../support/excel-types";
import { bareBytes, bytesOf, operationsOf, written } from "../support/excel-writing";
import { sampleFiles, sampleInputs } from "../support/samples";
import { seasonBatches } from "../support/season";

const planOf = (file: string) => {
  const inputs = sampleInputs(file);
  return planSheet(inputs, planBatch(inputs), ["Season"]);
};
const BRUT = planOf("oxlip-hill-brut.json");

test.each(sampleFiles)("%s takes four round trips", async (file) => {
  const sheet = planOf(file);
  const workbook = await written([sheet]);
  expect(workbook.roundTrips).toHaveLength(4);
  expect(workbook.active).toBe(sheet.name);
});

/** The subject of a call or a setting: what of a range, and otherwise what of the sheet. */
function subjectOf({ on, name }: { readonly on: string; readonly name: string }): string {
  // an argument may have parentheses of its own
  const bare = on
    .replace(/\([^()]*\)/g, "")
    .replace(/\([^()]*\)/g, "")
    .replace(/\([^()]*\)/g, "");
  const [first = "", ...rest] = bare.split(".");
  if (on === "") return `sheet ${name}`;
  if (name === "_ValidateArraySize") return "size of a block";
  if (!/^GetRanges?$/.test(first)) return first === "Application" ? name : first;
  const parts = rest.filter((each) => !/^Get(Row|BoundingRect)$/.test(each));
  return parts.length === 0 ? name : parts[0] === "Format" ? (parts[1] ?? name) : parts[0]!;
}

/** Subjects in their order; looks, which take turns with one another, as one. */
const LOOKS = /^(Font|Fill|Borders|HorizontalAlignment|IndentLevel|WrapText)$/;
function summary({ operations, bytes }: RoundTrip): { order: string[]; kB: number } {
  const runs: { subject: string; count: number }[] = [];
  for (const each of operations) {
    const subject = subjectOf(each).replace(LOOKS, "looks");
    const last = runs.at(-1);
    if (last?.subject === subject) last.count++;
    else runs.push({ subject, count: 1 });
  }
  // in tens, so that a word more on a plan is no other picture
  return {
    order: runs.map(({ subject, count }) => `${subject} ×${count}`),
    kB: Math.round(bytes / 10_000) * 10,
  };
}

test("what is asked of Excel, in which order and how often", async () => {
  const { roundTrips } = await written([BRUT]);
  expect(roundTrips.map(summary)).toMatchSnapshot("round trips of one plan");
});

test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 17, 18, 20])(
  "where Excel offers ExcelApi 1.%i nothing newer is asked of it, and the cells are whole",
  async (limit) => {
    const sheets = [...seasonBook(seasonBatches(2), "values"), BRUT];
    const workbook = await written(sheets, {}, (version) => Number(version.split(".")[1]) <= limit);
    const newer = operationsOf(workbook).filter((each) => versionOf(each) > limit);
    expect([...new Set(newer.map(({ on, name }) => `${on} ${name}`))]).toEqual([]);
    const filled = BRUT.cells.filter(({ value, formula }) => formula !== undefined || (value ?? "") !== "");
    expect(workbook.sheets.at(-1)!.cells.size).toBe(filled.length);
  },
);

describe("payload against one block of the same cells", () => {
  const bytes = async (more: Partial<SheetData> = {}) => bytesOf(await written([{ ...BRUT, ...more }]));

  test("below twice without names and rules, which cost one object each", async () => {
    const [bare, all, plain] = [
      await bareBytes(BRUT),
      await bytes(),
      await bytes({ names: [], validations: [] }),
    ];
    const perName = (all - (await bytes({ names: [] }))) / BRUT.names.length;
    const perRule = (all - (await bytes({ validations: [] }))) / BRUT.validations.length;
    process.stdout.write(
      `a plan ${all} bytes, bare ${bare}: ×${(all / bare).toFixed(2)}; without names and rules ` +
        `×${(plain / bare).toFixed(2)}; ${BRUT.names.length} names of ${perName.toFixed(0)}, ` +
        `${BRUT.validations.length} rules of ${perRule.toFixed(0)}\n`,
    );
    expect(plain / bare).toBeLessThan(2);
    expect(all / bare).toBeLessThan(4);
    expect(perName).toBeLessThan(260);
    expect(perRule).toBeLessThan(800);
  });
});

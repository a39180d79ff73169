/**
 * A portable season in another spreadsheet program: how fast it works out every cell, beside the calculation module.
 */
import { rm, stat } from "node:fs/promises";
import { planBatch } from "../../src/cellar/batch/plan";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { seasonBook } from "../../src/workbook/book";
import { seasonBatches } from "../support/season";
import { median, timed } from "./clock";
import { short, type Report } from "./report";

const BATCHES = 20;
const ROUNDS = 5;
const MODULE_ROUNDS = 50;
const XLSX = "xlsx:Calc MS Excel 2007 XML";

/** What the support declares a test with; here is none. */
function withoutTests(): void {
  const test = Object.assign(() => undefined, { skip: () => undefined });
  Object.assign(globalThis, { test });
}

export async function libreoffice(): Promise<Report> {
  withoutTests();
  const { convertBytes, removeConversions } = await import("../support/libreoffice");
  const batches = seasonBatches(BATCHES);
  const sheets = seasonBook(batches, "portable");
  const formulas = sheets.flatMap(({ cells }) => cells.filter(({ formula }) => formula !== undefined)).length;
  const file = await writeWorkbookFile({ sheets });

  const rounds: { readonly calculated: number; readonly kept: number }[] = [];
  try {
    for (let round = 0; round < ROUNDS; round++) {
      const opened = async (recalculate: boolean) => {
        const [seconds, saved] = await timed(() => convertBytes(file, "season.xlsx", XLSX, { recalculate }));
        if ((await stat(saved)).size < file.length / 4) throw new Error("LibreOffice saved next to nothing");
        await rm(saved);
        return seconds;
      };
      rounds.push({ kept: await opened(false), calculated: await opened(true) });
    }
  } finally {
    await removeConversions();
  }

  for (let round = 0; round < 5; round++) batches.forEach(({ inputs }) => planBatch(inputs));
  const module: number[] = [];
  for (let round = 0; round < MODULE_ROUNDS; round++)
    module.push((await timed(() => batches.forEach(({ inputs }) => planBatch(inputs))))[0]);

  const calculated = median(rounds.map((each) => each.calculated));
  const kept = median(rounds.map((each) => each.kept));
  const differences = rounds.map((each) => each.calculated - each.kept);
  const alone = median(differences);
  const own = median(module);
  return {
    title: "Portable workbook in LibreOffice",
    notes: [
      `A season of ${BATCHES} batches in plain formulas: ${sheets.length} sheets, ${formulas} formulas. LibreOffice opens and saves the same file once with every formula calculated anew and once with the results that it holds; the difference is the calculation: ${short(Math.min(...differences))} to ${short(Math.max(...differences))} s in ${ROUNDS} rounds. Medians; the program's start is in both. The calculation module plans the same batches in this process, compiled; it makes the plans, not the What-if grids and the season.`,
    ],
    tables: [
      {
        caption: "seconds",
        columns: ["what", "seconds", "a second"],
        rows: [
          ["opened, calculated, saved", calculated, ""],
          ["opened, saved", kept, ""],
          ["so calculated", alone, `${Math.round(formulas / alone)} formulas`],
          ["calculation module", own, `${Math.round(BATCHES / own)} batches`],
        ],
      },
    ],
    judged: [
      {
        what: "Calculating a batch in LibreOffice",
        value: (alone * 1000) / BATCHES,
        unit: "ms",
        least: { value: (own * 1000) / BATCHES, what: "the calculation module, plans alone" },
      },
    ],
  };
}

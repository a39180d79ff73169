/**
 * A portable season in another spreadsheet program: how fast it works out every cell, beside the calculation module.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { seasonBook } from "../../src/workbook/book";
import { seasonBatches } from "../support/season";
import { median, timed } from "./clock";
import { short, type Report } from "./report";

const BATCHES = 20;
const ROUNDS = 15;
const MODULE_ROUNDS = 50;

/** What the support declares a test with; here is none. */
function withoutTests(): void {
  const test = Object.assign(() => undefined, { skip: () => undefined });
  Object.assign(globalThis, { test });
}

export async function libreoffice(): Promise<Report> {
  withoutTests();
  const { recalculations } = await import("./recalculation");
  const batches = seasonBatches(BATCHES);
  const sheets = seasonBook(batches, "portable");
  const formulas = sheets.flatMap(({ cells }) => cells.filter(({ formula }) => formula !== undefined)).length;
  const rounds = await recalculations(await writeWorkbookFile({ sheets }), ROUNDS);

  for (let round = 0; round < 5; round++) batches.forEach(({ inputs }) => planBatch(inputs));
  const module: number[] = [];
  for (let round = 0; round < MODULE_ROUNDS; round++)
    module.push((await timed(() => batches.forEach(({ inputs }) => planBatch(inputs))))[0]);

  const recalculated = median(rounds);
  const own = median(module);
  return {
    title: "Portable workbook in LibreOffice",
    notes: [
      `A season of ${BATCHES} batches in plain formulas: ${sheets.length} sheets, ${formulas} formulas, all worked out anew in the open workbook (hard recalculation) ${ROUNDS} times, by LibreOffice's own clock: ${short(Math.min(...rounds))} to ${short(Math.max(...rounds))} s. Medians. The calculation module plans the same batches in this process, compiled; it makes the plans, not the What-if grids and the season.`,
    ],
    tables: [
      {
        caption: "seconds",
        columns: ["what", "seconds", "a second"],
        rows: [
          ["every formula in LibreOffice", recalculated, `${short(formulas / recalculated)} formulas`],
          ["calculation module", own, `${short(BATCHES / own)} batches`],
        ],
      },
    ],
    judged: [
      {
        what: "Calculating a batch in LibreOffice",
        value: (recalculated * 1000) / BATCHES,
        unit: "ms",
        least: { value: (own * 1000) / BATCHES, what: "the calculation module, plans alone" },
      },
    ],
  };
}

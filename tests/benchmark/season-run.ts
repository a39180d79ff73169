/**
 * One season in a process of its own, so that its peak of memory is its own: "excel" or "file", and how many batches.
 */
import { gzipSync } from "node:zlib";
import { excelHost } from "../../src/hosts/excel/excel-host";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { seasonBook } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { standInWorkbook } from "../support/excel-proxies";
import { seasonBatches } from "../support/season";
import { timed, timedWithClearing } from "./clock";

const MB = 1e6;

export interface SeasonRun {
  readonly batches: number;
  readonly sheets: number;
  readonly cells: number;
  readonly planSeconds: number;
  readonly templateSeconds: number;
  readonly seconds: number;
  /** Of these, spent by Node in clearing memory. */
  readonly clearingSeconds: number;
  readonly megabytes: number;
  /** Formulas and values alone, each cell written out. */
  readonly cellMegabytes: number;
  readonly roundTrips: number;
  readonly largestMegabytes: number;
  readonly peakMegabytes: number;
}

type Written = Pick<
  SeasonRun,
  "seconds" | "clearingSeconds" | "megabytes" | "roundTrips" | "largestMegabytes"
>;

async function toExcel(sheets: readonly SheetData[]): Promise<Written> {
  const workbook = standInWorkbook();
  const [seconds, clearingSeconds] = await timedWithClearing(() => excelHost(() => true).write({ sheets }));
  const bytes = workbook.roundTrips.map((trip) => trip.bytes);
  return {
    seconds,
    clearingSeconds,
    megabytes: bytes.reduce((sum, each) => sum + each, 0) / MB,
    roundTrips: bytes.length,
    largestMegabytes: Math.max(...bytes) / MB,
  };
}

async function toFile(sheets: readonly SheetData[]): Promise<Written> {
  const [seconds, clearingSeconds, file] = await timedWithClearing(() => writeWorkbookFile({ sheets }));
  return { seconds, clearingSeconds, megabytes: file.length / MB, roundTrips: 0, largestMegabytes: 0 };
}

/** Formulas and values as rows of JSON, without looks, rules and names; for a file shortened as a zip would be. */
function bareMegabytes(sheets: readonly SheetData[], isFile: boolean): number {
  return sheets.reduce((sum, { cells }) => {
    const rows: unknown[][] = [];
    for (const { row, column, value, formula } of cells)
      (rows[row] ??= [])[column] =
        formula === undefined ? value : isFile ? [`=${formula}`, value] : `=${formula}`;
    const text = JSON.stringify(rows);
    return sum + (isFile ? gzipSync(text).length : Buffer.byteLength(text)) / MB;
  }, 0);
}

async function run(what: string, batches: number): Promise<SeasonRun> {
  const write = what === "excel" ? toExcel : toFile;
  // a small one for nothing, so that the first figure is not that of compiling
  await write(seasonBook(seasonBatches(3)));
  const [planSeconds, season] = await timed(() => seasonBatches(batches));
  const [templateSeconds, sheets] = await timed(() => seasonBook(season));
  const written = await write(sheets);
  const peakMegabytes = (process.resourceUsage().maxRSS * 1024) / MB;
  return {
    batches,
    sheets: sheets.length,
    cells: sheets.reduce((sum, { cells }) => sum + cells.length, 0),
    planSeconds,
    templateSeconds,
    ...written,
    cellMegabytes: bareMegabytes(sheets, what === "file"),
    peakMegabytes,
  };
}

process.once("disconnect", () => process.exit(1));
const [what, batches] = process.argv.slice(2);
void run(what!, Number(batches)).then((found) => process.send!(found));

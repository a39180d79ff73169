/**
 * npm run benchmark: what a season costs to write, by the number of its batches. Figures, not a test: they depend on
 * the machine. "a batch" must not grow with the number of batches.
 */
import { cpus } from "node:os";
import { excelHost } from "../../src/hosts/excel/excel-host";
import { writeWorkbookFile } from "../../src/hosts/xlsx/write";
import { seasonBook } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { standInWorkbook } from "../support/excel-proxies";
import { seasonBatches } from "../support/season";

const COUNTS = [1, 20, 200] as const;
const MB = 1024 * 1024;

interface Figures {
  readonly batches: number;
  readonly cells: number;
  readonly planSeconds: number;
  readonly templateSeconds: number;
  readonly excelSeconds: number;
  readonly excelRoundTrips: number;
  readonly excelMegabytes: number;
  readonly largestRequestMegabytes: number;
  readonly fileSeconds: number;
  readonly fileMegabytes: number;
  readonly peakMegabytes: number;
}

async function timed<T>(work: () => T | Promise<T>): Promise<readonly [seconds: number, result: T]> {
  const start = performance.now();
  const result = await work();
  return [(performance.now() - start) / 1000, result];
}

async function toExcel(sheets: readonly SheetData[]) {
  const workbook = standInWorkbook();
  const [seconds] = await timed(() => excelHost(() => true).write({ sheets }));
  const bytes = workbook.roundTrips.map((trip) => trip.bytes);
  return {
    excelSeconds: seconds,
    excelRoundTrips: bytes.length,
    excelMegabytes: bytes.reduce((sum, each) => sum + each, 0) / MB,
    largestRequestMegabytes: Math.max(...bytes) / MB,
  };
}

async function figuresFor(batches: number): Promise<Figures> {
  const [planSeconds, season] = await timed(() => seasonBatches(batches));
  const [templateSeconds, sheets] = await timed(() => seasonBook(season));
  const excel = await toExcel(sheets);
  const [fileSeconds, file] = await timed(() => writeWorkbookFile({ sheets }));
  return {
    batches,
    cells: sheets.reduce((sum, { cells }) => sum + cells.length, 0),
    planSeconds,
    templateSeconds,
    ...excel,
    fileSeconds,
    fileMegabytes: file.length / MB,
    peakMegabytes: process.resourceUsage().maxRSS / 1024,
  };
}

function shown(all: readonly Figures[]): string {
  const rows = Object.keys(all[0]!).map((key) =>
    [key.padEnd(26), ...all.map((each) => each[key as keyof Figures].toFixed(2).padStart(12))].join(""),
  );
  return rows.join("\n");
}

async function main(): Promise<void> {
  // once for nothing, so that the first figure is not that of compiling
  await figuresFor(1);
  const all: Figures[] = [];
  for (const count of COUNTS) all.push(await figuresFor(count));
  const machine = `${cpus().length} × ${cpus()[0]?.model.trim()}, Node ${process.versions.node}`;
  if (process.argv.includes("--json")) console.log(JSON.stringify({ machine, seasons: all }, null, 2));
  else
    console.log(
      `A season written: Plan, What-if and Register of each batch, Season, Notes\n${machine}\n\n${shown(all)}`,
    );
}

void main();

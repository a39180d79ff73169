/**
 * What seasons of 1 to 1000 batches cost to write, to Excel and to a file. A batch must not cost more among many.
 */
import path from "node:path";
import { inProcess } from "./clock";
import { type Judged, type Report, type Table } from "./report";
import type { SeasonRun } from "./season-run";

const COUNTS = [1, 20, 200, 1000] as const;
const RUN = path.resolve(__dirname, "season-run.ts");
const MORE_HEAP = "--max-old-space-size=12288";
/** Excel on the web takes 5 MB at once. */
const REQUEST_MB = 5;
/** Where a figure should be in proportion to the number of batches, this much more a batch is still that. */
const LINEAR = 1.5;

interface Run extends SeasonRun {
  readonly moreHeap: boolean;
}

async function seasonRun(what: string, batches: number): Promise<Run> {
  const args = [what, String(batches)];
  try {
    return { ...(await inProcess<SeasonRun>(RUN, args)), moreHeap: false };
  } catch (error) {
    if (!/heap|SIGABRT|SIGKILL/i.test(String(error))) throw error;
    return { ...(await inProcess<SeasonRun>(RUN, args, [MORE_HEAP])), moreHeap: true };
  }
}

function table(
  caption: string,
  runs: readonly Run[],
  lines: readonly [string, (run: Run) => number][],
): Table {
  return {
    caption,
    columns: ["batches", ...runs.map(({ batches }) => String(batches))],
    rows: lines.map(([what, of]) => [what, ...runs.map(of)]),
  };
}

const perBatch = (of: (run: Run) => number) => (run: Run) => (of(run) * 1000) / run.batches;

/** What a batch costs at one size over what it costs at the size before. */
const times = (run: Run, before: Run, of: (run: Run) => number) =>
  of(run) / run.batches / (of(before) / before.batches);

function growth(
  what: string,
  runs: readonly Run[],
  of: (run: Run) => number,
  why?: (run: Run, before: Run) => string,
): Judged[] {
  return runs.slice(2).map((run, index) => {
    const before = runs[index + 1]!;
    return {
      what: `${what}, a batch at ${run.batches} : a batch at ${before.batches}`,
      value: times(run, before, of),
      unit: "×",
      atMost: LINEAR,
      ...(why && { why: why(run, before) }),
    };
  });
}

const secondsOf = ({ seconds }: Run) => seconds;
const withoutClearing = (run: Run, before: Run) =>
  `${times(run, before, ({ seconds, clearingSeconds }) => seconds - clearingSeconds).toFixed(2)} × without the clearing of memory`;

export async function seasons(): Promise<Report> {
  const excel: Run[] = [];
  const file: Run[] = [];
  for (const count of COUNTS) {
    excel.push(await seasonRun("excel", count));
    file.push(await seasonRun("file", count));
  }
  const heap = [...excel.map((run) => ["Excel", run] as const), ...file.map((run) => ["file", run] as const)]
    .filter(([, { moreHeap }]) => moreHeap)
    .map(([where, { batches }]) => `${where}, ${batches} batches`);
  const largest = Math.max(...excel.map(({ largestMegabytes }) => largestMegabytes));
  const [mostExcel, mostFile] = [excel.at(-1)!, file.at(-1)!];
  return {
    title: "Seasons",
    notes: [
      "Plan, What-if and Register of each batch, Season and Notes, written to a stand-in for Excel behind the genuine Office.js proxies (seconds are ours and its, not Excel's) and to an .xlsx file; each size in a process of its own after a season of three. 1 MB = 1 000 000 bytes. Sheets are made as data first, the same for both.",
      heap.length > 0
        ? `More than Node's usual heap was needed, so these ran with ${MORE_HEAP}: ${heap.join("; ")}.`
        : "All in Node's usual heap.",
    ],
    tables: [
      table("Made as data", file, [
        ["sheets", ({ sheets }) => sheets],
        ["cells", ({ cells }) => cells],
        ["plans, s", ({ planSeconds }) => planSeconds],
        ["sheets, s", ({ templateSeconds }) => templateSeconds],
        ["sheets, ms a batch", perBatch(({ templateSeconds }) => templateSeconds)],
      ]),
      table("To Excel", excel, [
        ["round trips", ({ roundTrips }) => roundTrips],
        ["MB", ({ megabytes }) => megabytes],
        ["MB of each cell written out", ({ cellMegabytes }) => cellMegabytes],
        ["largest request, MB", ({ largestMegabytes }) => largestMegabytes],
        ["s", ({ seconds }) => seconds],
        ["ms a batch", perBatch(({ seconds }) => seconds)],
        ["ms of it clearing memory", perBatch(({ clearingSeconds }) => clearingSeconds)],
        ["peak of memory, MB", ({ peakMegabytes }) => peakMegabytes],
      ]),
      table("To a file", file, [
        ["MB", ({ megabytes }) => megabytes],
        ["MB of the cells alone", ({ cellMegabytes }) => cellMegabytes],
        ["s", ({ seconds }) => seconds],
        ["ms a batch", perBatch(({ seconds }) => seconds)],
        ["ms of it clearing memory", perBatch(({ clearingSeconds }) => clearingSeconds)],
        ["µs a cell", ({ seconds, cells }) => (seconds * 1e6) / cells],
        ["peak of memory, MB", ({ peakMegabytes }) => peakMegabytes],
      ]),
    ],
    judged: [
      ...growth("Sheets as data", file, ({ templateSeconds }) => templateSeconds),
      ...growth("To Excel", excel, secondsOf, withoutClearing),
      ...growth("To a file", file, secondsOf, withoutClearing),
      ...growth("Memory of a file", file, ({ peakMegabytes }) => peakMegabytes),
      { what: "Largest request to Excel", value: largest, unit: "MB", atMost: REQUEST_MB },
      {
        what: `Round trips for ${mostExcel.batches} batches`,
        value: mostExcel.roundTrips,
        unit: "",
        least: { value: Math.ceil(mostExcel.megabytes / REQUEST_MB), what: "its bytes in full requests" },
      },
      {
        what: `Bytes to Excel for ${mostExcel.batches} batches : each cell written out`,
        value: mostExcel.megabytes / mostExcel.cellMegabytes,
        unit: "×",
        atMost: 1,
      },
      {
        what: `File of ${mostFile.batches} batches`,
        value: mostFile.megabytes,
        unit: "MB",
        least: { value: mostFile.cellMegabytes, what: "formulas and values alone, shortened" },
      },
    ],
  };
}

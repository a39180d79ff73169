/**
 * How far writing to Excel has come, and stopping it, on the genuine Excel proxies.
 */
import { excelHost } from "../../src/hosts/excel/excel-host";
import { seasonBook } from "../../src/workbook/book";
import { chartSheet } from "../support/charts";
import { standInWorkbook, type StandIn, type StandInOptions } from "../support/excel-proxies";
import { cell, everything, namesOf, planLike, sheetOf } from "../support/excel-writing";
import { seasonBatches } from "../support/season";

const alone = [planLike("Plan 1", 30), planLike("Plan 2", 31), { ...chartSheet, name: "Charts" }];
const alike = [1, 2, 3].map((volume) => sheetOf([cell(volume)], { name: `Plan ${volume}` }));
const large = Array.from({ length: 16 }, (_, index) => planLike(`Plan ${index}`, 2000 + index));
const given = { sheets: [{ name: "Mine", cells: { A1: { value: 1 } } }] };

interface Outcome {
  readonly workbook: StandIn;
  readonly told: [done: number, of: number][];
  /** What was answered or thrown. */
  readonly result: unknown;
}

async function writing(
  sheets: Parameters<ReturnType<typeof excelHost>["write"]>[0]["sheets"],
  abort: AbortController,
  options: StandInOptions = {},
): Promise<Outcome> {
  const workbook = standInWorkbook({ ...given, ...options });
  const told: Outcome["told"] = [];
  const result = await excelHost(everything)
    .write({ sheets }, { tell: (...each) => void told.push(each), signal: abort.signal })
    .catch((error: unknown) => error);
  return { workbook, told, result };
}

test.each([
  ["sheets of shapes of their own", alone],
  ["sheets of one shape", alike],
  ["a season", seasonBook(seasonBatches(2))],
])("%s: told from none to all, in order", async (_what, sheets) => {
  const { told, result } = await writing(sheets, new AbortController());
  expect(result).toEqual([]);
  expect(told[0]).toEqual([0, sheets.length]);
  expect(told.at(-1)).toEqual([sheets.length, sheets.length]);
  expect(told.map(([done]) => done)).toEqual([...told.map(([done]) => done)].sort((a, b) => a - b));
  expect(new Set(told.map(([, of]) => of))).toEqual(new Set([sheets.length]));
});

test("told on the way too, not only at the end: between the requests of a long piece of work", async () => {
  const seen: number[] = [];
  const told: number[] = [];
  standInWorkbook({ ...given, meanwhile: () => void seen.push(told.length) });
  const tell = (done: number) => void told.push(done);
  await excelHost(everything).write({ sheets: large }, { tell, signal: new AbortController().signal });
  const writing = seen.slice(2, 4);
  expect(writing[0]).toBeLessThan(writing[1]!);
  expect(writing[0]).toBeGreaterThan(0);
});

describe("stopped", () => {
  const reason = new Error("the user has had enough");

  test("before anything: no sheet, no request that writes, and the reason comes back", async () => {
    const abort = new AbortController();
    abort.abort(reason);
    const { workbook, told, result } = await writing(alone, abort);
    expect(result).toBe(reason);
    expect(workbook.roundTrips.flatMap(({ operations }) => operations)).toEqual([]);
    expect(namesOf(workbook)).toEqual(["Mine"]);
    expect(told).toEqual([]);
  });

  test.each<[string, Parameters<typeof writing>[0], number]>([
    ["shapes of their own", alone, 4],
    ["one shape", alike, 4],
    ["several requests", large, 5],
  ])("during any round trip, %s: nothing is left behind", async (_what, sheets, trips) => {
    for (let during = 1; during <= trips; during++) {
      const abort = new AbortController();
      const meanwhile = (roundTrip: number) => {
        if (roundTrip === during) abort.abort(reason);
      };
      const { workbook, result } = await writing(sheets, abort, { meanwhile });
      // once the last request is under way all is done
      if (during === trips) {
        expect(result).toEqual([]);
        expect(workbook.sheets).toHaveLength(1 + sheets.length);
        continue;
      }
      expect([during, result]).toEqual([during, reason]);
      expect([during, namesOf(workbook)]).toEqual([during, ["Mine"]]);
      expect(workbook.sheets[0]!.cells.size).toBe(1);
      // no more than to take away what was begun
      expect(workbook.roundTrips.length).toBeLessThanOrEqual(during + 1);
    }
  });

  test("while Excel fails in the same round trip, nothing is left either", async () => {
    for (let during = 2; during <= 4; during++) {
      const abort = new AbortController();
      const { workbook, result } = await writing(alone, abort, {
        failures: [{ roundTrip: during, afterActions: 2 }],
        meanwhile: (roundTrip) => {
          if (roundTrip === during) abort.abort(reason);
        },
      });
      expect(result).toMatchObject({ message: `round trip ${during} failed` });
      expect(namesOf(workbook)).toEqual(["Mine"]);
    }
  });
});

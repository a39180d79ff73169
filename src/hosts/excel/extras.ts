/**
 * What a sheet can do without: tables, notes on cells, charts, and print settings, which a machine without a printer
 * refuses. By the time they are added the cells are calculated, so that Excel takes a chart's numbers for numbers.
 */
import { cellAddress, type SheetData } from "../../workbook/data";
import { rangeAt, rectangleAddress } from "./areas";
import type { Progress } from "../host";
import { addCharts } from "./charts";
import type { Offered } from "./offered";
import { Requests } from "./requests";
import { layOutPages } from "./sheet";
import { costOf, rangeCost, SHEET_COST, settingCost, type Pieces } from "./sizes";
import { isUndoRefused } from "./undo-groups";

interface Extra {
  readonly what: string;
  readonly offered: (offered: Offered) => boolean;
  readonly on: (data: SheetData) => boolean;
  readonly add: (sheet: Excel.Worksheet, data: SheetData) => Pieces;
}

/** Print settings last, as they are refused most often. */
const extras: readonly Extra[] = [
  {
    what: "tables",
    offered: ({ tables }) => tables,
    on: ({ tables }) => tables.length > 0,
    add: addTables,
  },
  {
    what: "notes on cells",
    offered: ({ notes }) => notes,
    on: ({ cells }) => cells.some(({ note }) => note !== undefined),
    add: addNotes,
  },
  {
    what: "charts",
    offered: ({ charts }) => charts,
    on: ({ charts }) => charts.length > 0,
    add: addCharts,
  },
  { what: "print settings", offered: ({ printing }) => printing, on: () => true, add: layOutPages },
];

interface Work {
  readonly context: Excel.RequestContext;
  readonly offered: Offered;
  readonly progress: Progress | undefined;
}
interface Written {
  readonly sheet: Excel.Worksheet;
  readonly data: SheetData;
}

/**
 * In one round trip if nothing is refused and one request can hold it. Excel stops at what it refuses, so what comes after that is asked for once
 * more. Answers with what was refused, in words.
 */
export async function addExtras(work: Work, all: readonly Written[]): Promise<readonly string[]> {
  const { context, offered, progress } = work;
  const refused: string[] = [];
  let left = extras.filter((extra) => extra.offered(offered) && all.some(({ data }) => extra.on(data)));
  while (left.length > 0) {
    const requests = new Requests(context, undefined, progress?.signal);
    const queuedIn = new Map<Extra, number>();
    try {
      for (const extra of left) {
        for (const { sheet, data } of all) {
          if (extra.on(data)) await requests.queue(extra.add(sheet, data));
        }
        context.trace(extra.what);
        queuedIn.set(extra, requests.sent);
      }
      await requests.send();
      return refused;
    } catch (error) {
      // refused for the undo group alone, it is all done once more without
      if (isUndoRefused(error) || progress?.signal.aborted) throw error;
      // an error without them is not Excel's: nobody knows what was done
      const { traceMessages: done } = error as { readonly traceMessages?: readonly string[] };
      const undone = left.filter(
        (extra) => !((queuedIn.get(extra) ?? Infinity) < requests.sent || done?.includes(extra.what)),
      );
      const concerned = done ? undone.slice(0, 1) : undone;
      const reason = error instanceof Error ? error.message : String(error);
      refused.push(
        `Not all of these could be set: ${concerned.map(({ what }) => what).join(", ")}. Excel said: ${reason}`,
      );
      left = done ? undone.slice(1) : [];
    }
  }
  return refused;
}

const TABLE_LOOK = { style: "TableStyleLight1", showBandedRows: false };

/** Excel gives the table a name that is free. The cells have looks of their own. */
export function* addTables(sheet: Excel.Worksheet, { tables }: SheetData): Pieces {
  yield SHEET_COST + costOf(1, 0);
  for (const { area } of tables) {
    const address = rectangleAddress(area);
    yield rangeCost(address) + costOf(1, 0, true) + settingCost(TABLE_LOOK);
    sheet.tables.add(rangeAt(sheet, address), true).set(TABLE_LOOK);
  }
}

export function* addNotes(sheet: Excel.Worksheet, { cells }: SheetData): Pieces {
  yield SHEET_COST + costOf(1, 0);
  const { notes } = sheet;
  for (const { row, column, note } of cells) {
    if (note === undefined) continue;
    const address = cellAddress(row, column);
    yield costOf(1, 0, address, note);
    notes.add(address, note);
  }
}

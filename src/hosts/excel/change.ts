/**
 * Values into cells that are there, in two round trips: what stands in them is remembered, so that a change that
 * fails half-way can be taken back.
 */
import { cellAddress, quotedSheet } from "../../workbook/data";
import type { CellChange } from "../host";
import { rangeAt, rectangleAddress, type Rectangle } from "./areas";
import { block, entryOf, gathered, holdsFormula } from "./contents";
import { look } from "./look";
import { isUndoRefused } from "./undo-groups";

type Entries = (string | number | boolean)[][];

interface Block {
  readonly sheet: string;
  readonly area: Rectangle;
  readonly entries: Entries;
  /** Number formats as they were: Excel lends a formula that is typed the format of what it reads. */
  readonly formats?: string[][];
}

export async function changeCells(changes: readonly CellChange[], options: Excel.RunOptions): Promise<void> {
  const blocks = blocksOf(changes);
  if (blocks.length === 0) return;
  let before: readonly Block[] = [];
  try {
    await Excel.run(options, async (context) => {
      before = await remembered(context, blocks);
      write(context, blocks);
      await context.sync();
    });
  } catch (error) {
    const missing = await putBack(blocks, before, error);
    if (missing !== undefined) {
      throw new Error(`There is no sheet named "${missing}" any more; nothing was changed.`, {
        cause: error,
      });
    }
    // refused for the undo group alone, it is done once more without
    if (isUndoRefused(error)) throw error;
    throw new Error(`The cells could not be changed: ${textOf(error)} Nothing was changed.`, {
      cause: error,
    });
  }
}

/** The last value given for a cell counts. */
function blocksOf(changes: readonly CellChange[]): Block[] {
  const sheets = new Map<string, Map<string, CellChange>>();
  for (const change of changes) {
    const key = change.sheet.toLowerCase();
    const cells = sheets.get(key) ?? new Map<string, CellChange>();
    sheets.set(key, cells.set(cellAddress(change.row, change.column), change));
  }
  return [...sheets.values()].flatMap((cells) => {
    const own = [...cells.values()];
    return gathered(own).map(({ area, within }) => ({
      sheet: own[0]!.sheet,
      area,
      entries: block<string | number | boolean, CellChange>(area, within, "", ({ value }) => entryOf(value)),
    }));
  });
}

const rangeOf = ({ workbook }: Excel.RequestContext, { sheet, area }: Block) =>
  rangeAt(workbook.worksheets.getItem(sheet), rectangleAddress(area));

function write(context: Excel.RequestContext, blocks: readonly Block[]): void {
  for (const each of blocks) {
    const range = rangeOf(context, each);
    range.formulas = each.entries;
    if (each.formats) range.numberFormat = each.formats;
  }
}

async function remembered(context: Excel.RequestContext, blocks: readonly Block[]): Promise<Block[]> {
  const ranges = blocks.map((each) => rangeOf(context, each).load("values,formulas,valueTypes,numberFormat"));
  await context.sync();
  return blocks.map((each, index) => {
    const range = ranges[index]!;
    return { ...each, entries: entriesOf(range), formats: range.numberFormat as string[][] };
  });
}

/** What would have to be typed to get what stands there: Excel gives a text without the apostrophe it needs. */
const entriesOf = ({ values, formulas, valueTypes }: Excel.Range): Entries =>
  formulas.map((line: Entries[number], down) =>
    line.map((formula, across) => {
      const value = values[down]![across] as Entries[number][number];
      const asIs = holdsFormula(formula, value) || valueTypes[down]![across] === "Error";
      return asIs ? formula : entryOf(value);
    }),
  );

/**
 * Gives the name of a sheet that is gone, which Excel does not say. In a run of its own, as what the failed one had
 * queued must not be sent again.
 */
async function putBack(
  blocks: readonly Block[],
  before: readonly Block[],
  reason: unknown,
): Promise<string | undefined> {
  try {
    return await Excel.run({ delayForCellEdit: true }, async (context) => {
      const names = new Set((await look(context)).sheetNames.map((name) => name.toLowerCase()));
      const isThere = ({ sheet }: Block) => names.has(sheet.toLowerCase());
      write(context, before.filter(isThere));
      await context.sync();
      return blocks.find((each) => !isThere(each))?.sheet;
    });
  } catch {
    if (before.length === 0) return undefined;
    const cells = before.map(({ sheet, area }) => `${quotedSheet(sheet)}!${rectangleAddress(area)}`);
    throw new Error(
      `The cells could not be changed: ${textOf(reason)} What was begun could not be taken back either: ` +
        `look through ${cells.join(", ")}.`,
      { cause: reason },
    );
  }
}

/** With a full stop, as another sentence follows. */
function textOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return /[.!?]$/.test(text) ? text : `${text}.`;
}

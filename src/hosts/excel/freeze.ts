/**
 * A sheet's results as values, its formulas as notes: nothing on it is calculated any more.
 */
import { rangeAt, rectangleAddress, type Rectangle } from "./areas";
import { block, gathered, setBlock } from "./contents";
import { noteFormulas, notesFor, takeNotesBack, type Noted } from "./freeze-notes";
import { read, slicesOf, type Result, type Shown } from "./freeze-read";
import type { Offered } from "./offered";
import { Requests } from "./requests";
import { SHEET_COST, type Pieces } from "./sizes";

/** Answers how many formulas there were. Notes may not be undoable, so it is no single step to undo. */
export async function freezeSheet(name: string, offered: Offered): Promise<number> {
  let before: readonly Result[] = [];
  let filled: readonly Shown[] = [];
  let notes: readonly Noted[] = [];
  try {
    return await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(name);
      const found = await read(context, sheet, name, offered);
      if (!found || found.results.length === 0) return 0;
      if (offered.notes) {
        // before any formula goes, so that none goes that is not kept
        const wanted = await notesFor(context, sheet, found.results);
        notes = wanted;
        await noteFormulas(context, sheet, wanted);
      }
      before = found.results;
      const requests = new Requests(context);
      await requests.queue(put(sheet, before, ({ entry }) => entry));
      const blank: Shown[] = [];
      for (const slice of slicesOf(found.area)) {
        const range = rangeAt(sheet, rectangleAddress(slice)).load("values");
        // the first of them with the last of what is put
        await requests.send();
        blank.push(...found.others.filter((cell) => isBlankIn(range, slice, cell)));
      }
      filled = blank;
      if (filled.length > 0) {
        await requests.queue(put(sheet, filled, ({ entry }) => entry));
        await requests.send();
      }
      return before.length;
    });
  } catch (error) {
    await putBack(name, { before, filled, notes }, error);
    throw error;
  }
}

/** What a formula elsewhere had put there goes with that formula. */
const isBlankIn = ({ values }: Excel.Range, { row, lastRow, column }: Rectangle, cell: Shown) =>
  cell.row >= row &&
  cell.row <= lastRow &&
  (values as unknown[][])[cell.row - row]![cell.column - column] === "";

function* put<Cell extends Shown>(
  sheet: Excel.Worksheet,
  cells: readonly Cell[],
  entry: (cell: Cell) => Shown["entry"],
  what: "formulas" | "numberFormat" = "formulas",
): Pieces {
  yield SHEET_COST;
  for (const { area, within } of gathered(cells)) {
    yield* setBlock(sheet, what, area, block<Shown["entry"], Cell>(area, within, "", entry));
  }
}

interface Done {
  readonly before: readonly Result[];
  readonly filled: readonly Shown[];
  readonly notes: readonly Noted[];
}

/** In a run of its own, as what the failed one had queued must not be sent again. */
async function putBack(name: string, { before, filled, notes }: Done, reason: unknown): Promise<void> {
  if (before.length + notes.length === 0) return;
  try {
    await Excel.run({ delayForCellEdit: true }, async (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
      const requests = new Requests(context);
      // in the way of the formulas that fill them
      await requests.queue(put(sheet, filled, () => ""));
      await requests.queue(put(sheet, before, ({ formula }) => formula));
      await requests.queue(put(sheet, before, ({ format }) => format, "numberFormat"));
      await requests.send();
      await takeNotesBack(context, sheet, notes);
    });
  } catch {
    const first = reason instanceof Error ? reason.message : String(reason);
    throw new Error(
      `Formulas of "${name}" may be values now, and could not be put back: undo it in Excel. ` +
        `The first error was: ${first}`,
      { cause: reason },
    );
  }
}

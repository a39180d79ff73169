/**
 * A sheet's results as values, its formulas as notes: nothing on it is calculated any more.
 */
import { cellAddress } from "../../workbook/data";
import { rangeAt, rectangleAddress, untracked, type Rectangle } from "./areas";
import { block, entryOf, gathered, holdsFormula } from "./contents";
import type { Offered } from "./offered";
import { NOTE_BYTES, Requests } from "./requests";

/** A cell and what would have to be typed to get what it shows. */
interface Shown {
  readonly row: number;
  readonly column: number;
  readonly entry: string | number | boolean;
}
interface Result extends Shown {
  readonly formula: string;
  /** Excel lends a formula that is typed the format of what it reads. */
  readonly format: string;
}
interface Found {
  readonly area: Rectangle;
  readonly results: readonly Result[];
  /** Cells without a formula of their own. */
  readonly others: readonly Shown[];
}

/** What Excel shows while a function has not answered yet. */
const WAITING = /^#(BUSY|GETTING_DATA|CONNECT)!?$/;

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
        await addNotes(context, sheet, wanted);
      }
      before = found.results;
      put(sheet, before, ({ entry }) => entry);
      const after = rangeAt(sheet, rectangleAddress(found.area)).load("values");
      await context.sync();
      filled = found.others.filter(({ row, column }) => isBlankIn(after, found.area, row, column));
      if (filled.length > 0) {
        put(sheet, filled, ({ entry }) => entry);
        await context.sync();
      }
      return before.length;
    });
  } catch (error) {
    await putBack(name, { before, filled, notes }, error);
    throw error;
  }
}

/** What a formula elsewhere had put there goes with that formula. */
const isBlankIn = ({ values }: Excel.Range, area: Rectangle, row: number, column: number) =>
  (values as unknown[][])[row - area.row]![column - area.column] === "";

async function read(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  name: string,
  offered: Offered,
): Promise<Found | undefined> {
  const used = untracked(sheet.getUsedRangeOrNullObject(true));
  used.load("values,formulas,valueTypes,numberFormat,rowIndex,columnIndex");
  const protection = offered.protection ? sheet.protection.load("protected") : undefined;
  const { application } = context;
  application.load("calculationMode");
  await context.sync();
  if (sheet.isNullObject) throw new Error(`There is no sheet named "${name}" any more; nothing was changed.`);
  if (protection?.protected) {
    throw new Error(`"${name}" is protected; nothing was changed. Take its protection off first.`);
  }
  if (application.calculationMode === "Manual") {
    throw new Error(
      "This workbook is calculated by hand, so results may be old; nothing was changed. Set it to calculate by itself first.",
    );
  }
  if (used.isNullObject) return undefined;
  const found = foundIn(used);
  const waiting = found.results.find(({ entry }) => WAITING.test(String(entry)));
  if (!waiting) return found;
  const at = cellAddress(waiting.row, waiting.column);
  throw new Error(`${at} is still being calculated; nothing was changed. Wait until it shows its result.`);
}

function put<Cell extends Shown>(
  sheet: Excel.Worksheet,
  cells: readonly Cell[],
  entry: (cell: Cell) => Shown["entry"],
): void {
  for (const { area, within } of gathered(cells)) {
    rangeAt(sheet, rectangleAddress(area)).formulas = block<Shown["entry"], Cell>(area, within, "", entry);
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
      // in the way of the formulas that fill them
      put(sheet, filled, () => "");
      put(sheet, before, ({ formula }) => formula);
      for (const { area, within } of gathered(before)) {
        rangeAt(sheet, rectangleAddress(area)).numberFormat = block<string, Result>(
          area,
          within,
          "",
          ({ format }) => format,
        );
      }
      await context.sync();
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

function foundIn(used: Excel.Range): Found {
  const { formulas, valueTypes, numberFormat, rowIndex, columnIndex } = used;
  const values = used.values as Shown["entry"][][];
  const results: Result[] = [];
  const others: Shown[] = [];
  values.forEach((line, down) =>
    line.forEach((value, across) => {
      const formula: unknown = formulas[down]![across];
      // an error stays the error that it is
      const entry = valueTypes[down]![across] === "Error" ? value : entryOf(value);
      const shown = { row: rowIndex + down, column: columnIndex + across, entry };
      if (holdsFormula(formula, value)) {
        results.push({ ...shown, formula: String(formula), format: String(numberFormat[down]![across]) });
      } else if (value !== "") others.push(shown);
    }),
  );
  const [lastRow, lastColumn] = [rowIndex + values.length - 1, columnIndex + values[0]!.length - 1];
  return { area: { row: rowIndex, column: columnIndex, lastRow, lastColumn }, results, others };
}

/** A note that is to be added; `there`: what a note on the cell says already. */
interface Noted {
  readonly address: string;
  readonly formula: string;
  readonly there: string | undefined;
}

async function notesFor(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  results: readonly Result[],
): Promise<Noted[]> {
  const all = results.map(({ row, column, formula }) => {
    const address = cellAddress(row, column);
    return { address, formula, note: sheet.notes.getItemOrNullObject(address).load("content") };
  });
  await context.sync();
  return all.map(({ address, formula, note }) => ({
    address,
    formula,
    there: note.isNullObject ? undefined : note.content,
  }));
}

/** A note that is there already keeps its text. */
async function addNotes(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  notes: readonly Noted[],
): Promise<void> {
  const requests = new Requests(context);
  for (const { address, formula, there } of notes) {
    await requests.makeRoom(NOTE_BYTES + formula.length);
    if (there === undefined) sheet.notes.add(address, formula);
    else sheet.notes.getItem(address).content = `${there}\n${formula}`;
  }
  await requests.send();
}

async function takeNotesBack(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  notes: readonly Noted[],
): Promise<void> {
  const found = notes.map((noted) => ({ ...noted, note: sheet.notes.getItemOrNullObject(noted.address) }));
  for (const { note, there } of found) {
    if (there === undefined) note.delete();
    else note.content = there;
  }
  if (found.length > 0) await context.sync();
}

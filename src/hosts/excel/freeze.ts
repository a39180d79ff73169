/**
 * A sheet's results as values, its formulas as notes: nothing on it is calculated any more.
 */
import { cellAddress } from "../../workbook/data";
import { rangeAt, rectangleAddress, untracked } from "./areas";
import { block, entryOf, gathered, holdsFormula } from "./contents";
import type { Offered } from "./offered";

interface Result {
  readonly row: number;
  readonly column: number;
  readonly entry: string | number | boolean;
  readonly formula: string;
  /** Excel lends a formula that is typed the format of what it reads. */
  readonly format: string;
}

/** What Excel shows while a function has not answered yet. */
const WAITING = /^#(BUSY|GETTING_DATA|CONNECT)!?$/;

/** Answers how many formulas there were. Notes may not be undoable, so it is no single step to undo. */
export async function freezeSheet(name: string, offered: Offered): Promise<number> {
  let before: readonly Result[] = [];
  try {
    return await Excel.run(async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject(name);
      const results = await read(context, sheet, name);
      before = results;
      put(sheet, results, ({ entry }) => entry);
      await context.sync();
      if (offered.notes) await addNotes(context, sheet, results);
      return results.length;
    });
  } catch (error) {
    await putBack(name, before, error);
    throw error;
  }
}

async function read(context: Excel.RequestContext, sheet: Excel.Worksheet, name: string): Promise<Result[]> {
  const used = untracked(sheet.getUsedRangeOrNullObject(true));
  used.load("values,formulas,valueTypes,numberFormat,rowIndex,columnIndex");
  await context.sync();
  if (sheet.isNullObject) throw new Error(`There is no sheet named "${name}" any more; nothing was changed.`);
  const results = used.isNullObject ? [] : resultsOf(used);
  const waiting = results.find(({ entry }) => WAITING.test(String(entry)));
  if (!waiting) return results;
  const at = cellAddress(waiting.row, waiting.column);
  throw new Error(`${at} is still being calculated; nothing was changed. Wait until it shows its result.`);
}

function put(
  sheet: Excel.Worksheet,
  results: readonly Result[],
  entry: (result: Result) => Result["entry"],
): void {
  for (const { area, within } of gathered(results)) {
    rangeAt(sheet, rectangleAddress(area)).formulas = block<Result["entry"], Result>(area, within, "", entry);
  }
}

/** In a run of its own, as what the failed one had queued must not be sent again. */
async function putBack(name: string, before: readonly Result[], reason: unknown): Promise<void> {
  if (before.length === 0) return;
  try {
    await Excel.run({ delayForCellEdit: true }, async (context) => {
      const sheet = context.workbook.worksheets.getItem(name);
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

function resultsOf(used: Excel.Range): Result[] {
  const { values, formulas, valueTypes, numberFormat, rowIndex, columnIndex } = used;
  return (formulas as unknown[][]).flatMap((line, down) =>
    line.flatMap((formula, across): Result[] => {
      const value = values[down]![across] as Result["entry"];
      if (!holdsFormula(formula, value)) return [];
      // an error stays the error that it is
      const entry = valueTypes[down]![across] === "Error" ? value : entryOf(value);
      const format = String(numberFormat[down]![across]);
      return [
        { row: rowIndex + down, column: columnIndex + across, entry, formula: String(formula), format },
      ];
    }),
  );
}

/** A note that is there already keeps its text. What Excel refuses here leaves the values as they are. */
async function addNotes(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  results: readonly Result[],
): Promise<void> {
  try {
    const there = results.map(({ row, column }) =>
      sheet.notes.getItemOrNullObject(cellAddress(row, column)).load("content"),
    );
    await context.sync();
    for (const [index, { row, column, formula }] of results.entries()) {
      const note = there[index]!;
      if (note.isNullObject) sheet.notes.add(cellAddress(row, column), formula);
      else note.content = `${note.content}\n${formula}`;
    }
    await context.sync();
  } catch {
    // the values stand, and the sheet says nothing of notes
  }
}

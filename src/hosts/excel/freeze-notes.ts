/**
 * The formulas of a sheet as notes on their cells, for a sheet that nothing calculates any more.
 */
import { cellAddress } from "../../workbook/data";
import { Requests } from "./requests";
import { costOf } from "./sizes";

/** A note that is to be added; `there`: what a note on the cell says already. */
export interface Noted {
  readonly address: string;
  readonly formula: string;
  readonly there: string | undefined;
}

interface Formula {
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

/** An answer holds at most 5 MB too, so a question leaves room for what each note may say. */
const ANSWER_BYTES = 2_000;

export async function notesFor(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  formulas: readonly Formula[],
): Promise<Noted[]> {
  const requests = new Requests(context);
  const { notes } = sheet;
  const all = [];
  for (const { row, column, formula } of formulas) {
    const address = cellAddress(row, column);
    await requests.makeRoom(ANSWER_BYTES + costOf(1, 1, address, "content"));
    all.push({ address, formula, note: notes.getItemOrNullObject(address).load("content") });
  }
  await requests.send();
  return all.map(({ address, formula, note }) => ({
    address,
    formula,
    there: note.isNullObject ? undefined : note.content,
  }));
}

/** A note that is there already keeps its text. */
export async function noteFormulas(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  noted: readonly Noted[],
): Promise<void> {
  const requests = new Requests(context);
  const { notes } = sheet;
  for (const { address, formula, there } of noted) {
    const text = there === undefined ? formula : `${there}\n${formula}`;
    await requests.makeRoom(costOf(1, 1, address, text));
    if (there === undefined) notes.add(address, text);
    else notes.getItem(address).content = text;
  }
  await requests.send();
}

export async function takeNotesBack(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  noted: readonly Noted[],
): Promise<void> {
  const requests = new Requests(context);
  const { notes } = sheet;
  for (const { address, there } of noted) {
    await requests.makeRoom(costOf(1, 1, address, there ?? ""));
    const note = notes.getItemOrNullObject(address);
    if (there === undefined) note.delete();
    else note.content = there;
  }
  if (noted.length > 0) await requests.send();
}

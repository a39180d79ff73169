/**
 * New sheets: look, begin, write, finish, each in one round trip unless it is too large for a request.
 */
import type { SheetData } from "../../workbook/data";
import { differingCells, laterRules, type Making } from "./alike";
import { writeCells } from "./contents";
import { copyName, draftNames, removeSheets } from "./drafts";
import { look, type Look } from "./look";
import type { Progress } from "../host";
import type { Offered } from "./offered";
import { addExtras } from "./extras";
import { Requests } from "./requests";
import { writeSheet } from "./sheet";
import { costOf, SHEET_COST } from "./sizes";
import { addValidations } from "./validations";

interface Begun {
  readonly sheet: Excel.Worksheet;
  readonly data: SheetData;
  readonly making: Making;
}

interface Work {
  readonly context: Excel.RequestContext;
  readonly found: Look;
  readonly offered: Offered;
  readonly progress: Progress | undefined;
}

export async function addSheets(
  sheets: readonly SheetData[],
  making: readonly Making[],
  offered: Offered,
  options: Excel.RunOptions,
  progress?: Progress,
): Promise<readonly string[]> {
  if (sheets.length === 0) return [];
  // names or ids by which the sheets that this call adds, and no others, are known
  let added: readonly string[] = [];
  try {
    return await Excel.run(options, async (context) => {
      const found = await look(context);
      refuseTaken(sheets, found.sheetNames);

      const drafts = draftNames(sheets.length);
      added = drafts.flatMap((name, index) =>
        making[index]?.kind === "model" ? [name, copyName(name)] : [name],
      );
      const work = { context, found, offered, progress };
      const all = await begin(work, sheets, making, drafts);
      added = all.map(({ sheet }) => sheet.id);
      await write(work, all);
      return await addExtras(work, all);
    });
  } catch (error) {
    await removeSheets(added, sheets, error);
    throw error;
  }
}

/** Adds the sheets in their order. A model is written before it is copied. */
async function begin(
  { context, found, offered, progress }: Work,
  sheets: readonly SheetData[],
  makings: readonly Making[],
  drafts: readonly string[],
): Promise<Begun[]> {
  const writes = makings.some(({ kind }) => kind === "model");
  const first = () => {
    if (writes) suspend(context, found, offered);
  };
  const requests = new Requests(context, first, progress?.signal);
  const all: Begun[] = [];
  for (const [index, data] of sheets.entries()) {
    const [making, name] = [makings[index]!, drafts[index]!];
    const model = making.kind === "copy" ? all[making.of] : undefined;
    // added or copied, named, and its id asked for
    await requests.makeRoom(costOf(1, 2, name));
    const sheet = model ? model.sheet.copy("End") : context.workbook.worksheets.add(name);
    if (model) sheet.name = name;
    if (making.kind === "model") await requests.queue(writeSheet(sheet, { ...making.start, name }, offered));
    all.push({ sheet: sheet.load("id"), data, making });
  }
  await requests.send();
  return all;
}

async function write({ context, found, offered, progress }: Work, all: readonly Begun[]): Promise<void> {
  const requests = new Requests(context, () => suspend(context, found, offered), progress?.signal);
  // all before any is written: formulas may read other new sheets
  for (const { sheet, data } of all) {
    await requests.makeRoom(SHEET_COST + costOf(0, 1, data.name));
    sheet.name = data.name;
  }
  for (const [position, { sheet }] of all.filter(({ data }) => data.first).entries()) {
    await requests.makeRoom(SHEET_COST + costOf(0, 1, position));
    sheet.position = position;
  }
  for (const [done, { sheet, data, making }] of all.entries()) {
    progress?.tell(done, all.length);
    if (making.kind === "alone") {
      await requests.queue(writeSheet(sheet, data, offered));
      continue;
    }
    // what a model and its copies still lack
    const [cells, validations] = [differingCells(making.start, data), laterRules(data)];
    await requests.makeRoom(SHEET_COST);
    await requests.queue(writeCells(sheet, cells));
    if (offered.validations) await requests.queue(addValidations(sheet, { ...data, validations }, offered));
  }
  if (offered.calculation && found.calculatesByHand) {
    for (const { sheet } of all) {
      await requests.makeRoom(SHEET_COST + costOf(0, 1, true));
      sheet.calculate(true);
    }
  }
  await requests.makeRoom(SHEET_COST + costOf(0, 1));
  all[0]!.sheet.activate();
  await requests.send();
  progress?.tell(all.length, all.length);
}

function suspend({ application }: Excel.RequestContext, { calculatesByHand }: Look, offered: Offered): void {
  if (offered.screenUpdating) application.suspendScreenUpdatingUntilNextSync();
  // where the user calculates by hand nothing would calculate the sheets afterwards
  if (offered.calculation && !calculatesByHand) application.suspendApiCalculationUntilNextSync();
}

function refuseTaken(sheets: readonly SheetData[], sheetNames: readonly string[]): void {
  const taken = new Set(sheetNames.map((name) => name.toLowerCase()));
  for (const { name } of sheets) {
    if (taken.has(name.toLowerCase())) {
      throw new Error(
        `There already is a sheet named "${name}"; nothing was written. ` +
          "Rename or delete that sheet, or give the batch another name.",
      );
    }
    taken.add(name.toLowerCase());
  }
}

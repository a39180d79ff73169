/**
 * New sheets, in four round trips however many there are: look, begin, write, finish.
 */
import type { SheetData } from "../../workbook/data";
import { differingCells, laterRules, type Making } from "./alike";
import { addCharts } from "./charts";
import { writeCells } from "./contents";
import { copyName, draftNames, removeSheets } from "./drafts";
import { look, type Look } from "./look";
import type { Offered } from "./offered";
import { ADDING_BYTES, PAGE_BYTES, Requests, chartBytes, differenceBytes, writingBytes } from "./requests";
import { layOutPages, writeSheet } from "./sheet";
import { isUndoRefused } from "./undo-groups";
import { addValidations } from "./validations";

interface Begun {
  readonly sheet: Excel.Worksheet;
  readonly data: SheetData;
  readonly making: Making;
}

export async function addSheets(
  sheets: readonly SheetData[],
  making: readonly Making[],
  offered: Offered,
  options: Excel.RunOptions,
): Promise<void> {
  if (sheets.length === 0) return;
  // names or ids by which the sheets that this call adds, and no others, are known
  let added: readonly string[] = [];
  try {
    await Excel.run(options, async (context) => {
      const found = await look(context);
      refuseTaken(sheets, found.sheetNames);

      const drafts = draftNames(sheets.length);
      added = drafts.flatMap((name, index) =>
        making[index]?.kind === "model" ? [name, copyName(name)] : [name],
      );
      const all = await begin(context, sheets, making, drafts, found, offered);
      added = all.map(({ sheet }) => sheet.id);
      await write(context, all, found, offered);
      await finish(context, all, offered);
    });
  } catch (error) {
    await removeSheets(added, sheets, error);
    throw error;
  }
}

/** Adds the sheets in their order. A model is written before it is copied. */
async function begin(
  context: Excel.RequestContext,
  sheets: readonly SheetData[],
  makings: readonly Making[],
  drafts: readonly string[],
  found: Look,
  offered: Offered,
): Promise<Begun[]> {
  const writes = makings.some(({ kind }) => kind === "model");
  const requests = new Requests(context, () => {
    if (writes) suspend(context, found, offered);
  });
  const all: Begun[] = [];
  for (const [index, data] of sheets.entries()) {
    const [making, name] = [makings[index]!, drafts[index]!];
    const model = making.kind === "copy" ? all[making.of] : undefined;
    await requests.makeRoom(making.kind === "model" ? writingBytes(making.start) : ADDING_BYTES);
    const sheet = model ? model.sheet.copy("End") : context.workbook.worksheets.add(name);
    if (model) sheet.name = name;
    if (making.kind === "model") writeSheet(sheet, { ...making.start, name }, offered);
    all.push({ sheet: sheet.load("id"), data, making });
  }
  await requests.send();
  return all;
}

async function write(
  context: Excel.RequestContext,
  all: readonly Begun[],
  found: Look,
  offered: Offered,
): Promise<void> {
  const requests = new Requests(context, () => suspend(context, found, offered));
  await requests.makeRoom(ADDING_BYTES * all.length);
  // all before any is written: formulas may read other new sheets
  for (const { sheet, data } of all) sheet.name = data.name;
  all.filter(({ data }) => data.first).forEach(({ sheet }, position) => (sheet.position = position));
  for (const { sheet, data, making } of all) {
    if (making.kind === "alone") {
      await requests.makeRoom(writingBytes(data));
      writeSheet(sheet, data, offered);
      continue;
    }
    // what a model and its copies still lack
    const [cells, validations] = [differingCells(making.start, data), laterRules(data)];
    await requests.makeRoom(differenceBytes(cells, validations));
    writeCells(sheet, cells);
    if (offered.validations) addValidations(sheet, { ...data, validations }, offered);
  }
  if (offered.calculation && found.calculatesByHand) for (const { sheet } of all) sheet.calculate(true);
  all[0]?.sheet.activate();
  await requests.send();
}

/**
 * A round trip of its own for what a plan can do without: charts, and print settings, which a machine without a
 * printer refuses. By then the cells are calculated, so that Excel takes a chart's numbers for numbers.
 */
async function finish(context: Excel.RequestContext, all: readonly Begun[], offered: Offered): Promise<void> {
  if (!offered.charts && !offered.printing) return;
  const requests = new Requests(context);
  try {
    for (const { sheet, data } of offered.charts ? all : []) {
      await requests.makeRoom(chartBytes(data));
      addCharts(sheet, data);
    }
    for (const { sheet, data } of offered.printing ? all : []) {
      await requests.makeRoom(PAGE_BYTES);
      layOutPages(sheet, data);
    }
    await requests.send();
  } catch (error) {
    // refused for the undo group alone, it is all done once more without
    if (isUndoRefused(error)) throw error;
  }
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

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
      suspend(context, found, offered);
      const all = begin(context, sheets, making, drafts, offered);
      await context.sync();
      added = all.map(({ sheet }) => sheet.id);

      suspend(context, found, offered);
      write(all, found, offered);
      await context.sync();
      await finish(context, all, offered);
    });
  } catch (error) {
    await removeSheets(added, sheets, error);
    throw error;
  }
}

function suspend({ application }: Excel.RequestContext, { calculatesByHand }: Look, offered: Offered): void {
  if (offered.screenUpdating) application.suspendScreenUpdatingUntilNextSync();
  // where the user calculates by hand nothing would calculate the sheets afterwards
  if (offered.calculation && !calculatesByHand) application.suspendApiCalculationUntilNextSync();
}

/** Adds the sheets in their order. A model is written before it is copied. */
function begin(
  { workbook }: Excel.RequestContext,
  sheets: readonly SheetData[],
  makings: readonly Making[],
  drafts: readonly string[],
  offered: Offered,
): Begun[] {
  const all: Begun[] = [];
  sheets.forEach((data, index) => {
    const [making, name] = [makings[index]!, drafts[index]!];
    const model = making.kind === "copy" ? all[making.of] : undefined;
    const sheet = model ? model.sheet.copy("End") : workbook.worksheets.add(name);
    if (model) sheet.name = name;
    if (making.kind === "model") writeSheet(sheet, { ...making.start, name }, offered);
    all.push({ sheet: sheet.load("id"), data, making });
  });
  return all;
}

function write(all: readonly Begun[], { calculatesByHand }: Look, offered: Offered): void {
  // all before any is written: formulas may read other new sheets
  for (const { sheet, data } of all) sheet.name = data.name;
  all.filter(({ data }) => data.first).forEach(({ sheet }, position) => (sheet.position = position));
  for (const { sheet, data, making } of all) {
    if (making.kind === "alone") writeSheet(sheet, data, offered);
    else writeRest(sheet, data, making.start, offered);
  }
  if (offered.calculation && calculatesByHand) for (const { sheet } of all) sheet.calculate(true);
  all[0]?.sheet.activate();
}

/** What a model and its copies still lack. */
function writeRest(sheet: Excel.Worksheet, data: SheetData, start: SheetData, offered: Offered): void {
  writeCells(sheet, differingCells(start, data));
  if (offered.validations) addValidations(sheet, { ...data, validations: laterRules(data) }, offered);
}

/**
 * A round trip of its own for what a plan can do without: charts, and print settings, which a machine without a
 * printer refuses. By then the cells are calculated, so that Excel takes a chart's numbers for numbers.
 */
async function finish(context: Excel.RequestContext, all: readonly Begun[], offered: Offered): Promise<void> {
  if (offered.charts) for (const { sheet, data } of all) addCharts(sheet, data);
  if (offered.printing) for (const { sheet, data } of all) layOutPages(sheet, data);
  if (!offered.charts && !offered.printing) return;
  await context.sync().catch((error: unknown) => {
    // refused for the undo group alone, it is all done once more without
    if (isUndoRefused(error)) throw error;
  });
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

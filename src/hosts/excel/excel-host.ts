/**
 * Excel as a host: new sheets, in four round trips however many there are.
 */
import type { SheetData, WorkbookData } from "../../workbook/data";
import type { Host } from "../host";
import { askOffice, offeredBy, type IsSetSupported, type Offered } from "./offered";
import { layOutPages, writeSheet } from "./sheet";

export function excelHost(isSetSupported: IsSetSupported = askOffice): Host {
  return {
    name: "this workbook",
    sheetNames: () => Excel.run(async (context) => (await look(context)).sheetNames),
    write: ({ sheets }: WorkbookData) => addSheets(sheets, offeredBy(isSetSupported)),
  };
}

async function addSheets(sheets: readonly SheetData[], offered: Offered): Promise<void> {
  if (sheets.length === 0) return;
  // names or ids by which the sheets that this call adds, and no others, are known
  let added: readonly string[] = [];
  try {
    await Excel.run(offered.undoGroups ? { mergeUndoGroup: true } : {}, async (context) => {
      const { sheetNames, calculatesByHand } = await look(context);
      refuseTaken(sheets, sheetNames);

      // Under its final name a sheet that someone else makes meanwhile could be taken for ours and deleted,
      // so ours begin under names that nobody uses and are renamed once their ids are known.
      added = passingNames(sheets.length);
      const begun = added.map((name) => context.workbook.worksheets.add(name).load("id"));
      await context.sync();
      added = begun.map((sheet) => sheet.id);

      if (offered.screenUpdating) context.application.suspendScreenUpdatingUntilNextSync();
      // where the user calculates by hand nothing would calculate the sheets afterwards
      if (offered.calculation && !calculatesByHand) context.application.suspendApiCalculationUntilNextSync();
      const pairs = begun.map((sheet, index) => ({ sheet, data: sheets[index]! }));
      // all before any is written: formulas may read other new sheets
      for (const { sheet, data } of pairs) sheet.name = data.name;
      for (const { sheet, data } of pairs) writeSheet(sheet, data, offered);
      if (offered.calculation && calculatesByHand) begun.forEach((sheet) => sheet.calculate(true));
      begun[0]?.activate();
      await context.sync();
      if (offered.printing) await layOutForPrinting(context, pairs);
    });
  } catch (error) {
    await removeSheets(added, sheets, error);
    throw error;
  }
}

interface Pair {
  readonly sheet: Excel.Worksheet;
  readonly data: SheetData;
}

/**
 * A round trip of its own: a machine without a printer refuses print settings, and a plan that cannot be printed
 * there is still a plan.
 */
async function layOutForPrinting(context: Excel.RequestContext, pairs: readonly Pair[]): Promise<void> {
  for (const { sheet, data } of pairs) layOutPages(sheet, data);
  await context.sync().catch(() => undefined);
}

async function look(context: Excel.RequestContext) {
  const worksheets = context.workbook.worksheets.load("items/name");
  const application = context.application.load("calculationMode");
  await context.sync();
  return {
    sheetNames: worksheets.items.map((sheet) => sheet.name),
    calculatesByHand: application.calculationMode === "Manual",
  };
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

const DRAFT = "Mousse draft";

function passingNames(count: number): string[] {
  const mark = Math.random().toString(36).slice(2, 12);
  return Array.from({ length: count }, (_, index) => `${DRAFT} ${mark} ${index + 1}`);
}

/** In a run of its own: what the failed one had queued must not be sent again. */
async function removeSheets(
  added: readonly string[],
  sheets: readonly SheetData[],
  reason: unknown,
): Promise<void> {
  if (added.length === 0) return;
  try {
    // the user may have begun to type, which would make Excel refuse
    await Excel.run({ delayForCellEdit: true }, async (context) => {
      for (const key of added) context.workbook.worksheets.getItemOrNullObject(key).delete();
      await context.sync();
    });
  } catch {
    const names = sheets.map(({ name }) => `"${name}"`).join(", ");
    const first = reason instanceof Error ? reason.message : String(reason);
    const message =
      `What was begun could not be removed: delete the unfinished sheets ${names}, ` +
      `or those named "${DRAFT} …", by hand. The first error was: ${first}`;
    throw new Error(message, { cause: reason });
  }
}

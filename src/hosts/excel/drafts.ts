/**
 * Sheets that are being made. Under its final name a sheet that someone else makes meanwhile could be taken for
 * ours and deleted, so ours begin under names that nobody uses and are renamed once their ids are known.
 */
import type { SheetData } from "../../workbook/data";

const DRAFT = "Mousse draft";

/** With the number that Excel adds to a copy's, not longer than the 31 characters that a sheet's name may have. */
export function draftNames(count: number): string[] {
  const mark = Math.random().toString(36).slice(2, 12);
  return Array.from({ length: count }, (_, index) => `${DRAFT} ${mark} ${index + 1}`);
}

/** What Excel calls a copy until it is renamed. */
export const copyName = (name: string) => `${name} (2)`;

/** By names or ids; in a run of its own, as what the failed one had queued must not be sent again. */
export async function removeSheets(
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

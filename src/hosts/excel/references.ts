/**
 * What stands in cells that a formula names: "B7", "'Plan · Brut'!$B$7:$B$9", or a defined name.
 */
import { columnOf } from "../reference";
import { rangeAt, untracked } from "./areas";

const REFERENCE = /^(?:('(?:[^']|'')+'|[^'!]+)!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)$/i;

const [ROWS, COLUMNS] = [1_048_576, 16_384];

/** Row by row; a blank cell is null, and undefined stands for what is no range, or has an error in it. */
export const valuesOf = (
  sheet: string,
  references: readonly string[],
): Promise<(readonly (readonly unknown[])[] | undefined)[]> =>
  Excel.run(async (context) => {
    const asked = references.map((reference) => rangesOf(context, sheet, reference));
    for (const range of asked.flat()) range.load("values,valueTypes");
    await context.sync();
    return asked.map((ranges) => {
      const found = ranges.find(({ isNullObject }) => !isNullObject);
      return found && cellsOf(found);
    });
  });

/** The first that is there counts: a name of the sheet goes before the workbook's. */
function rangesOf({ workbook }: Excel.RequestContext, sheet: string, reference: string): Excel.Range[] {
  const [, elsewhere, address] = REFERENCE.exec(reference) ?? [];
  const named = elsewhere?.replace(/^'|'$/g, "").replaceAll("''", "'");
  const worksheet = workbook.worksheets.getItemOrNullObject(named ?? sheet);
  if (address !== undefined && isAddress(address)) return [rangeAt(worksheet, address)];
  return [worksheet.names, workbook.names].map((names) =>
    untracked(names.getItemOrNullObject(reference).getRangeOrNullObject()),
  );
}

/** "YTD2026" is a name: its column would be beyond the last. */
const isAddress = (text: string) =>
  text.split(":").every((corner) => {
    const [, letters = "", digits] = /^\$?([A-Z]+)\$?(\d+)$/i.exec(corner) ?? [];
    const row = Number(digits);
    return columnOf(letters.toUpperCase()) < COLUMNS && row >= 1 && row <= ROWS;
  });

function cellsOf({ values, valueTypes }: Excel.Range): unknown[][] | undefined {
  const types = valueTypes as string[][];
  if (types.flat().includes("Error")) return undefined;
  return (values as unknown[][]).map((line, down) =>
    line.map((value, across) => (types[down]![across] === "Empty" ? null : value)),
  );
}

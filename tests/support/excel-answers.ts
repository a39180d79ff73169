/**
 * What Excel answers when an object is loaded: only what was asked for, so that the proxies refuse to give the rest.
 */
import { cellAddress } from "../../src/workbook/data";
import { nameValue, quoted, type Block, type Content, type Sheet } from "./excel-workbook";

type Answer = Readonly<Record<string, unknown>>;

/** `select`: "values", or "items/name" of a collection. */
export function selected(answer: Answer, select: readonly string[] | undefined): Answer {
  if (!select) return answer;
  const asked = select.map((each) => each.split("/").at(-1)!.trim().toLowerCase());
  const of = (object: Answer) =>
    Object.fromEntries(
      // an object is known by its id, whatever was asked for
      Object.entries(object).filter(([name]) => name === "Id" || asked.includes(name.toLowerCase())),
    );
  const items = answer._Items as readonly Answer[] | undefined;
  return items ? { _Items: items.map(of) } : of(answer);
}

export const namesOn = (sheet: Sheet): Answer => ({
  _Items: sheet.names.map((each) => ({
    Name: each.name,
    Scope: each.scope ?? "Worksheet",
    Value: nameValue(sheet, each),
  })),
});

/** Of a range: a text's apostrophe is in neither values nor formulas. */
export function cellsAt(sheet: Sheet, { row, column, lastRow, lastColumn }: Block): Answer {
  const grid = <Entry>(entry: (content: Content | undefined, place: string) => Entry) =>
    Array.from({ length: lastRow - row + 1 }, (_, down) =>
      Array.from({ length: lastColumn - column + 1 }, (__, across) => {
        const place = `${row + down} ${column + across}`;
        return entry(sheet.cells.get(place), place);
      }),
    );
  const last = row === lastRow && column === lastColumn ? "" : `:${cellAddress(lastRow, lastColumn)}`;
  return {
    Address: `${plainOrQuoted(sheet.name)}!${cellAddress(row, column)}${last}`,
    RowIndex: row,
    ColumnIndex: column,
    RowCount: lastRow - row + 1,
    ColumnCount: lastColumn - column + 1,
    Values: grid((content) => content?.value ?? ""),
    Formulas: grid((content) => content?.formula ?? content?.value ?? ""),
    ValueTypes: grid(typeOf),
    NumberFormat: grid((_, place) => sheet.formats.get(place) ?? "General"),
  };
}

const plainOrQuoted = (name: string) => (/^[A-Za-z_]\w*$/.test(name) ? name : quoted(name));

const TYPES = { string: "String", number: "Double", boolean: "Boolean" } as const;

function typeOf(content: Content | undefined): string {
  if (content === undefined) return "Empty";
  return content.error ? "Error" : TYPES[typeof content.value as keyof typeof TYPES];
}

/**
 * The sheets that have a certain name, with all their named cells. Three steps, each one round trip for as many sheets
 * as one answer can hold: Excel on the web gives at most 5 MB, and the names of eighty plans are some 3 MB.
 */
import type { NamedCell, NamedSheet } from "../host";
import { placeIn, type Place } from "../reference";
import { rangeAt, rectangleAddress, rectangles, type Rectangle } from "./areas";
import { holdsFormula } from "./contents";

const SHEETS_AT_ONCE = 80;

interface Found {
  readonly id: string;
  readonly name: string;
}
interface Named extends Found {
  readonly places: ReadonlyMap<string, Place>;
}

export async function namedSheets(wanted: string): Promise<NamedSheet[]> {
  const sheets = await Excel.run(async (context) => {
    const worksheets = context.workbook.worksheets.load("items/id,items/name");
    await context.sync();
    return worksheets.items.map(({ id, name }): Found => ({ id, name }));
  });
  const named = await inParts(sheets, withPlaces);
  return inParts(
    named.filter(({ places }) => places.has(wanted)),
    withCells,
  );
}

/** The parts at once: what takes time is the way to Excel and back. */
async function inParts<Item, Result>(
  items: readonly Item[],
  ask: (part: readonly Item[], context: Excel.RequestContext) => Promise<Result[]>,
): Promise<Result[]> {
  const parts = Array.from({ length: Math.ceil(items.length / SHEETS_AT_ONCE) }, (_, index) =>
    items.slice(index * SHEETS_AT_ONCE, (index + 1) * SHEETS_AT_ONCE),
  );
  const results = await Promise.all(parts.map((part) => Excel.run((context) => ask(part, context))));
  return results.flat();
}

async function withPlaces(sheets: readonly Found[], context: Excel.RequestContext): Promise<Named[]> {
  const asked = sheets.map((sheet) => ({
    sheet,
    names: context.workbook.worksheets.getItem(sheet.id).names.load("items/name,items/scope,items/value"),
  }));
  await context.sync();
  return asked.map(({ sheet, names }) => {
    const places = new Map<string, Place>();
    for (const { name, scope, value } of names.items) {
      // Excel on the web lists the workbook's names with every sheet's own
      const place = scope === "Worksheet" ? placeIn(sheet.name, value) : undefined;
      if (place) places.set(name, place);
    }
    return { ...sheet, places };
  });
}

async function withCells(sheets: readonly Named[], context: Excel.RequestContext): Promise<NamedSheet[]> {
  const asked = sheets.map(({ id, name, places }) => {
    const worksheet = context.workbook.worksheets.getItem(id);
    const blocks = rectangles(distinct([...places.values()])).map((block) => ({
      block,
      range: rangeAt(worksheet, rectangleAddress(block)).load("values,formulas,valueTypes"),
    }));
    return { name, places, blocks };
  });
  await context.sync();
  return asked.map(({ name, places, blocks }) => {
    const contents = new Map(blocks.flatMap(({ block, range }) => contentsOf(block, range)));
    const cells = new Map<string, NamedCell>();
    for (const [each, place] of places) {
      cells.set(each, { ...place, ...contents.get(keyOf(place))! });
    }
    return { name, cells };
  });
}

type Content = Pick<NamedCell, "value" | "calculated">;

function contentsOf(
  { row, column }: Rectangle,
  { values, formulas, valueTypes }: Excel.Range,
): [key: string, content: Content][] {
  return values.flatMap((line: unknown[], down) =>
    line.map((value, across): [string, Content] => {
      const calculated = holdsFormula(formulas[down]![across], value);
      const type = valueTypes[down]![across];
      const shown = type === "Error" || type === "Empty" ? null : (value as NamedCell["value"]);
      return [keyOf({ row: row + down, column: column + across }), { value: shown, calculated }];
    }),
  );
}

const keyOf = ({ row, column }: Place) => `${row} ${column}`;
/** A cell may have two names. */
const distinct = (places: readonly Place[]) => [
  ...new Map(places.map((each) => [keyOf(each), each])).values(),
];

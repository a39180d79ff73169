/**
 * The grid's sheets with the cells that have a name in them.
 */
import type { FUniver } from "@univerjs/core/facade";
import { IDefinedNamesService, type IDefinedNamesServiceParam } from "@univerjs/engine-formula";
import type { NamedCell, NamedSheet } from "../host";
import { placeIn } from "../reference";
import { injectorOf, type Book, type Worksheet } from "./book";
import { valueFromGrid } from "./from-grid";

export function namedSheets(api: FUniver, book: Book, wanted: string): NamedSheet[] {
  const bySheet = new Map<string, IDefinedNamesServiceParam[]>();
  const all = injectorOf(api).get(IDefinedNamesService).getDefinedNameMap(book.getId()) ?? {};
  for (const each of Object.values(all)) {
    const id = each.localSheetId ?? "";
    const names = bySheet.get(id);
    if (names) names.push(each);
    else bySheet.set(id, [each]);
  }
  return book.getSheets().flatMap((sheet): NamedSheet[] => {
    const names = bySheet.get(sheet.getSheetId()) ?? [];
    if (!names.some(({ name }) => name === wanted)) return [];
    const cells = namedCells(sheet.getSheet(), names);
    return cells.has(wanted) ? [{ name: sheet.getSheetName(), cells }] : [];
  });
}

function namedCells(
  sheet: Worksheet,
  names: readonly IDefinedNamesServiceParam[],
): ReadonlyMap<string, NamedCell> {
  const cells = new Map<string, NamedCell>();
  for (const { name, formulaOrRefString } of names) {
    const place = placeIn(sheet.getName(), formulaOrRefString);
    if (place) cells.set(name, { ...place, ...content(sheet, place.row, place.column) });
  }
  return cells;
}

function content(sheet: Worksheet, row: number, column: number): Pick<NamedCell, "value" | "calculated"> {
  const cell = sheet.getCellRaw(row, column) ?? {};
  // a formula filled down is kept only as "like that other cell"
  const calculated = Boolean(cell.f) || Boolean(cell.si);
  return { value: valueFromGrid(cell, calculated), calculated };
}

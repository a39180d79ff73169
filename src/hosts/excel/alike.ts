/**
 * Sheets of the same shape: the first of them is written in full, the others are made as copies of it in which only
 * what differs is written. A season has some two hundred plans, and Excel on the web takes 5 MB in one request
 * (learn.microsoft.com, "Resource limits and performance optimization for Office Add-ins").
 */
import { quotedSheet, type PlacedCell, type SheetData, type Validation } from "../../workbook/data";
import { groupedBy } from "./grouping";

/** How a sheet is made; `start` is what can be written before all new sheets have their names. */
export type Making =
  | { readonly kind: "alone" }
  | { readonly kind: "model"; readonly start: SheetData }
  | { readonly kind: "copy"; readonly start: SheetData; readonly of: number };

export function makings(sheets: readonly SheetData[], copies: boolean): Making[] {
  const all = sheets.map((): Making => ({ kind: "alone" }));
  if (!copies) return all;
  const names = sheets.map(({ name }) => name);
  // a shape is a long text: only those that differ are kept
  for (const [model, ...copies] of groupedBy([...sheets.keys()], (index) => shapeOf(sheets[index]!))) {
    if (copies.length === 0) continue;
    const start = startOf(sheets[model]!, names);
    all[model] = { kind: "model", start };
    for (const index of copies) all[index] = { kind: "copy", start, of: model };
  }
  return all;
}

/**
 * All that a copy takes over, as text: everything but what stands in the cells. What is added at the end
 * (extras.ts) and the place among the sheets are not in it, as they are set for each sheet by itself.
 */
export function shapeOf(sheet: SheetData): string {
  const {
    cells,
    columnWidths,
    rowHeights,
    merges,
    frozenRows,
    frozenColumns,
    names,
    validations,
    highlights,
    gridlines,
  } = sheet;
  const looks = cells.map(({ row, column, style, format }) => [row, column, style, format]);
  return JSON.stringify(
    [
      columnWidths,
      [...rowHeights],
      merges,
      [frozenRows, frozenColumns],
      names,
      validations,
      highlights,
      gridlines,
      looks,
    ],
    (key, value: unknown) => (key === "sheet" && value === sheet.name ? undefined : value),
  );
}

/** The cells of a sheet that do not hold what the same cells hold in another of its shape. */
export function differingCells(other: SheetData, sheet: SheetData): PlacedCell[] {
  return sheet.cells.filter((cell, index) => !sameContent(cell, other.cells[index]!));
}

/** A formula's cached value is never written. */
const sameContent = (one: PlacedCell, other: PlacedCell) =>
  one.formula === other.formula && (one.formula !== undefined || one.value === other.value);

/** Rules that name a sheet are not left to copying: each sheet gets its own once all have their names. */
export const laterRules = ({ validations }: SheetData): Validation[] => validations.filter(namesSheet);

const namesSheet = (rule: Validation) => rule.kind === "list" && rule.from !== undefined;

/** Without what reads one of the new sheets, itself included, by a name that it does not have yet. */
function startOf(sheet: SheetData, names: readonly string[]): SheetData {
  const references = names.map((name) => `${quotedSheet(name)}!`.toLowerCase());
  const waits = (formula: string) => {
    const text = formula.toLowerCase();
    return references.some((reference) => text.includes(reference));
  };
  return {
    ...sheet,
    cells: sheet.cells.map((cell) => (waits(cell.formula ?? "") ? blank(cell) : cell)),
    validations: sheet.validations.filter((rule) => !namesSheet(rule)),
  };
}

const blank = ({ row, column, style, format }: PlacedCell): PlacedCell => ({
  row,
  column,
  style,
  value: null,
  ...(format !== undefined && { format }),
});

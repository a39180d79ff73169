/**
 * What a path of the proxies leads to.
 */
import type { Workbook } from "./excel-batch";
import { blockOf, nameValue, same, type Block, type Name, type Sheet } from "./excel-workbook";

/** The chain of names, from the sheet where it passes through one. */
export interface Target {
  /** null: something was asked for that is not there. */
  readonly sheet?: Sheet | null;
  readonly chain: string;
  /** The cells, where it is a range. */
  readonly block?: Block;
  /** The address of the cell, where it is a note. */
  readonly note?: string;
  /** Its key, where it is a setting. */
  readonly setting?: string;
  /** What it stands for, where it is a name. */
  readonly reference?: string;
}

export const NOT_THERE: Target = { sheet: null, chain: "" };

export function named(names: readonly Name[], wanted: unknown, { sheet, chain }: Target): Target {
  const found = names.find(({ name }) => same(name, String(wanted)));
  if (!found) return NOT_THERE;
  const reference = sheet ? nameValue(sheet, found) : (found.value ?? "");
  return { ...(sheet && { sheet }), chain, reference };
}

/** The cells that a name stands for; a constant or a broken name has none. */
export function cellsOf(sheets: readonly Sheet[], { reference = "" }: Target): Target {
  const match = /^=?(?:'((?:[^']|'')+)'|([^'!#=]+))!([$A-Z0-9:]+)$/.exec(reference);
  const name = match?.[1]?.replaceAll("''", "'") ?? match?.[2];
  const sheet = sheets.find((each) => name !== undefined && same(each.name, name));
  return match && sheet ? { sheet, chain: "GetRangeOrNullObject()", block: blockOf(match[3]) } : NOT_THERE;
}

export function selectedCell({ sheets, selected }: Workbook): Target {
  const sheet = sheets.find(({ name }) => name === (selected?.sheet ?? sheets[0]!.name));
  // as where a chart is selected
  if (!sheet) throw new Error("no cell is selected");
  return { sheet, chain: "GetActiveCell()", block: blockOf(selected?.address ?? "A1") };
}

/** Round all cells that hold something. */
export function usedCells(sheet: Sheet): Target {
  const places = [...sheet.cells.keys()].map((key) => key.split(" ").map(Number));
  if (places.length === 0) return NOT_THERE;
  const [rows, columns] = [places.map(([row]) => row!), places.map(([, column]) => column!)];
  const block = {
    row: Math.min(...rows),
    column: Math.min(...columns),
    lastRow: Math.max(...rows),
    lastColumn: Math.max(...columns),
  };
  return { sheet, chain: "GetUsedRangeOrNullObject()", block };
}

/** A long block goes in slices, each from one row of a range to another. */
export function blockFrom(
  { block }: Target,
  name: string,
  first: unknown,
  other: Target | undefined,
): Block | undefined {
  if (name === "GetRange") return blockOf(first as string | undefined);
  if (!block) return undefined;
  if (name === "GetRow") {
    const row = block.row + Number(first);
    return { ...block, row, lastRow: row };
  }
  if (name === "GetIntersectionOrNullObject") return other?.block && intersection(block, other.block);
  const last = name === "GetBoundingRect" ? other?.block : undefined;
  return last && { ...block, lastRow: last.lastRow };
}

/** Cells that two ranges would have in common may be none. */
export function withBlock(target: Target, block: Block | undefined): Target {
  if (!block) return target;
  return block.row > block.lastRow || block.column > block.lastColumn ? NOT_THERE : { ...target, block };
}

function intersection(one: Block, other: Block): Block {
  return {
    row: Math.max(one.row, other.row),
    column: Math.max(one.column, other.column),
    lastRow: Math.min(one.lastRow, other.lastRow),
    lastColumn: Math.min(one.lastColumn, other.lastColumn),
  };
}

/** Excel would quietly put other heads in the place of what is no text, and refuses tables over one another. */
export function checkTable(sheet: Sheet, range: string): void {
  const { row, column, lastRow, lastColumn } = blockOf(/\(([^)]*)\)$/.exec(range)?.[1]);
  const heads = Array.from({ length: lastColumn - column + 1 }, (_, index) =>
    sheet.cells.get(`${row} ${column + index}`),
  );
  const texts = new Set(
    heads.map((head) => (typeof head?.value === "string" && !head.formula ? head.value.toLowerCase() : "")),
  );
  if (texts.has("") || texts.size < heads.length) throw new Error("the heads of a table are different texts");
  const others = sheet.done.filter(({ on, name }) => on === "Tables" && name === "Add");
  for (const { args } of others) {
    const other = blockOf(/\(([^)]*)\)$/.exec(String(args[0]))?.[1]);
    const apart =
      other.lastRow < row || other.row > lastRow || other.lastColumn < column || other.column > lastColumn;
    if (!apart) throw new Error("a table lies over another");
  }
}

/**
 * A plan read back from its sheet by the names of its input cells, and what would change if other inputs were put in.
 * The sheet is the truth: what stands there is what is read, sound or not.
 */
import { isoFromSerial, serialFromIso } from "../../cellar/ageing";
import { placedFields, type Field, type PlacedField } from "../../cellar/batch/field-kinds";
import { fields, sectionTitles, type BatchInputs } from "../../cellar/batch/fields";
import { domains, isWithin } from "../../cellar/domains";
import type { CellValue } from "../data";

/** By this name of one of its cells the sheet of a plan is known. */
export const PLAN_MARK = "plan_worst";
/** In which language its words are. */
export const PLAN_LANGUAGE = "plan_language";

/** A sheet of values only does not follow its inputs. */
export const isLive = (cells: SheetCells) => cells.get(PLAN_MARK)?.calculated === true;

export interface SheetCell {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly calculated: boolean;
}
export type SheetCells = ReadonlyMap<string, SheetCell>;

/** Finds the English word behind one of several options. */
export type PlainWord = (word: string, options: readonly string[]) => string | undefined;

/** Words chosen in a sheet of another language as the code knows them. */
export function plainCells(cells: SheetCells, plain: PlainWord): SheetCells {
  const all = new Map(cells);
  for (const { name, field } of placedFields(fields)) {
    const found = cells.get(name);
    if (field.kind !== "choice" || typeof found?.value !== "string") continue;
    const word = field.options.includes(found.value) ? found.value : plain(found.value, field.options);
    if (word !== undefined) all.set(name, { ...found, value: word });
  }
  return all;
}

/** A word of a choice as the sheet says it; anything else as it is. */
export const inSheetWords = ({ to, choice }: InputChange, say: (text: string) => string): CellValue =>
  choice && typeof to === "string" ? say(to) : to;

/** What stands in the input cells, as a batch file would hold it. */
export function batchOnSheet(cells: SheetCells): unknown {
  const batch: Record<string, unknown> = {};
  for (const { path, name, field } of placedFields(fields)) {
    let node = batch;
    for (const key of path.slice(0, -1)) node = (node[key] ??= {}) as Record<string, unknown>;
    node[path[path.length - 1]!] = asGiven(field, cells.get(name)?.value ?? null);
  }
  return batch;
}

/** Inputs whose cell is gone, or shows an error or nothing where a formula stands. */
export const unreadInputs = (cells: SheetCells): string[] =>
  placedFields(fields).flatMap((placed) => {
    const found = cells.get(placed.name);
    return !found || (found.calculated && found.value === null) ? [labelOf(placed)] : [];
  });

function asGiven(field: Field, value: CellValue): CellValue {
  if (field.kind === "date") {
    return typeof value === "number" && isWithin(domains.dateSerial, value) ? isoFromSerial(value) : value;
  }
  // "2025" typed as a name is a number to the program
  return field.kind === "text" && value !== null ? String(value) : value;
}

export interface InputChange {
  /** "Tirage: Excess pressure wanted: 5.2 → 5.5 bar". */
  readonly said: string;
  readonly from: CellValue;
  readonly to: CellValue;
  readonly row: number;
  readonly column: number;
  /** The user has put a formula there, which the new value would replace. */
  readonly calculated: boolean;
  /** It is one of several words of ours. */
  readonly choice: boolean;
}

export interface Comparison {
  readonly changes: readonly InputChange[];
  /** Inputs that the sheet has no cell for, so that they cannot be put in. */
  readonly missing: readonly string[];
}

export function inputChanges(cells: SheetCells, inputs: BatchInputs): Comparison {
  const missing: string[] = [];
  const changes = placedFields(fields).flatMap((placed): InputChange[] => {
    const { name, field, path } = placed;
    const to = asWritten(field, valueAt(inputs, path));
    const label = labelOf(placed);
    const found = cells.get(name);
    if (!found) {
      if (to !== null) missing.push(label);
      return [];
    }
    const from = found.value === "" ? null : found.value;
    const { row, column, calculated } = found;
    const said = `${label}: ${inWords(field, from)} → ${inWords(field, to)}${unitOf(field)}`;
    return isSame(from, to)
      ? []
      : [{ said, from, to, row, column, calculated, choice: field.kind === "choice" }];
  });
  return { changes, missing };
}

function labelOf({ path, field }: PlacedField): string {
  const section = sectionTitles[path[0] as keyof typeof sectionTitles];
  const inner = path.length > 2 ? `${path[1]}, ` : "";
  return section === field.label ? section : `${section}: ${inner}${field.label}`;
}

const unitOf = (field: Field) => ("unit" in field && field.unit !== "" ? ` ${field.unit}` : "");

function inWords(field: Field, value: CellValue): string {
  if (value === null) return "blank";
  const isDay = field.kind === "date" && typeof value === "number" && isWithin(domains.dateSerial, value);
  return isDay ? isoFromSerial(value) : String(value);
}

const valueAt = (inputs: BatchInputs, path: readonly string[]) =>
  path.reduce<unknown>((node, key) => (node as Record<string, unknown>)[key], inputs) as CellValue;

function asWritten(field: Field, value: CellValue): CellValue {
  if (value === "") return null;
  return field.kind === "date" ? (serialFromIso(String(value)) ?? null) : value;
}

/** A name typed as a number and the same name as text are the same to whoever typed it. */
const isSame = (from: CellValue, to: CellValue) =>
  from === to || (from !== null && to !== null && typeof to === "string" && String(from) === to);

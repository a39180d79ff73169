/**
 * The few kinds of row that the plan is made of. Columns: A what, B value, C unit, D to H notes or table cells.
 */
import { serialFromIso } from "../../cellar/ageing";
import { allowedText, placedFields, type PlacedField } from "../../cellar/batch/field-kinds";
import { fields } from "../../cellar/batch/fields";
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import type { CellStyle, CellValue } from "../data";
import { blank, builtin, cell, iff, isBlank, mousse, type Expression, type Operand } from "../formula";
import type { CellSpec, Row } from "../layout";

export interface Batch {
  readonly inputs: BatchInputs;
  readonly plan: BatchPlan;
}
export type Section = (batch: Batch) => Row[];

export const COLUMN_WIDTHS = [40, 22, 13, 10, 11, 15, 13, 15] as const;
export const LAST_COLUMN = COLUMN_WIDTHS.length - 1;

export const FORMATS = {
  date: "yyyy-mm-dd",
  whole: "#,##0",
  one: "#,##0.0",
  two: "#,##0.00",
  three: "0.000",
  percent: "0.0%",
  /** Counts of which most are 0: a dash is easier to pass over. */
  wholeOrDash: '#,##0;-#,##0;"–"',
  twoOrDash: '#,##0.00;-#,##0.00;"–"',
} as const;

const byDotted = new Map(placedFields(fields).map((each) => [each.dotted, each]));

/** A field by the name that files give it: "baseWine.volume_hL". */
export function placed(dotted: string): PlacedField {
  const found = byDotted.get(dotted);
  if (!found) throw new Error(`there is no field ${dotted}`);
  return found;
}

/** The input cell of a field, in a formula. */
export const input = (dotted: string): Expression => cell(placed(dotted).name);

/** What goes into a bottle at tirage: the bottle size where nothing else is given. */
export const filledMl: Expression = iff(
  isBlank(input("disgorging.filled_mL")),
  input("batch.bottle_mL"),
  input("disgorging.filled_mL"),
);

/** What the pressure functions know of the wine and the bottle besides its alcohol. */
export const wineAndBottle = [
  input("tirage.yield"),
  input("tirage.headspace_pct"),
  input("baseWine.dissolvedCO2_gL"),
] as const;

const alcohol = input("baseWine.alcohol_vol");
/** Expected excess pressure of the plan's wine with this dose, and its low, expected and high. */
export const expectedAt = (dose: Operand, celsius: Operand) =>
  mousse("TIRAGE.PRESSURE", dose, celsius, alcohol, ...wineAndBottle);
export const spreadAt = (dose: Operand, celsius: Operand) =>
  mousse("TIRAGE.RANGE", dose, celsius, alcohol, blank, blank, blank, blank, ...wineAndBottle);

export const text = (value: string, style: CellStyle): CellSpec => ({ value, style });

/** Shown in full, 10/3 would run over its cell; what is kept stays exact. */
const LONGEST_SHOWN = 8;
const longNumberFormat = (value: CellValue) =>
  typeof value === "number" && String(value).length > LONGEST_SHOWN ? "0.0000" : undefined;

/** The input cell of a field, holding what the batch gives. */
export function inputCell(dotted: string, inputs: BatchInputs): CellSpec {
  const { name, field, path } = placed(dotted);
  const given = path.reduce<unknown>(
    (node, key) => (node as Record<string, unknown>)[key],
    inputs,
  ) as CellValue;
  const value = given === "" ? null : field.kind === "date" ? serialFromIso(String(given))! : given;
  const whole = field.kind === "number" && field.domain.whole === true;
  const format = field.kind === "date" ? FORMATS.date : whole ? FORMATS.whole : longNumberFormat(value);
  return { value, style: "input", name, field, ...(format !== undefined && { format }) };
}

/** A unit as text, or as a cell of its own where it depends on an input. */
export type Unit = string | CellSpec;
const unitCell = (unit: Unit): CellSpec => (typeof unit === "string" ? text(unit, "unit") : unit);

/** The user's currency, following the sheet's own cell: "EUR", "EUR a litre". */
export function currencyUnit({ inputs }: Batch, per = "", style: CellStyle = "unit"): CellSpec {
  const formula = per === "" ? input("batch.currency") : builtin("CONCATENATE", input("batch.currency"), per);
  return { value: `${inputs.batch.currency}${per}`, formula, style };
}

export function inputRow(dotted: string, { inputs }: Batch, unit?: Unit): Row {
  const { field } = placed(dotted);
  const ownUnit = field.kind === "number" || field.kind === "optional" ? field.unit : "";
  const note = field.note || (field.kind === "choice" && field.options.length <= 5 ? allowedText(field) : "");
  return {
    cells: [
      text(field.label, "label"),
      inputCell(dotted, inputs),
      unitCell(unit ?? ownUnit),
      ...(note ? [text(note, "note")] : []),
    ],
  };
}

export interface Result {
  readonly name?: string;
  readonly key?: string;
  readonly label: string;
  readonly unit?: Unit;
  readonly note?: string;
  readonly value: CellValue;
  readonly formula: Expression;
  readonly format?: string;
  readonly style?: CellStyle;
  readonly judged?: boolean;
}

export function resultCell({
  name,
  key,
  value,
  formula,
  format,
  style = "result",
  judged,
}: Omit<Result, "label">): CellSpec {
  return {
    value,
    formula,
    style,
    ...(name !== undefined && { name }),
    ...(key !== undefined && { key }),
    ...(format !== undefined && { format }),
    ...(judged && { judged }),
  };
}

export function resultRow(result: Result): Row {
  const { label, unit = "", note = "" } = result;
  return {
    cells: [text(label, "label"), resultCell(result), unitCell(unit), ...(note ? [text(note, "note")] : [])],
  };
}

/** Room between what belongs together and what does not; a full row would lengthen the print. */
export const gap: Row = { cells: [], height: 6 };

/** A heading, with room above it. */
export function heading(title: string, lastColumn = LAST_COLUMN): Row[] {
  const cells = [text(title, "heading"), ...Array.from({ length: lastColumn }, () => text("", "heading"))];
  return [gap, { cells }];
}

/** Heads of a table: ">" marks those of number columns, to the right like their numbers, "~" those set a little away. */
export function columnHeads(...heads: string[]): Row {
  const styles: Readonly<Record<string, CellStyle>> = { ">": "numberHead", "~": "indentedHead" };
  return {
    cells: heads.map((head) => {
      const style = styles[head.charAt(0)];
      return style ? text(head.slice(1), style) : text(head, "columnHead");
    }),
  };
}

/** Characters that fit on one line of cells merged from a column to the last one. */
const lineLength = (column: number) => COLUMN_WIDTHS.slice(column).reduce((sum, width) => sum + width, 0);

/** Text over several columns, wrapped to as many lines as it needs. */
export function paragraph(content: string, style: CellStyle): Row {
  return { cells: [text(content, style)], merge: [0, LAST_COLUMN], lines: linesFor(content, 0) };
}
export const linesFor = (content: string, column: number) =>
  Math.ceil((content.length * 1.05) / lineLength(column));

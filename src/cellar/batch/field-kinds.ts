/**
 * The kinds of input a field can be, and the value each one holds.
 */
import { rangeText, type Domain } from "../domains";

interface Common {
  readonly label: string;
  readonly note: string;
}

/** `blank` is the value taken where nothing is given; a field without it must be filled in. */
export interface NumberField extends Common {
  readonly kind: "number";
  readonly domain: Domain;
  readonly unit: string;
  readonly blank?: number;
}
/** May stay blank, and blank has its own meaning. */
export interface OptionalField extends Common {
  readonly kind: "optional";
  readonly domain: Domain;
  readonly unit: string;
}
export interface TextField extends Common {
  readonly kind: "text";
  readonly maxLength: number;
  readonly blank?: string;
}
export interface ChoiceField<Option extends string = string> extends Common {
  readonly kind: "choice";
  readonly options: readonly Option[];
  readonly blank: Option;
}
/** A calendar day, ISO text in files and in the form, a serial in the sheet; "" where it may stay blank. */
export interface DateField extends Common {
  readonly kind: "date";
  readonly blank?: "";
}
export type Field = NumberField | OptionalField | TextField | ChoiceField | DateField;

/** A tree of fields, and the tree of values it holds. */
export interface FieldTree {
  readonly [key: string]: Field | FieldTree;
}
export type Values<T> = T extends NumberField
  ? number
  : T extends OptionalField
    ? number | null
    : T extends ChoiceField<infer Option>
      ? Option
      : T extends TextField | DateField
        ? string
        : { -readonly [Key in keyof T]: Values<T[Key]> };

interface More {
  readonly note?: string;
  readonly unit?: string;
}

export function number(
  label: string,
  domain: Domain,
  { note = "", unit = domain.unit, ...blank }: More & { blank?: number } = {},
): NumberField {
  return { kind: "number", label, domain, unit, note, ...blank };
}
export function optional(
  label: string,
  domain: Domain,
  { note = "", unit = domain.unit }: More = {},
): OptionalField {
  return { kind: "optional", label, domain, unit, note };
}
export function text(
  label: string,
  { note = "", maxLength, ...blank }: More & { maxLength: number; blank?: string },
): TextField {
  return { kind: "text", label, maxLength, note, ...blank };
}
export function choice<Option extends string>(
  label: string,
  options: readonly Option[],
  { blank, note = "" }: More & { blank: Option },
): ChoiceField<Option> {
  return { kind: "choice", label, options, blank, note };
}
export function date(label: string, blank: { blank?: "" } = {}): DateField {
  return { kind: "date", label, note: "", ...blank };
}

export function isField(node: Field | FieldTree): node is Field {
  return typeof (node as Field).kind === "string" && typeof (node as Field).label === "string";
}

/** What may be given, in words: "5 to 16 % vol", "one of: EU, OIV", "a date like 2026-04-14". */
export function allowedText(field: Field): string {
  switch (field.kind) {
    case "number":
      return rangeText(field.domain);
    case "optional":
      return `${rangeText(field.domain)}, or blank`;
    case "choice":
      return `one of: ${field.options.join(", ")}`;
    case "text":
      return `text of at most ${field.maxLength} characters`;
    case "date":
      return field.blank === undefined ? "a date like 2026-04-14" : "a date like 2026-04-14, or blank";
  }
}

export interface PlacedField {
  readonly path: readonly string[];
  /** "baseWine.volume_hL": how files and refusals name it. */
  readonly dotted: string;
  /** "baseWine_volume_hL": the defined name in the sheet. */
  readonly name: string;
  readonly field: Field;
}

export function placedFields(tree: FieldTree, parents: readonly string[] = []): PlacedField[] {
  return Object.entries(tree).flatMap(([key, node]) => {
    const path = [...parents, key];
    return isField(node)
      ? [{ path, dotted: path.join("."), name: path.join("_"), field: node }]
      : placedFields(node, path);
  });
}

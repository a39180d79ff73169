/**
 * BatchInputs: what a batch plan is made from. The zod schema is built from the field table, so that files, form
 * and sheet refuse the same things in the same words.
 */
import * as z from "zod/mini";
import { serialFromIso } from "../ageing";
import { domains, isWithin } from "../domains";
import { allowedText, isField, placedFields, type Field, type FieldTree } from "./field-kinds";
import { crossChecks } from "./cross-checks";
import { fields, type BatchInputs } from "./fields";
import type { Problem } from "./problem";

// zod would compile its schemas with eval; a page with a strict content policy may not.
z.config({ jitless: true });

/** As the form and the sheets count; zod counts a sign of two code units as one. */
const fits = (limit: number) => z.refine<string>((value) => value.length <= limit);

function fieldSchema(field: Field): z.ZodMiniType {
  switch (field.kind) {
    case "number":
      return z.number().check(z.refine((value) => isWithin(field.domain, value)));
    case "optional":
      return z.nullable(z.number().check(z.refine((value) => isWithin(field.domain, value))));
    case "text":
      return z.string().check(z.minLength(field.blank === undefined ? 1 : 0), fits(field.maxLength));
    case "choice":
      return z.enum(field.options as [string, ...string[]]);
    case "date":
      return z
        .string()
        .check(
          z.refine(
            (value) => value === field.blank || isWithin(domains.dateSerial, serialFromIso(value) ?? NaN),
          ),
        );
  }
}

function treeSchema(node: Field | FieldTree): z.ZodMiniType {
  if (isField(node)) return fieldSchema(node);
  return z.strictObject(
    Object.fromEntries(Object.entries(node).map(([key, child]) => [key, treeSchema(child)])),
  );
}

const schema = treeSchema(fields);

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** What was given with the blanks filled in; anything that does not belong is kept, to be refused. */
function withBlanksFilled(node: Field | FieldTree, given: unknown): unknown {
  if (isField(node)) {
    const blank = given === undefined || given === null || (typeof given === "string" && given.trim() === "");
    if (!blank) return given;
    if (node.kind === "optional") return null;
    return node.blank ?? "";
  }
  const record = given ?? {};
  if (!isRecord(record)) return given;
  const filled = Object.entries(node).map(
    ([key, child]) => [key, withBlanksFilled(child, record[key])] as const,
  );
  const unknown = Object.entries(record).filter(([key]) => !Object.hasOwn(node, key));
  return Object.fromEntries([...filled, ...unknown]);
}

const fieldAt = new Map(placedFields(fields).map((each) => [each.dotted, each.field]));

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) => (isRecord(value) && Object.hasOwn(value, key) ? value[String(key)] : undefined),
    root,
  );
}

function problemsOf(issue: z.core.$ZodIssue, given: unknown): Problem[] {
  if (issue.code === "unrecognized_keys") {
    return issue.keys.map((key) => ({
      field: [...issue.path, key].join(".") || '""',
      given: valueAt(given, [...issue.path, key]),
      remedy: "there is no such field; remove it or mend its name",
    }));
  }
  const field = issue.path.join(".");
  const known = fieldAt.get(field);
  const remedy = known ? `give ${allowedText(known)}` : `give its fields in braces, as ${exampleOf(field)}`;
  return [{ field: field || "the batch file", given: valueAt(given, issue.path), remedy }];
}

/** `{"volume_hL": …}`, with a section's first field. */
function exampleOf(section: string): string {
  const [first] = [...fieldAt.keys()].filter((dotted) => section === "" || dotted.startsWith(`${section}.`));
  const [key] = first!.slice(section === "" ? 0 : section.length + 1).split(".");
  return `{"${key}": …}`;
}

export type ParsedInputs =
  | { readonly ok: true; readonly inputs: BatchInputs }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Validated inputs, or every problem with its field, what was given and what is allowed. */
export function parseBatchInputs(given: unknown): ParsedInputs {
  const filled = withBlanksFilled(fields, given);
  const parsed = z.safeParse(schema, filled);
  const problems = parsed.success ? [] : parsed.error.issues.flatMap((issue) => problemsOf(issue, given));
  const faulty = problems.map(({ field }) => field);
  const isSound = (dotted: string) =>
    !faulty.some((field) => field === "the batch file" || dotted === field || dotted.startsWith(`${field}.`));
  const inputs = filled as BatchInputs;
  if (sectionsAreThere(filled)) problems.push(...crossChecks(inputs, (...dotted) => dotted.every(isSound)));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, inputs };
}

const sectionsAreThere = (filled: unknown) =>
  isRecord(filled) && Object.keys(fields).every((key) => isRecord(filled[key]));

/**
 * What the command line tells of batches: the checks that are not fine, batches that may be one, and every field.
 */
import { checkFound, notFine } from "../cellar/batch/check-words";
import { allowedText, placedFields, type Field, type PlacedField } from "../cellar/batch/field-kinds";
import { fields } from "../cellar/batch/fields";
import { wordNumber } from "../cellar/refusal";
import type { Batch } from "../workbook/book";

const INDENT = "  ";

/** Without what a terminal would act upon. */
const onOneLine = (text: string) => text.replace(/\p{Cc}/gu, " ");

/** The batch's worst verdict, and under it each check that has one, the worst first. */
export function reportLines({ inputs, plan }: Batch): string[] {
  const { checks, worst } = plan;
  const found = notFine(checks).map(
    (key) => `${INDENT}${INDENT}${checks[key].verdict}: ${checkFound(key, checks[key])}`,
  );
  return [
    `${INDENT}${onOneLine(inputs.batch.name)}: worst check "${worst}"${found.length > 0 ? ":" : "."}`,
    ...found,
  ];
}

/** Each name with its lot that more than one batch has: perhaps one file was copied. */
export function namedTwice(batches: readonly Batch[]): string[] {
  const names = batches.map(({ inputs: { batch } }) =>
    onOneLine(
      batch.lot === ""
        ? `called "${batch.name}" without a lot`
        : `called "${batch.name}", lot "${batch.lot}"`,
    ),
  );
  return [...new Set(names.filter((name, index) => names.indexOf(name) !== index))];
}

const HOW_TO_READ = [
  'A batch file is JSON. A point leads into a group: baseWine.volume_hL stands as {"baseWine": {"volume_hL": 32.5}}.',
  "What the way to set the tirage and the kind of dosage ask for may not be blank; a refusal names it.",
  "",
];

/** Every field of a batch file: its name, what it is, what is allowed, what is taken where it is left out. */
export function fieldLines(): string[] {
  return HOW_TO_READ.concat(placedFields(fields).map(fieldLine));
}

function fieldLine({ dotted, field }: PlacedField): string {
  const note = field.note === "" ? "" : ` (${field.note})`;
  const mayBeBlank = field.kind === "text" && field.blank === "" ? ", or blank" : "";
  return `${dotted}: ${field.label}${note}; ${allowedText(field)}${mayBeBlank}${whenLeftOut(field)}`;
}

function whenLeftOut(field: Field): string {
  if (field.kind === "optional" || field.blank === undefined || field.blank === "") return "";
  return `; ${typeof field.blank === "number" ? wordNumber(field.blank) : field.blank} where left out`;
}

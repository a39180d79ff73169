/**
 * What input cells accept. Cells under the same rule share one.
 */
import type { SheetData, Validation } from "../../workbook/data";
import { areasAt, rectangleAddress, rectangles } from "./areas";
import type { Offered } from "./offered";

const TITLE_LENGTH = 32;
const PROMPT_LENGTH = 255;
const ALERT_LENGTH = 225;
const LIST_LENGTH = 255;

const DAY_MS = 86_400_000;
/** Day 0 of spreadsheet dates from March 1900 on. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

export function addValidations(sheet: Excel.Worksheet, { validations }: SheetData, offered: Offered): void {
  const groups = new Map<string, Validation[]>();
  for (const validation of validations) {
    const { row: _row, column: _column, ...shared } = validation;
    const key = JSON.stringify(shared);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(validation);
  }
  for (const group of groups.values()) {
    const [first] = group;
    if (!first) continue;
    const properties = propertiesOf(first);
    for (const area of areasAt(sheet, rectangles(group).map(rectangleAddress), offered)) {
      area.dataValidation.set(properties);
    }
  }
}

function propertiesOf(validation: Validation): Excel.Interfaces.DataValidationUpdateData {
  const title = validation.title.slice(0, TITLE_LENGTH);
  const rule = ruleOf(validation);
  return {
    ...(rule && { rule }),
    prompt: { showPrompt: true, title, message: validation.message.slice(0, PROMPT_LENGTH) },
    ...(rule && {
      errorAlert: { showAlert: true, style: "Stop", title, message: validation.message.slice(0, ALERT_LENGTH) },
    }),
    // blanks are ignored unless said otherwise
    ...(!validation.allowBlank && { ignoreBlanks: false }),
  };
}

function ruleOf(validation: Validation): Excel.DataValidationRule | undefined {
  switch (validation.kind) {
    case "list":
      return listRule(validation.options);
    case "decimal":
      return { decimal: between(validation.min, validation.max) };
    case "whole":
      return { wholeNumber: between(validation.min, validation.max) };
    case "date":
      return { date: between(isoDay(validation.min), isoDay(validation.max)) };
    case "textLength":
      return { textLength: { formula1: validation.max, operator: "LessThanOrEqualTo" } };
  }
}

const between = <Bound>(formula1: Bound, formula2: Bound) => ({ formula1, formula2, operator: "Between" as const });

/** Dates go as ISO text: a bare number is not taken as one. */
const isoDay = (serial: number) => new Date(DAY_ZERO + serial * DAY_MS).toISOString().slice(0, 10);

/** Excel takes a list as one text; where that cannot say it, the prompt alone remains. */
function listRule(options: readonly string[]): Excel.DataValidationRule | undefined {
  const source = options.join(",");
  const sayable =
    source.length <= LIST_LENGTH && !source.startsWith("=") && !options.some((option) => option.includes(","));
  return sayable ? { list: { inCellDropDown: true, source } } : undefined;
}

/**
 * What input cells accept. Cells under the same rule share one.
 */
import { areaAddress, type SheetData, type Validation } from "../../workbook/data";
import { RULE_TEXT, cut } from "../../workbook/rule-text";
import { areaAt, listsOf, rectangleAddress, rectangles } from "./areas";
import { groupedBy } from "./grouping";
import type { Offered } from "./offered";
import { costOf, rangeCost, type Pieces } from "./sizes";

const DAY_MS = 86_400_000;
/** Day 0 of spreadsheet dates from March 1900 on. */
const DAY_ZERO = Date.UTC(1899, 11, 30);

export function* addValidations(
  sheet: Excel.Worksheet,
  { name, validations }: SheetData,
  offered: Offered,
): Pieces {
  for (const group of groupedBy(validations, (each) => JSON.stringify({ ...each, row: 0, column: 0 }))) {
    const properties = propertiesOf(group[0], name);
    const calls = Object.keys(properties).length;
    for (const list of listsOf(rectangles(group).map(rectangleAddress), offered)) {
      yield rangeCost(list) + costOf(1, calls, properties);
      areaAt(sheet, list).dataValidation.set(properties);
    }
  }
}

function propertiesOf(validation: Validation, own: string): Excel.Interfaces.DataValidationUpdateData {
  const title = cut(validation.title, RULE_TEXT.title);
  const rule = ruleOf(validation, own);
  return {
    // a prompt needs a rule, if only one that anything meets
    rule: rule ?? { custom: { formula: "=TRUE" } },
    prompt: { showPrompt: true, title, message: cut(validation.message, RULE_TEXT.prompt) },
    ...(rule && {
      errorAlert: {
        showAlert: true,
        style: "Stop",
        title,
        message: cut(validation.message, RULE_TEXT.refusal),
      },
    }),
    // blanks are let through unless said otherwise
    ...(!validation.allowBlank && { ignoreBlanks: false }),
  };
}

function ruleOf(validation: Validation, own: string): Excel.DataValidationRule | undefined {
  switch (validation.kind) {
    case "list":
      return validation.from
        ? { list: { inCellDropDown: true, source: `=${areaAddress(validation.from, own)}` } }
        : listRule(validation.options);
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

const between = <Bound>(formula1: Bound, formula2: Bound) => ({
  formula1,
  formula2,
  operator: "Between" as const,
});

/** Dates go as ISO text: a bare number is not taken as one. */
const isoDay = (serial: number) => new Date(DAY_ZERO + serial * DAY_MS).toISOString().slice(0, 10);

/** A list is one text that Excel splits at commas and trims; nothing if that would not give the options. */
function listRule(options: readonly string[]): Excel.DataValidationRule | undefined {
  const source = options.join(",");
  const whole = options.every((option) => option !== "" && option === option.trim() && !option.includes(","));
  const fits = options.length > 0 && source.length <= RULE_TEXT.list && !source.startsWith("=");
  return whole && fits ? { list: { inCellDropDown: true, source } } : undefined;
}

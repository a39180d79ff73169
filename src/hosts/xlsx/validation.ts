/**
 * Validation as the file stores it, within the lengths that Excel opens.
 */
import type { DataValidation } from "hucre/xlsx";
import { areaAddress, cellAddress, type Validation } from "../../workbook/data";
import { RULE_TEXT, cut } from "../../workbook/rule-text";
import { storedText } from "./text";

type Rule = Pick<DataValidation, "type" | "operator" | "formula1" | "formula2">;

/**
 * The options as one literal, or nothing if they do not fit: at most 255 characters in all, and no option
 * that the comma-separated form would split or trim.
 */
function listLiteral(options: readonly string[]): string | undefined {
  const whole = options.every(
    (option) => option !== "" && option.trim() === option && !/[,\n\r]/.test(option),
  );
  const joined = options.join(",").replaceAll('"', '""');
  return whole && options.length > 0 && joined.length <= RULE_TEXT.list
    ? `"${storedText(joined)}"`
    : undefined;
}

/** Nothing if the file cannot hold the rule. */
function ruleOf(validation: Validation, own: string): Rule | undefined {
  switch (validation.kind) {
    case "list": {
      // cells that hold the options may be as many and as long as they like
      if (validation.from) return { type: "list", formula1: storedText(areaAddress(validation.from, own)) };
      const literal = listLiteral(validation.options);
      return literal === undefined ? undefined : { type: "list", formula1: literal };
    }
    case "textLength":
      return { type: "textLength", operator: "lessThanOrEqual", formula1: String(validation.max) };
    default:
      return {
        type: validation.kind,
        operator: "between",
        formula1: String(validation.min),
        formula2: String(validation.max),
      };
  }
}

/** A rule that anything meets: the cell still shows its message on entry. */
const ANYTHING: Rule = { type: "custom", formula1: "TRUE" };

/** `own`: the sheet that it is for. */
export function fileValidation(validation: Validation, own: string): DataValidation {
  const rule = ruleOf(validation, own);
  const title = storedText(cut(validation.title, RULE_TEXT.title));
  return {
    ...(rule ?? ANYTHING),
    range: cellAddress(validation.row, validation.column),
    allowBlank: validation.allowBlank,
    showInputMessage: true,
    inputTitle: title,
    inputMessage: storedText(cut(validation.message, RULE_TEXT.prompt)),
    ...(rule && {
      showErrorMessage: true,
      errorStyle: "stop",
      errorTitle: title,
      errorMessage: storedText(cut(validation.message, RULE_TEXT.refusal)),
    }),
  };
}

/**
 * Validation rules to the grid's terms and back.
 */
import type { ISheetDataValidationRule } from "@univerjs/core";
import { areaAddress, type Area, type Validation } from "../../workbook/data";
import { columnOf } from "../reference";

export type GridRule = ISheetDataValidationRule;

/** The grid's "refuse" as a plain number, so that this file needs only its types. */
const STOP = 1;
/** A list shown as plain text with an arrow. */
const ARROW = 1;

export function ruleToGrid(rule: Validation, uid: string): GridRule {
  const common = {
    uid,
    ranges: [{ startRow: rule.row, endRow: rule.row, startColumn: rule.column, endColumn: rule.column }],
    allowBlank: rule.allowBlank,
    showErrorMessage: true,
    errorStyle: STOP,
    errorTitle: rule.title,
    error: rule.message,
    showInputMessage: true,
    promptTitle: rule.title,
    prompt: rule.message,
  };
  switch (rule.kind) {
    case "list":
      return {
        ...common,
        type: "list",
        formula1: rule.from ? `=${areaText(rule.from)}` : rule.options.join(","),
        showDropDown: true,
        renderMode: ARROW,
      };
    case "textLength":
      return {
        ...common,
        type: "textLength",
        operator: "lessThanOrEqual" as never,
        formula1: String(rule.max),
      };
    default:
      return {
        ...common,
        type: rule.kind,
        operator: "between" as never,
        formula1: String(rule.min),
        formula2: String(rule.max),
      };
  }
}

/** Rules of the kinds that we write, each cell of its ranges; any other is left behind. */
export function ruleFromGrid(rule: GridRule): Validation[] {
  const limits = limitsOf(rule);
  if (!limits) return [];
  return rule.ranges.flatMap(({ startRow, endRow, startColumn, endColumn }) => {
    const cells: Validation[] = [];
    for (let row = startRow; row <= endRow; row++) {
      for (let column = startColumn; column <= endColumn; column++) {
        cells.push({
          row,
          column,
          title: rule.promptTitle ?? "",
          message: rule.prompt ?? "",
          allowBlank: rule.allowBlank ?? true,
          ...limits,
        });
      }
    }
    return cells;
  });
}

function limitsOf({ type, formula1, formula2 }: GridRule) {
  switch (type) {
    case "list": {
      const from = areaOf(formula1 ?? "");
      return from
        ? ({ kind: "list", options: [], from } as const)
        : ({ kind: "list", options: (formula1 ?? "").split(",") } as const);
    }
    case "textLength":
      return { kind: "textLength", max: Number(formula1) } as const;
    case "decimal":
    case "whole":
    case "date":
      return { kind: type, min: Number(formula1), max: Number(formula2) } as const;
    default:
      return undefined;
  }
}

/** Cells of the same sheet go without its name, so that it may be renamed. */
function areaText(area: Area): string {
  const text = areaAddress(area, "");
  return area.sheet === undefined ? text.slice(text.lastIndexOf("!") + 1) : text;
}

const AREA =
  /^=(?:'((?:[^']|'')+)'!|([^'!]+)!)?\$?([A-Z]{1,3})\$?([1-9]\d*)(?::\$?([A-Z]{1,3})\$?([1-9]\d*))?$/i;

/** "='Plan'!$A$1:$A$9" to its cells; nothing for any other formula, and for options. */
function areaOf(formula: string): Area | undefined {
  const match = AREA.exec(formula.trim());
  if (!match) return undefined;
  const [, quoted, plain, left = "", top, right = left, bottom = top] = match;
  const sheet = quoted?.replaceAll("''", "'") ?? plain;
  return {
    ...(sheet !== undefined && { sheet }),
    row: Number(top) - 1,
    column: columnOf(left.toUpperCase()),
    lastRow: Number(bottom) - 1,
    lastColumn: columnOf(right.toUpperCase()),
  };
}

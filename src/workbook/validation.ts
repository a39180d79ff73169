/**
 * The rule and the message of an input cell, from its field.
 */
import { allowedText, type Field } from "../cellar/batch/field-kinds";
import { domains } from "../cellar/domains";
import type { Area, Validation } from "./data";

/** Rules know no "more than", so an excluded bound is moved in by less than anyone types. */
const NUDGE = 1e-6;

type Rule = Validation extends infer Each
  ? Each extends Validation
    ? Omit<Each, "row" | "column">
    : never
  : never;

export function validationOf(field: Field, from?: Area): Rule {
  const common = {
    title: field.label,
    message: messageOf(field),
    allowBlank:
      field.kind === "optional" ||
      field.kind === "text" ||
      (field.kind === "date" && field.blank !== undefined),
  };
  switch (field.kind) {
    case "choice":
      return { ...common, kind: "list", options: field.options, ...(from && { from }) };
    case "text":
      return { ...common, kind: "textLength", max: field.maxLength };
    case "date":
      return { ...common, kind: "date", min: domains.dateSerial.min, max: domains.dateSerial.max };
    case "number":
    case "optional": {
      const { min, max, aboveMin, belowMax, whole } = field.domain;
      return {
        ...common,
        kind: whole ? "whole" : "decimal",
        min: aboveMin ? min + NUDGE : min,
        max: belowMax ? max - NUDGE : max,
      };
    }
  }
}

function messageOf(field: Field): string {
  const numeric = field.kind === "number" || field.kind === "optional";
  return numeric ? `Give ${allowedText(field)}: the number without its unit.` : `Give ${allowedText(field)}.`;
}

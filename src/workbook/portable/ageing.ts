/**
 * Dates by rule: ageing minima by designation, whose months are cells of the Notes sheet, and the turns of riddling.
 */
import { FLATTEST_DEGREES, STEEPEST_DEGREES } from "../../cellar/riddling";
import { designations } from "../../cellar/rules/designations";
import {
  builtin,
  divided,
  equals,
  iff,
  minus,
  monthsAfter,
  number,
  plus,
  times,
  type Expression,
} from "../formula";
import { designationName, monthsName } from "../notes/names";
import type { Form, Steps, TableForm } from "./form";

const months = (designation: Expression, kind: "lees" | "total", { notesRange }: Steps) =>
  builtin(
    "INDEX",
    notesRange(monthsName(1, kind), monthsName(designations.length, kind)),
    builtin("MATCH", designation, notesRange(designationName(1), designationName(designations.length)), 0),
  );

const minimum: Form = ([designation, kind], steps) => {
  const isTotal = kind?.kind === "literal" && kind.value === "total";
  return months(designation!, isTotal ? "total" : "lees", steps);
};

const earliest: Form = ([date, designation], steps) =>
  monthsAfter(
    date!,
    steps.step("Months on the lees by the designation", "months", months(designation!, "lees", steps)),
  );

export const ageingForms: Readonly<Record<string, Form>> = {
  "AGEING.MINIMUM": minimum,
  "AGEING.EARLIEST": earliest,
};

/** Date, number, eighths, place of the mark, angle: as the calculation module turns. */
const schedule: TableForm = ([start, days, perDay], row, column) => {
  switch (column) {
    case 1:
      return plus(start!, builtin("INT", divided(minus(row, 1), perDay!)));
    case 2:
      return row;
    case 3:
      return iff(equals(row, 1), 1, iff(equals(builtin("MOD", row, 2), 1), 2, number(-2)));
    case 5:
      return plus(
        FLATTEST_DEGREES,
        divided(times(STEEPEST_DEGREES - FLATTEST_DEGREES, minus(row, 1)), minus(times(days!, perDay!), 1)),
      );
    default:
      throw new Error(`no portable form of column ${column} of the schedule`);
  }
};

export const tableForms: Readonly<Record<string, TableForm>> = { "RIDDLING.SCHEDULE": schedule };

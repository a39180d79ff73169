/**
 * The designations and their ageing minima. The plans' own drop-down lists are these cells.
 */
import { designations } from "../../cellar/rules/designations";
import { sourceText } from "../../cellar/rules/source";
import type { Row } from "../layout";
import { FORMATS, columnHeads, text } from "../plan/rows";
import { designationName, monthsName } from "./names";
import { headed } from "./rows";

const sourceName = (ordinal: number) => `notes_source_${ordinal}`;
const OTHER_HEADS = columnHeads(">On the lees, months", ">In all, months", "~Source").cells;

export const FIRST_DESIGNATION = designationName(1);
export const LAST_DESIGNATION = designationName(designations.length);

/**
 * May be sorted and filtered: what reads it looks a designation up by its word. No other table of the sheets may be
 * sorted, as their cells are read by their place.
 */
export const DESIGNATIONS_TABLE = {
  name: "Ageing_minima",
  first: "notes_designation_heads",
  last: sourceName(designations.length),
};

export const designationRows = (): Row[] => [
  ...headed("Ageing minima by designation"),
  {
    cells: [{ ...text("Designation", "columnHead"), key: DESIGNATIONS_TABLE.first }, ...OTHER_HEADS],
    lines: 2,
  },
  ...designations.map(({ name, leesMonths, totalMonths, source }, index) => {
    const months = (value: number, kind: "lees" | "total") => ({
      value,
      style: "result" as const,
      format: FORMATS.whole,
      name: monthsName(index + 1, kind),
    });
    return {
      cells: [
        { ...text(name, "label"), name: designationName(index + 1) },
        months(leesMonths, "lees"),
        months(totalMonths, "total"),
        { ...text(sourceText(source), "unit"), key: sourceName(index + 1) },
      ],
    };
  }),
];

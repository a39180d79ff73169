/**
 * The designations and their ageing minima. The plans' own drop-down lists are these cells.
 */
import { designations } from "../../cellar/rules/designations";
import { sourceText } from "../../cellar/rules/source";
import type { Row } from "../layout";
import { FORMATS, columnHeads, text } from "../plan/rows";
import { headed } from "./rows";

const nameOf = (index: number) => `notes_designation_${index + 1}`;
export const FIRST_DESIGNATION = nameOf(0);
export const LAST_DESIGNATION = nameOf(designations.length - 1);

export const designationRows = (): Row[] => [
  ...headed("Ageing minima by designation"),
  { ...columnHeads("Designation", ">On the lees, months", ">In all, months", "", "~Source"), lines: 2 },
  ...designations.map(({ name, leesMonths, totalMonths, source }, index) => {
    const label = { ...text(name, "label") };
    const months = (value: number) => ({ value, style: "result" as const, format: FORMATS.whole });
    const isEnd = nameOf(index) === FIRST_DESIGNATION || nameOf(index) === LAST_DESIGNATION;
    return {
      cells: [
        { ...label, ...(isEnd ? { name: nameOf(index) } : {}) },
        months(leesMonths),
        months(totalMonths),
        undefined,
        text(sourceText(source), "unit"),
      ],
    };
  }),
];

/**
 * The designations and their ageing minima. The plans' own drop-down lists are these cells.
 */
import { designations } from "../../cellar/rules/designations";
import { sourceText } from "../../cellar/rules/source";
import type { Row } from "../layout";
import { FORMATS, columnHeads, text } from "../plan/rows";
import { designationName, monthsName } from "./names";
import { headed } from "./rows";

export const FIRST_DESIGNATION = designationName(1);
export const LAST_DESIGNATION = designationName(designations.length);

export const designationRows = (): Row[] => [
  ...headed("Ageing minima by designation"),
  { ...columnHeads("Designation", ">On the lees, months", ">In all, months", "", "~Source"), lines: 2 },
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
        undefined,
        text(sourceText(source), "unit"),
      ],
    };
  }),
];

/**
 * Cells that stand out by a word, as the file stores them.
 */
import type { ConditionalRule } from "hucre/xlsx";
import { cellAddress, type Highlight } from "../../workbook/data";
import { highlightLooks } from "../../workbook/styles";
import { storedText } from "./text";

export function fileHighlight({ word, look, cells }: Highlight, index: number): ConditionalRule {
  const { color, fill } = highlightLooks[look];
  const text = storedText(word).replaceAll('"', '""');
  return {
    type: "cellIs",
    operator: "equal",
    formula: `"${text}"`,
    priority: index + 1,
    range: cells.map(({ row, column }) => cellAddress(row, column)).join(" "),
    style: {
      font: { bold: true, color: { rgb: color } },
      // of a rule's fill programs read the background
      fill: { type: "pattern", pattern: "solid", bgColor: { rgb: fill }, fgColor: { rgb: fill } },
    },
  };
}

/**
 * Cells that stand out by the word in them, as conditional formats: those may read cells, but call no function of ours.
 */
import type { Highlight, SheetData } from "../../workbook/data";
import { highlightLooks } from "../../workbook/styles";
import { areasAt, rectangleAddress, rectangles } from "./areas";
import type { Offered } from "./offered";

export function addHighlights(sheet: Excel.Worksheet, { highlights }: SheetData, offered: Offered): void {
  for (const { word, look, cells } of highlights) {
    for (const area of areasAt(sheet, rectangles(cells).map(rectangleAddress), offered)) {
      addRule(area.conditionalFormats, word, look);
    }
  }
}

function addRule(to: Excel.ConditionalFormatCollection, word: string, look: Highlight["look"]): void {
  const { cellValue } = to.add("CellValue");
  const { color, fill } = highlightLooks[look];
  cellValue.rule = { formula1: `="${word.replaceAll('"', '""')}"`, operator: "EqualTo" };
  cellValue.format.fill.color = `#${fill}`;
  cellValue.format.font.set({ bold: true, color: `#${color}` });
}

/**
 * Cells that stand out by the word in them, as conditional formats: those may read cells, but call no function of ours.
 */
import type { Highlight, SheetData } from "../../workbook/data";
import { highlightLooks } from "../../workbook/styles";
import { areaAt, listsOf, rectangleAddress, rectangles } from "./areas";
import type { Offered } from "./offered";
import { costOf, rangeCost, type Pieces } from "./sizes";

/** The formats of a range, a new one with its parts; its rule, two colours and bold. */
const highlightCost = (list: string, word: string) => rangeCost(list) + costOf(6, 4, word);

export function* addHighlights(sheet: Excel.Worksheet, { highlights }: SheetData, offered: Offered): Pieces {
  for (const { word, look, cells } of highlights) {
    for (const list of listsOf(rectangles(cells).map(rectangleAddress), offered)) {
      yield highlightCost(list, word);
      addRule(areaAt(sheet, list).conditionalFormats, word, look);
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

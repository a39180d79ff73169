/**
 * A season of invented batches: each sample in turn, with a name, a volume and a day of its own.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import type { Batch } from "../../src/workbook/book";
import type { SheetData } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import { inputsOf, sampleFiles, sampleJson } from "./samples";

export function seasonBatches(count: number): Batch[] {
  return Array.from({ length: count }, (_, index) => {
    const batch = sampleJson(sampleFiles[index % sampleFiles.length]!);
    Object.assign(batch.batch!, {
      name: `Oxlip Hill lot ${index + 1}`,
      lot: `L${index + 1}`,
      tirageDate: `2026-04-${String((index % 28) + 1).padStart(2, "0")}`,
    });
    batch.baseWine!.volume_hL = 20 + index * 1.7;
    const inputs = inputsOf(batch);
    return { inputs, plan: planBatch(inputs) };
  });
}

/** Only the plans. */
export function seasonSheets(count: number): SheetData[] {
  const taken: string[] = [];
  return seasonBatches(count).map(({ inputs, plan }) => {
    const sheet = planSheet(inputs, plan, taken);
    taken.push(sheet.name);
    return sheet;
  });
}

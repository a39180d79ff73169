/**
 * A season of invented batches: each sample in turn under a name, a volume and dates of its own.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import type { SheetData } from "../../src/workbook/data";
import { planSheet } from "../../src/workbook/plan/sheet";
import { inputsOf, sampleFiles, sampleJson } from "./samples";

export function seasonSheets(count: number): SheetData[] {
  const taken: string[] = [];
  return Array.from({ length: count }, (_, index) => {
    const batch = sampleJson(sampleFiles[index % sampleFiles.length]!);
    batch.batch!.name = `Oxlip Hill lot ${index + 1}`;
    batch.batch!.lot = `L${index + 1}`;
    batch.baseWine!.volume_hL = 20 + index * 1.7;
    batch.batch!.tirageDate = `2026-04-${String((index % 28) + 1).padStart(2, "0")}`;
    const inputs = inputsOf(batch);
    const sheet = planSheet(inputs, planBatch(inputs), taken);
    taken.push(sheet.name);
    return sheet;
  });
}

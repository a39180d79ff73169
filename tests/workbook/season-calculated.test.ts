/**
 * Portable seasons as they are written, calculated by a spreadsheet engine: every cell is the calculation module's.
 */
import { planBatch } from "../../src/cellar/batch/plan";
import type { Batch } from "../../src/workbook/book";
import { inputsOf, sampleBatches, sampleJson } from "../support/samples";
import { seasonFaults } from "../support/season-faults";
import { situations } from "../support/situations";

const batch = (inputs: ReturnType<typeof inputsOf>): Batch => ({ inputs, plan: planBatch(inputs) });

test("the sample batches and their season", () => expect(seasonFaults(sampleBatches())).toEqual([]));

test("two currencies, pack sizes that differ, three bottle sizes, readings and what really came of it", () => {
  const brut = sampleJson("oxlip-hill-brut.json");
  brut.batch!.currency = "CHF";
  brut.materials!.corks = { spare_pct: 0, pack: 700, price: 0.3 };
  const [, second, , other, , small, , , read] = situations();
  expect(seasonFaults([batch(inputsOf(brut)), second!, other!, small!, read!])).toEqual([]);
});

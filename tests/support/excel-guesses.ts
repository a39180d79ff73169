/**
 * What something is guessed to take in a request to Excel, beside what it takes.
 */
import { offeredBy } from "../../src/hosts/excel/offered";
import type { Pieces } from "../../src/hosts/excel/sizes";
import { standInWorkbook } from "./excel-proxies";

standInWorkbook();
export const OFFERED = offeredBy(() => true);

/** To which the proxies count for a season of a thousand batches; a number takes as many bytes as it has digits. */
const LATE = 2_000_000;

export async function guessed(pieces: (sheet: Excel.Worksheet) => Pieces) {
  const { roundTrips } = standInWorkbook();
  let guess = 0;
  await Excel.run(async (context) => {
    const counting = context as unknown as { readonly _nextId: () => number };
    while (counting._nextId() < LATE);
    const sheet = context.workbook.worksheets.getItem("Sheet1").load("id");
    await context.sync();
    // what goes round any request
    context.workbook.worksheets.load("items/id");
    await context.sync();
    for (const bytes of pieces(sheet)) guess += bytes;
    await context.sync();
  });
  const [, around, all] = roundTrips;
  return { guess, real: all!.bytes - around!.bytes };
}

/** Never too small, nor so large that requests go half empty. */
export async function expectHonest(pieces: (sheet: Excel.Worksheet) => Pieces, least = 5_000): Promise<void> {
  const { guess, real } = await guessed(pieces);
  process.stdout.write(`guessed ${guess}, sent ${real}: ${(guess / real).toFixed(2)}\n`);
  expect(real).toBeGreaterThan(least);
  expect(guess).toBeGreaterThan(real);
  expect(guess).toBeLessThan(1.3 * real + 500);
}

/**
 * What the sample workbooks hold: each batch by itself and all of them as a season, in both kinds of formulas.
 */
import path from "node:path";
import { batchBook, seasonBook, type Batch, type Formulas } from "../workbook/book";
import type { SheetData } from "../workbook/data";
import { finished } from "./finished";

const KINDS: readonly Formulas[] = ["add-in", "portable"];

/** Each sample's name and its sheets. */
export function sampleBooks(
  files: readonly string[],
  batches: readonly Batch[],
): [string, readonly SheetData[]][] {
  return KINDS.flatMap((formulas) => [
    ...batches.map((batch, index): [string, readonly SheetData[]] => [
      `${path.basename(files[index]!, ".json")}.${formulas}.xlsx`,
      finished(batchBook([batch], [], { formulas }).sheets, formulas),
    ]),
    [`oxlip-hill-season.${formulas}.xlsx`, finished(seasonBook(batches, formulas), formulas)] as [
      string,
      readonly SheetData[],
    ],
  ]);
}

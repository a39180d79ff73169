/**
 * npm run plan -- <batch.json> <out.xlsx>: writes a batch plan without a spreadsheet program.
 * npm run plan -- --season <folder> <out.xlsx>: all batch files of a folder and their season, in one workbook.
 * --portable: formulas that any spreadsheet program calculates. --values: results only, formulas as notes.
 * Every problem of a bad batch file is listed, and then no file is written.
 */
import { writeWorkbookFile } from "../hosts/xlsx/write";
import { batchBook, seasonBook } from "../workbook/book";
import { Failure, batchFiles, fail, readBatches, refuseTaken, writeWhole } from "./files";
import { finished } from "./finished";

const USAGE = [
  "Usage: npm run plan -- <batch.json> <out.xlsx> [--portable | --values] [--overwrite]",
  "       npm run plan -- --season <folder> <out.xlsx> [--portable | --values] [--overwrite]",
];
const OPTIONS = ["--overwrite", "--season", "--portable", "--values"];

async function main(args: readonly string[]): Promise<void> {
  const overwrite = args.includes("--overwrite");
  const season = args.includes("--season");
  const kinds = (["portable", "values"] as const).filter((kind) => args.includes(`--${kind}`));
  if (kinds.length > 1) fail("Give --portable or --values, not both.", ...USAGE);
  const formulas = kinds[0] ?? "add-in";
  const unknown = args.find((arg) => arg.startsWith("--") && !OPTIONS.includes(arg));
  if (unknown !== undefined) fail(`There is no option ${unknown}.`, ...USAGE);
  const [source, workbookFile, ...more] = args.filter((arg) => !OPTIONS.includes(arg));
  if (source === undefined || workbookFile === undefined || more.length > 0) fail(...USAGE);
  refuseTaken(workbookFile, overwrite);

  const batches = readBatches(season ? batchFiles(source) : [source]);
  const sheets = season ? seasonBook(batches, formulas) : batchBook(batches, [], { formulas }).sheets;
  writeWhole(workbookFile, await writeWorkbookFile({ sheets: finished(sheets, formulas) }), overwrite);
  console.log(`Wrote ${workbookFile}: ${sheets.map(({ name }) => `"${name}"`).join(", ")}.`);
  for (const { inputs, plan } of batches) console.log(`  ${inputs.batch.name}: worst check "${plan.worst}".`);
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(error instanceof Failure ? error.message : error);
  process.exitCode = 1;
});

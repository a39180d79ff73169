/**
 * npm run plan -- <batch.json> <out.xlsx>: writes a batch plan without a spreadsheet program.
 * npm run plan -- --season <folder> <out.xlsx>: all batch files of a folder and their season, in one workbook.
 * --language fr: the sheets in that language. --portable: formulas that any spreadsheet program calculates. --values: results only, formulas as notes.
 * --fields: what may stand in a batch file. Every problem of a bad one is listed, and then no file is written.
 */
import { writeWorkbookFile } from "../hosts/xlsx/write";
import { batchBook, seasonBook } from "../workbook/book";
import { typedTexts } from "../workbook/sheet-words";
import { translatedSheets } from "../workbook/translated";
import { LANGUAGES } from "../words/languages";
import { languageCalled } from "../words/sheet-language";
import { batchFiles, readBatches } from "./files";
import { finished } from "./finished";
import { Failure, fail } from "./places";
import { fieldLines, namedTwice, reportLines } from "./report";
import { refusePlace, writeWhole } from "./workbook-file";

const USAGE = [
  "Usage: npm run plan -- <batch.json> <out.xlsx> [--portable | --values] [--language fr] [--overwrite]",
  "       npm run plan -- --season <folder> <out.xlsx> [--portable | --values] [--language fr] [--overwrite]",
  "       npm run plan -- --fields",
];
const LANGUAGE = "--language";
const OPTIONS = ["--overwrite", "--season", "--portable", "--values"];

async function main(given: readonly string[]): Promise<void> {
  const [only] = given.length === 1 ? given : [];
  if (only === "--help") return console.log(USAGE.join("\n"));
  if (only === "--fields") return console.log(fieldLines().join("\n"));
  const { code, args } = languageOf(given);
  const overwrite = args.includes("--overwrite");
  const season = args.includes("--season");
  const kinds = (["portable", "values"] as const).filter((kind) => args.includes(`--${kind}`));
  if (kinds.length > 1) fail("Give --portable or --values, not both.", ...USAGE);
  const formulas = kinds[0] ?? "add-in";
  const unknown = args.find((arg) => arg.startsWith("--") && !OPTIONS.includes(arg));
  if (unknown !== undefined) {
    const alone = ["--help", "--fields"].includes(unknown) ? "takes no other words" : "is no option";
    fail(`${unknown} ${alone}.`, ...USAGE);
  }
  const [source, workbookFile, ...more] = args.filter((arg) => !OPTIONS.includes(arg));
  if (!source || !workbookFile) fail(...USAGE);
  if (more.length > 0) {
    const names = [source, workbookFile, ...more].map((name) => `"${name}"`).join(", ");
    fail(`Two names are needed, and there are more: ${names}; put a name with blanks in quotes.`, ...USAGE);
  }
  refusePlace(workbookFile, overwrite);

  const batches = readBatches(season ? batchFiles(source) : [source]);
  const sheets = season ? seasonBook(batches, formulas) : batchBook(batches, [], { formulas }).sheets;
  const written = translatedSheets(finished(sheets, formulas), await languageCalled(code), {
    typed: batches.flatMap(({ inputs }) => typedTexts(inputs)),
  });
  writeWhole(workbookFile, await writeWorkbookFile({ sheets: written }), overwrite);
  console.log(`Wrote ${workbookFile}: ${written.map(({ name }) => `"${name}"`).join(", ")}.`);
  console.log(batches.flatMap(reportLines).join("\n"));
  for (const twice of namedTwice(batches))
    console.log(`Several batches are ${twice}; the season counts each.`);
}

/** The language asked for, and the arguments without it. */
function languageOf(given: readonly string[]): { readonly code: string; readonly args: readonly string[] } {
  const at = given.indexOf(LANGUAGE);
  if (at < 0) return { code: "en", args: given };
  const code = given[at + 1];
  const known = LANGUAGES.map((each) => each.code);
  if (code === undefined || !known.includes(code)) {
    fail(`${LANGUAGE} is ${code ?? "blank"}; give one of: ${known.join(", ")}.`, ...USAGE);
  }
  return { code, args: given.filter((_, index) => index !== at && index !== at + 1) };
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(error instanceof Failure ? error.message : error);
  process.exitCode = 1;
});

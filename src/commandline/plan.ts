/**
 * npm run plan -- <batch.json> <out.xlsx>: writes a batch plan without a spreadsheet program.
 * Every problem of a bad batch file is listed, and then no file is written.
 */
import { existsSync, linkSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { UnplannableBatch } from "../cellar/batch/attempt";
import { parseBatchInputs } from "../cellar/batch/inputs";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import { planBatch, type BatchPlan } from "../cellar/batch/plan";
import { writeWorkbookFile } from "../hosts/xlsx/write";
import { planSheet } from "../workbook/plan/sheet";

const USAGE = "Usage: npm run plan -- <batch.json> <out.xlsx> [--overwrite]";

class Failure extends Error {}

function fail(...lines: string[]): never {
  throw new Failure(lines.join("\n"));
}

function readJson(file: string): unknown {
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    fail(`${file} cannot be read; give the path of a batch file.`);
  }
  try {
    return JSON.parse(text);
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    fail(`${file} is not JSON: ${message}${lineOf(text, message)}`);
  }
}

function refused(file: string, problems: readonly Problem[]): never {
  const count = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  fail(
    `${file} has ${count}; no workbook was written.`,
    ...problems.map((problem) => `  ${problemSentence(problem)}`),
  );
}

function planned(file: string, inputs: Parameters<typeof planBatch>[0]): BatchPlan {
  try {
    return planBatch(inputs);
  } catch (error) {
    if (error instanceof UnplannableBatch) refused(file, error.problems);
    throw error;
  }
}

/** The whole file or none: written beside it and moved, so that a failure half-way leaves what was there. */
function writeWhole(file: string, bytes: Uint8Array, overwrite: boolean): void {
  const draft = `${file}.${process.pid}.draft`;
  try {
    writeFileSync(draft, bytes, { flag: "wx" });
    // a link is refused where the name is taken meanwhile, a move would not be
    if (overwrite) renameSync(draft, file);
    else linkSync(draft, file);
  } catch (error) {
    fail(`${file} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  } finally {
    rmSync(draft, { force: true });
  }
}

/** Where in the text JSON ends to be JSON, as a line: the message itself counts characters. */
function lineOf(text: string, message: string): string {
  const position = /position (\d+)/.exec(message)?.[1];
  return position === undefined ? "" : ` (line ${text.slice(0, Number(position)).split("\n").length})`;
}

async function main(args: readonly string[]): Promise<void> {
  const overwrite = args.includes("--overwrite");
  const [batchFile, workbookFile, ...more] = args.filter((arg) => arg !== "--overwrite");
  if (batchFile === undefined || workbookFile === undefined || more.length > 0) fail(USAGE);
  if (!workbookFile.toLowerCase().endsWith(".xlsx"))
    fail(`${workbookFile} does not end in .xlsx; give the name of the workbook to write.`);
  if (existsSync(workbookFile) && !overwrite)
    fail(`${workbookFile} is there already; give another name, or add --overwrite.`);

  const parsed = parseBatchInputs(readJson(batchFile));
  if (!parsed.ok) refused(batchFile, parsed.problems);
  const plan = planned(batchFile, parsed.inputs);
  const sheet = planSheet(parsed.inputs, plan, []);
  const bytes = await writeWorkbookFile({ sheets: [sheet] });
  writeWhole(workbookFile, bytes, overwrite);
  console.log(`Wrote ${workbookFile}: sheet "${sheet.name}", worst check "${plan.worst}".`);
}

main(process.argv.slice(2)).catch((error: unknown) => {
  console.error(error instanceof Failure ? error.message : error);
  process.exitCode = 1;
});

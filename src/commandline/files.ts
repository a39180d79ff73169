/**
 * Files in and out for the command line: every problem of a bad file is told, and a workbook is written whole or not.
 */
import {
  constants,
  copyFileSync,
  existsSync,
  linkSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { UnplannableBatch } from "../cellar/batch/attempt";
import { parseBatchInputs } from "../cellar/batch/inputs";
import { planBatch } from "../cellar/batch/plan";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import type { Batch } from "../workbook/book";

/** Told to the user as it is, without a stack. */
export class Failure extends Error {}

export function fail(...lines: string[]): never {
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
    if (text.startsWith("PK"))
      fail(`${file} is a workbook, not a batch file; a workbook is opened in the page.`);
    const message = error instanceof Error ? error.message : String(error);
    fail(`${file} is not JSON: ${message}${lineOf(text, message)}`);
  }
}

/** Where in the text JSON ends to be JSON, as a line: the message itself counts characters. */
function lineOf(text: string, message: string): string {
  const position = /position (\d+)/.exec(message)?.[1];
  return position === undefined ? "" : ` (line ${text.slice(0, Number(position)).split("\n").length})`;
}

function refused(file: string, problems: readonly Problem[]): never {
  const count = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  fail(`${file} has ${count}:`, ...problems.map((problem) => `  ${problemSentence(problem)}`));
}

function readBatch(file: string): Batch {
  const parsed = parseBatchInputs(readJson(file));
  if (!parsed.ok) refused(file, parsed.problems);
  try {
    return { inputs: parsed.inputs, plan: planBatch(parsed.inputs) };
  } catch (error) {
    if (error instanceof UnplannableBatch) refused(file, error.problems);
    throw error;
  }
}

/** All batches, or everything that is wrong with any of them. */
export function readBatches(files: readonly string[]): Batch[] {
  const failures: string[] = [];
  const batches = files.flatMap((file) => {
    try {
      return [readBatch(file)];
    } catch (error) {
      if (!(error instanceof Failure)) throw error;
      failures.push(error.message);
      return [];
    }
  });
  if (failures.length > 0) fail(...failures, "No workbook was written.");
  return batches;
}

/** The batch files of a folder, by name. */
export function batchFiles(folder: string): string[] {
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch {
    fail(`${folder} cannot be read; give a folder with batch files.`);
  }
  const files = names.filter((name) => name.toLowerCase().endsWith(".json")).sort();
  if (files.length === 0) fail(`${folder} has no batch files; their names end in .json.`);
  return files.map((name) => path.join(folder, name));
}

export function refuseTaken(workbookFile: string, overwrite: boolean): void {
  if (!workbookFile.toLowerCase().endsWith(".xlsx"))
    fail(`${workbookFile} does not end in .xlsx; give the name of the workbook to write.`);
  if (existsSync(workbookFile) && !overwrite)
    fail(`${workbookFile} is there already; give another name, or add --overwrite.`);
}

/** Some disks know no links; there the copy is refused where the name is taken. */
function moveToFree(draft: string, file: string): void {
  try {
    linkSync(draft, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") throw error;
    copyFileSync(draft, file, constants.COPYFILE_EXCL);
  }
}

/** The whole file or none: written beside it and moved, so that a failure half-way leaves what was there. */
export function writeWhole(file: string, bytes: Uint8Array, overwrite: boolean): void {
  const draft = `${file}.${process.pid}.draft`;
  try {
    writeFileSync(draft, bytes, { flag: "wx" });
    // a link is refused where the name is taken meanwhile, a move would not be
    if (overwrite) renameSync(draft, file);
    else moveToFree(draft, file);
  } catch (error) {
    fail(`${file} cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  } finally {
    rmSync(draft, { force: true });
  }
}

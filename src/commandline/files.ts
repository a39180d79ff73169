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
  statSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { UnplannableBatch } from "../cellar/batch/attempt";
import { placedFields } from "../cellar/batch/field-kinds";
import { fields } from "../cellar/batch/fields";
import { batchFileContent } from "../cellar/batch/file-text";
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
  const read = batchFileContent(bytesOf(file));
  if ("content" in read) return read.content;
  const { fault, where } = read;
  const line = where?.line === undefined ? "" : ` (line ${where.line})`;
  fail(`${file} is not a batch file: ${fault}${where ? `: ${where.message}` : ""}${line}.`);
}

function bytesOf(file: string): Uint8Array {
  if (isFolder(file)) fail(`${file} is a folder; give a batch file, or --season before a folder of them.`);
  try {
    return readFileSync(fromHere(file));
  } catch (error) {
    fail(`${file} cannot be read: ${reasonOf(error)}; give the path of a batch file.`);
  }
}

const isFolder = (file: string) =>
  statSync(fromHere(file), { throwIfNoEntry: false })?.isDirectory() ?? false;

/** npm runs in the project's folder and tells in which one the person stands. */
const fromHere = (file: string) => path.resolve(process.env["INIT_CWD"] ?? "", file);

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: "it is not there",
  EEXIST: "it is there already",
  EACCES: "that is not permitted here",
  EPERM: "that is not permitted here",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
};

function reasonOf(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? "";
  return REASONS[code] ?? (error instanceof Error ? error.message : String(error));
}

function refused(file: string, problems: readonly Problem[]): never {
  const count = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  const lines = problems.map((problem) => `  ${problemSentence(problem)}`);
  const hint = problems.some(isTextForNumber)
    ? ["  (A number stands without quotes, with a point: 32.5.)"]
    : [];
  fail(`${file} has ${count}:`, ...lines, ...hint);
}

const numeric = new Set(
  placedFields(fields)
    .filter(({ field }) => field.kind === "number" || field.kind === "optional")
    .map(({ dotted }) => dotted),
);
const isTextForNumber = ({ field, given }: Problem) => typeof given === "string" && numeric.has(field);

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
    names = readdirSync(fromHere(folder));
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code === "ENOTDIR" ? "it is a file" : reasonOf(error);
    fail(`${folder} cannot be read: ${reason}; give a folder with batch files.`);
  }
  const files = names.filter((name) => name.toLowerCase().endsWith(".json")).sort();
  if (files.length === 0) fail(`${folder} has no batch files; their names end in .json.`);
  return files.map((name) => path.join(folder, name));
}

/** What can be said about the workbook's place before there is one. */
export function refusePlace(workbookFile: string, overwrite: boolean): void {
  if (!workbookFile.toLowerCase().endsWith(".xlsx"))
    fail(`${workbookFile} does not end in .xlsx; give the name of the workbook to write.`);
  const folder = path.dirname(workbookFile);
  if (!isFolder(folder))
    fail(`${folder} is not a folder; make it first, or write ${path.basename(workbookFile)} elsewhere.`);
  if (isFolder(workbookFile)) fail(`${workbookFile} is a folder; give another name.`);
  if (existsSync(fromHere(workbookFile)) && !overwrite)
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
export function writeWhole(workbookFile: string, bytes: Uint8Array, overwrite: boolean): void {
  const file = fromHere(workbookFile);
  const draft = `${file}.${process.pid}.draft`;
  try {
    writeFileSync(draft, bytes, { flag: "wx" });
    // a link is refused where the name is taken meanwhile, a move would not be
    if (overwrite) renameSync(draft, file);
    else moveToFree(draft, file);
  } catch (error) {
    fail(`${workbookFile} cannot be written: ${reasonOf(error)}. What was there is as it was.`);
  } finally {
    rmSync(draft, { force: true });
  }
}

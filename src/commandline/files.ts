/**
 * Batch files for the command line: every problem of a bad one is told.
 */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { UnplannableBatch } from "../cellar/batch/attempt";
import { placedFields } from "../cellar/batch/field-kinds";
import { fields } from "../cellar/batch/fields";
import { batchFileContent } from "../cellar/batch/file-text";
import { parseBatchInputs } from "../cellar/batch/inputs";
import { planBatch } from "../cellar/batch/plan";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import type { Batch } from "../workbook/book";
import { Failure, fail, fromHere, kindAt, reasonOf } from "./places";

function readJson(file: string): unknown {
  const read = batchFileContent(bytesOf(file));
  if ("content" in read) return read.content;
  const { fault, where } = read;
  const line = where?.line === undefined ? "" : ` (line ${where.line})`;
  const workbook = /\.xlsx?$/iu.test(file) ? "; a workbook is opened in the page" : "";
  fail(`${file} is not a batch file: ${fault}${where ? `: ${where.message}` : ""}${line}${workbook}.`);
}

function bytesOf(file: string): Uint8Array {
  const kind = kindAt(file);
  if (kind === "folder") fail(`${file} is a folder; give a batch file, or --season before a folder of them.`);
  if (kind === "nothing") fail(`${file} is not there; give the path of a batch file.`);
  try {
    return readFileSync(fromHere(file));
  } catch (error) {
    fail(`${file} cannot be read: ${reasonOf(error)}.`);
  }
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

/** The batch files of a folder, by name, without what a system keeps there hidden. */
export function batchFiles(folder: string): string[] {
  const kind = kindAt(folder);
  if (kind !== "folder") {
    fail(`${folder} is ${kind === "file" ? "a file" : "not there"}; give a folder with batch files.`);
  }
  let names: string[];
  try {
    names = readdirSync(fromHere(folder));
  } catch (error) {
    fail(`${folder} cannot be read: ${reasonOf(error)}.`);
  }
  const files = names
    .filter((name) => name.toLowerCase().endsWith(".json") && !name.startsWith("."))
    .sort()
    .map((name) => path.join(folder, name))
    .filter((file) => kindAt(file) !== "folder");
  if (files.length === 0) fail(`${folder} has no batch files; their names end in .json.`);
  return files;
}

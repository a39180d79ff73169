/**
 * The invented batches of estate Oxlip Hill. They exercise the program; their numbers are never used as a check.
 */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { parseBatchInputs } from "../../src/cellar/batch/inputs";
import { planBatch } from "../../src/cellar/batch/plan";
import type { BatchInputs } from "../../src/cellar/batch/fields";

const FOLDER = path.resolve(__dirname, "../../sample-workbooks");

export const sampleFiles = readdirSync(FOLDER).filter((file) => file.endsWith(".json"));
export const samplePath = (file: string) => path.join(FOLDER, file);

export function sampleJson(file: string): Record<string, Record<string, unknown>> {
  return JSON.parse(readFileSync(samplePath(file), "utf8")) as Record<string, Record<string, unknown>>;
}

export function inputsOf(given: unknown): BatchInputs {
  const parsed = parseBatchInputs(given);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
  return parsed.inputs;
}

export const sampleInputs = (file: string) => inputsOf(sampleJson(file));

/** All of them, planned. */
export const sampleBatches = () =>
  sampleFiles.map((file) => {
    const inputs = sampleInputs(file);
    return { inputs, plan: planBatch(inputs) };
  });

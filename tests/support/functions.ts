/**
 * All functions with their metadata, as the build makes them.
 */
import { readdirSync } from "node:fs";
import path from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import type { CustomFunction, FunctionMetadata } from "../../src/hosts/grid/functions";

const FOLDER = path.resolve(__dirname, "../../src/functions");
export const adapterFiles = readdirSync(FOLDER).map((file) => path.join(FOLDER, file));

export interface AllFunctions {
  readonly metadata: readonly FunctionMetadata[];
  readonly implementations: ReadonlyMap<string, CustomFunction>;
  readonly json: string;
}

export async function allFunctions(): Promise<AllFunctions> {
  const generated = await generateCustomFunctionsMetadata(adapterFiles, true);
  if (generated.errors.length > 0) throw new Error(generated.errors.join("\n"));
  const implementations = new Map<string, CustomFunction>();
  for (const { id, functionName, sourceFileName } of generated.associate) {
    const module = (await import(sourceFileName)) as Record<string, CustomFunction>;
    implementations.set(id, module[functionName]!);
  }
  const { functions } = JSON.parse(generated.metadataJson) as { functions: FunctionMetadata[] };
  return { metadata: functions, implementations, json: generated.metadataJson };
}

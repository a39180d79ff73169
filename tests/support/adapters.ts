/**
 * Every spreadsheet function with what its doc comment says, read from the source without the build's generator, which
 * takes seconds.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import * as ageing from "../../src/functions/ageing";
import * as cost from "../../src/functions/cost";
import * as disgorging from "../../src/functions/disgorging";
import * as dosage from "../../src/functions/dosage";
import * as dosageBench from "../../src/functions/dosage-bench";
import * as label from "../../src/functions/label";
import * as pressure from "../../src/functions/pressure";
import * as riddling from "../../src/functions/riddling";
import * as sugar from "../../src/functions/sugar";
import * as sweetness from "../../src/functions/sweetness";
import * as tirage from "../../src/functions/tirage";
import * as tiragePressure from "../../src/functions/tirage-pressure";
import * as tirageReadings from "../../src/functions/tirage-readings";

const MODULES = {
  ageing,
  cost,
  disgorging,
  dosage,
  "dosage-bench": dosageBench,
  label,
  pressure,
  riddling,
  sugar,
  sweetness,
  tirage,
  "tirage-pressure": tiragePressure,
  "tirage-readings": tirageReadings,
} as const;
const FOLDER = path.resolve(__dirname, "../../src/functions");

export interface Parameter {
  readonly name: string;
  readonly optional: boolean;
  readonly text: string;
}
export interface Adapter {
  readonly id: string;
  readonly calculate: (...args: unknown[]) => unknown;
  readonly parameters: readonly Parameter[];
  /** "TIRAGE.SUGAR(50, 24) = 121.83" */
  readonly example: string;
}

export const adapters: readonly Adapter[] = Object.entries(MODULES).flatMap(([file, module]) => {
  const source = readFileSync(path.join(FOLDER, `${file}.ts`), "utf8");
  return [...source.matchAll(/\/\*\*((?:(?!\*\/).)*)\*\/\s*export function (\w+)/gsu)].map(
    ([, comment = "", name = ""]): Adapter => ({
      id: /@customfunction (\S+)/u.exec(comment)![1]!,
      calculate: (module as Record<string, unknown>)[name] as Adapter["calculate"],
      parameters: [...comment.matchAll(/@param (\[?)(\w+)\]? (.*)/gu)].map(
        ([, bracket, parameter = "", text = ""]) => ({ name: parameter, optional: bracket === "[", text }),
      ),
      example: /@example (.*)/u.exec(comment)![1]!,
    }),
  );
});

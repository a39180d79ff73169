/**
 * From what stands in the form to a plan, or to what has to be mended first.
 */
import { UnplannableBatch } from "../cellar/batch/attempt";
import { isField, type FieldTree } from "../cellar/batch/field-kinds";
import { fields, sectionTitles, type BatchInputs } from "../cellar/batch/fields";
import { parseBatchInputs } from "../cellar/batch/inputs";
import { planBatch, type BatchPlan } from "../cellar/batch/plan";
import type { Problem } from "../cellar/batch/problem";

export type Planned =
  { readonly inputs: BatchInputs; readonly plan: BatchPlan } | { readonly problems: readonly Problem[] };

export function planned(given: unknown): Planned {
  const parsed = parseBatchInputs(given);
  if (!parsed.ok) return { problems: parsed.problems };
  try {
    return { inputs: parsed.inputs, plan: planBatch(parsed.inputs) };
  } catch (error) {
    if (error instanceof UnplannableBatch) return { problems: error.problems };
    throw error;
  }
}

/** "3 fields to mend before there is a plan: Batch 1, Dosage 2". */
export function mendingSentence(problems: readonly Problem[]): string {
  const counts = Object.entries(sectionTitles).flatMap(([section, title]) => {
    const count = problems.filter(({ field }) => field.split(".")[0] === section).length;
    return count === 0 ? [] : [`${title} ${count}`];
  });
  const fieldsToMend = problems.length === 1 ? "1 field" : `${problems.length} fields`;
  const areBlank = problems.every(({ given }) => given === null || given === "" || given === undefined);
  return areBlank
    ? `${fieldsToMend} to fill in before there is a plan: ${counts.join(", ")}.`
    : `${fieldsToMend} to mend before there is a plan: ${counts.join(", ")}.`;
}

/** Whether a file's content is a batch at all: an object with at least one of a batch's sections. */
export const looksLikeBatch = (content: unknown): boolean =>
  typeof content === "object" &&
  content !== null &&
  !Array.isArray(content) &&
  Object.keys(fields).some((section) => section in content);

/** Level by level, as a function that calls itself comes to its end in such content. */
const DEEPEST = 20;
export function isDeep(content: unknown): boolean {
  let level: unknown[] = [content];
  for (let depth = 0; depth <= DEEPEST && level.length > 0; depth++) {
    level = level.flatMap((each): unknown[] =>
      typeof each === "object" && each !== null ? Object.values(each) : [],
    );
  }
  return level.length > 0;
}

/** What a batch file holds that the form has no place for. */
export const withoutPlace = (batch: unknown): readonly string[] => strangers(fields, batch, []);

function strangers(tree: FieldTree, given: unknown, path: readonly string[]): string[] {
  if (given === undefined || given === null) return [];
  if (typeof given !== "object" || Array.isArray(given)) return [path.join(".")];
  return Object.entries(given).flatMap(([key, value]) => {
    const at = [...path, key];
    const node = Object.hasOwn(tree, key) ? tree[key] : undefined;
    if (node === undefined) return [at.join(".")];
    return isField(node) ? [] : strangers(node, value, at);
  });
}

/**
 * What the pane does in the workbook: writes a batch, reads a plan back, changes its inputs, writes the season.
 */
import { UnplannableBatch } from "../cellar/batch/attempt";
import type { BatchInputs } from "../cellar/batch/fields";
import { parseBatchInputs } from "../cellar/batch/inputs";
import { planBatch, type BatchPlan } from "../cellar/batch/plan";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import type { Host, NamedSheet } from "../hosts/host";
import { readNamedSheets } from "../hosts/xlsx/read";
import { batchBook, seasonOf, type Formulas } from "../workbook/book";
import type { LinkedPlan } from "../workbook/linked-plan";
import { NOTES_MARK } from "../workbook/notes/sheet";
import { CHECKS_HEADING } from "../workbook/plan/checks";
import {
  PLAN_MARK,
  batchOnSheet,
  unreadInputs,
  inputChanges,
  type Comparison,
  type InputChange,
} from "../workbook/plan/read";

export const plansIn = (host: Host) => host.sheetsNaming(PLAN_MARK);

/** The plan's sheet as it is now; it may be gone, or renamed. */
async function planNow(host: Host, name: string): Promise<NamedSheet> {
  const found = (await plansIn(host)).find((sheet) => sheet.name === name);
  if (!found) throw new Error(`There is no plan “${name}” any more: it was deleted or renamed.`);
  return found;
}

/** Writes Plan, What-if and Register, and Notes if there are none; answers in words. */
export async function writeBatch(
  host: Host,
  inputs: BatchInputs,
  plan: BatchPlan,
  formulas: Formulas = "add-in",
): Promise<string> {
  const [notes] = await host.sheetsNaming(NOTES_MARK);
  const { sheets } = batchBook([{ inputs, plan }], await host.sheetNames(), {
    formulas,
    ...(notes && { known: { sheet: notes.name, places: notes.cells } }),
  });
  await host.write({ sheets });
  const [sheet] = sheets;
  const row = sheet!.cells.find(({ value }) => value === CHECKS_HEADING)!.row + 1;
  const others = sheets.slice(1).map(({ name }) => `“${name}”`);
  return (
    `Written to ${host.name}: sheet “${sheet!.name}”. Look at its checks first, from row ${row}: the worst is ` +
    `“${plan.worst}”. With it: ${others.join(", ")}.`
  );
}

/** What stands in the sheet, and the inputs that could not be read from it. */
export async function readPlan(
  host: Host,
  name: string,
): Promise<{ readonly batch: unknown; readonly unread: readonly string[] }> {
  const { cells } = await planNow(host, name);
  return { batch: batchOnSheet(cells), unread: unreadInputs(cells) };
}

export const compareWith = async (host: Host, name: string, inputs: BatchInputs): Promise<Comparison> =>
  inputChanges((await planNow(host, name)).cells, inputs);

export interface PlanInFile {
  readonly name: string;
  readonly batch: unknown;
  readonly unread: readonly string[];
}

/** The plans that a workbook file holds, saved by whichever program. */
export async function plansInFile(file: Uint8Array): Promise<PlanInFile[]> {
  const sheets = await readNamedSheets(file, PLAN_MARK).catch((reason: unknown) => {
    throw new Error("it is not an .xlsx workbook that can be read", { cause: reason });
  });
  return sheets.map(({ name, cells }) => ({
    name,
    batch: batchOnSheet(cells),
    unread: unreadInputs(cells),
  }));
}

/** Puts in what was shown, unless the sheet has changed since. */
export async function updatePlan(
  host: Host,
  name: string,
  inputs: BatchInputs,
  shown: readonly InputChange[],
): Promise<string> {
  const { changes } = await compareWith(host, name, inputs);
  if (JSON.stringify(changes) !== JSON.stringify(shown)) {
    throw new Error(`“${name}” has changed meanwhile, so nothing was put in: look at the changes again.`);
  }
  await host.change(changes.map(({ row, column, to }) => ({ sheet: name, row, column, value: to })));
  const count = changes.length === 1 ? "1 input" : `${changes.length} inputs`;
  return `Changed ${count} of “${name}”; nothing else was touched.`;
}

/** Writes a season of all plans in the workbook; answers in words. */
export async function writeSeason(host: Host, formulas: Formulas = "add-in"): Promise<string> {
  const found = await plansIn(host);
  if (found.length === 0) throw new Error("There is no plan in the workbook yet: write one first.");
  const linked = found.map(linkedFrom);
  const problems = linked.flatMap((each) => ("problems" in each ? [problemsOf(each)] : []));
  if (problems.length > 0) throw new Error(`Mend these plans first. ${problems.join(" ")}`);
  const plans = linked.flatMap((each) => ("problems" in each ? [] : [each]));
  const [notes] = await host.sheetsNaming(NOTES_MARK);
  const known = notes && { sheet: notes.name, places: notes.cells };
  const sheet = seasonOf(plans, await host.sheetNames(), known, formulas);
  await host.write({ sheets: [sheet] });
  const count = plans.length === 1 ? "1 plan" : `${plans.length} plans`;
  return `Written to ${host.name}: sheet “${sheet.name}”, from ${count}. It follows them from now on.`;
}

interface Faulty {
  readonly sheet: string;
  readonly problems: readonly Problem[];
}

function linkedFrom({ name, cells }: NamedSheet): LinkedPlan | Faulty {
  const parsed = parseBatchInputs(batchOnSheet(cells));
  if (!parsed.ok) return { sheet: name, problems: parsed.problems };
  try {
    return { inputs: parsed.inputs, plan: planBatch(parsed.inputs), sheet: name, places: cells };
  } catch (error) {
    if (error instanceof UnplannableBatch) return { sheet: name, problems: error.problems };
    throw error;
  }
}

const problemsOf = ({ sheet, problems }: Faulty) =>
  `“${sheet}”: ${problems.map((problem) => problemSentence(problem)).join("; ")}.`;

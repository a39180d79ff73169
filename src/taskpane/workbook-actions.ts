/**
 * What the pane does in the workbook: writes a batch, reads a plan back, changes its inputs, writes the season.
 */
import { UnplannableBatch } from "../cellar/batch/attempt";
import type { BatchInputs } from "../cellar/batch/fields";
import { parseBatchInputs } from "../cellar/batch/inputs";
import { planBatch, type BatchPlan } from "../cellar/batch/plan";
import { problemSentence, type Problem } from "../cellar/batch/problem";
import type { Host, NamedSheet, Progress } from "../hosts/host";
import { FileRefusal } from "../hosts/xlsx/package";
import { readNamedSheets } from "../hosts/xlsx/read";
import { batchBook, seasonOf, type Formulas } from "../workbook/book";
import type { LinkedPlan } from "../workbook/linked-plan";
import { NOTES_LANGUAGE } from "../workbook/notes/names";
import { NOTES_MARK } from "../workbook/notes/sheet";
import { CHECKS_HEADING } from "../workbook/plan/checks";
import { plainWord, sheetWords, typedTexts } from "../workbook/sheet-words";
import { translatedSheets } from "../workbook/translated";
import { translator } from "../words/translate";
import { ENGLISH, languageCalled, languagesAtHand, type SheetLanguage } from "../words/sheet-language";
import {
  PLAN_LANGUAGE,
  PLAN_MARK,
  batchOnSheet,
  unreadInputs,
  inputChanges,
  inSheetWords,
  isLive,
  plainCells,
  type Comparison,
  type InputChange,
} from "../workbook/plan/read";

/** Every plan, with the words of its choices as the code knows them. */
export async function plansIn(host: Host): Promise<NamedSheet[]> {
  const [sheets, languages] = await Promise.all([host.sheetsNaming(PLAN_MARK), languagesAtHand()]);
  const plain = plainWord(languages);
  return sheets.map(({ name, cells }) => ({ name, cells: plainCells(cells, plain) }));
}

/** The Notes sheet that is there, and its language. */
async function notesIn(host: Host) {
  const [notes] = await host.sheetsNaming(NOTES_MARK);
  if (!notes) return { known: undefined, language: undefined };
  return {
    known: { sheet: notes.name, places: notes.cells },
    language: await languageCalled(notes.cells.get(NOTES_LANGUAGE)?.value),
  };
}

const languageOf = ({ cells }: NamedSheet) => languageCalled(cells.get(PLAN_LANGUAGE)?.value);

/** A season counts words of its plans, so they have to be in one language. */
async function commonLanguage(plans: readonly NamedSheet[]): Promise<SheetLanguage> {
  const languages = await Promise.all(plans.map(languageOf));
  const [first = ENGLISH] = languages;
  const other = languages.findIndex(({ code }) => code !== first.code);
  if (other < 0) return first;
  throw new Error(
    `“${plans[0]!.name}” is in ${first.name}, “${plans[other]!.name}” in ${languages[other]!.name}: a season takes ` +
      "plans in one language. Write those of the other language anew.",
  );
}

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
  progress?: Progress,
  wanted: SheetLanguage = ENGLISH,
): Promise<{ readonly said: string; readonly sheets: readonly string[] }> {
  const { known, language = wanted } = await notesIn(host);
  const taken = await host.sheetNames();
  const { sheets: english } = batchBook([{ inputs, plan }], taken, { formulas, ...(known && { known }) });
  const row = english[0]!.cells.find(({ value }) => value === CHECKS_HEADING)!.row + 1;
  const sheets = translatedSheets(english, language, { taken, typed: typedTexts(inputs) });
  const leftOut = await host.write({ sheets }, progress);
  const [sheet] = sheets;
  const others = sheets.slice(1).map(({ name }) => `“${name}”`);
  const said =
    `Written to ${host.name}: sheet “${sheet!.name}”. Look at its checks first, from row ${row}: the worst is ` +
    `“${translator(language.catalogue)(plan.worst)}”. With it: ${others.join(", ")}.`;
  return { said: [said, ...leftOut].join(" "), sheets: sheets.map(({ name }) => name) };
}

/** What stands in the sheet, and the inputs that could not be read from it. */
export async function readPlan(
  host: Host,
  name: string,
): Promise<{ readonly batch: unknown; readonly unread: readonly string[]; readonly live: boolean }> {
  const { cells } = await planNow(host, name);
  return { batch: batchOnSheet(cells), unread: unreadInputs(cells), live: isLive(cells) };
}

export async function compareWith(host: Host, name: string, inputs: BatchInputs): Promise<Comparison> {
  const { cells } = await planNow(host, name);
  if (!isLive(cells)) {
    throw new Error(`“${name}” holds values only, which would not follow: write another plan instead.`);
  }
  return inputChanges(cells, inputs);
}

export interface PlanInFile {
  readonly name: string;
  readonly batch: unknown;
  readonly unread: readonly string[];
}

/** The plans that a workbook file holds, saved by whichever program. */
export async function plansInFile(file: Uint8Array): Promise<PlanInFile[]> {
  const sheets = await readNamedSheets(file, PLAN_MARK).catch((reason: unknown) => {
    if (reason instanceof FileRefusal) throw reason;
    throw new Error("it is not an .xlsx workbook that can be read", { cause: reason });
  });
  const plain = plainWord(await languagesAtHand());
  return sheets.map(({ name, cells }) => ({
    name,
    batch: batchOnSheet(plainCells(cells, plain)),
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
  const say = sheetWords(await languageOf(await planNow(host, name)));
  const inWords = (change: InputChange) => inSheetWords(change, say);
  await host.change(
    changes.map((each) => ({ sheet: name, row: each.row, column: each.column, value: inWords(each) })),
  );
  const count = changes.length === 1 ? "1 input" : `${changes.length} inputs`;
  return `Changed ${count} of “${name}”; nothing else was touched.`;
}

/** Writes a season of all plans in the workbook; answers in words. */
export async function writeSeason(
  host: Host,
  formulas: Formulas = "add-in",
  progress?: Progress,
): Promise<string> {
  const found = await plansIn(host);
  if (found.length === 0) throw new Error("There is no plan in the workbook yet: write one first.");
  const linked = found.map(linkedFrom);
  const problems = linked.flatMap((each) => ("problems" in each ? [problemsOf(each)] : []));
  if (problems.length > 0) throw new Error(`Mend these plans first. ${problems.join(" ")}`);
  const plans = linked.flatMap((each) => ("problems" in each ? [] : [each]));
  const language = await commonLanguage(found);
  const { known } = await notesIn(host);
  const taken = await host.sheetNames();
  const typed = plans.flatMap(({ inputs }) => typedTexts(inputs));
  const [sheet] = translatedSheets([seasonOf(plans, taken, known, formulas)], language, { taken, typed });
  const leftOut = await host.write({ sheets: [sheet!] }, progress);
  const count = plans.length === 1 ? "1 plan" : `${plans.length} plans`;
  const said = `Written to ${host.name}: sheet “${sheet!.name}”, from ${count}. It follows them from now on.`;
  return [said, ...leftOut].join(" ");
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

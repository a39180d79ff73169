/**
 * Sheets of several languages in one workbook, and words that are somebody's own.
 */
import { placedFields } from "../../src/cellar/batch/field-kinds";
import { fields, type BatchInputs } from "../../src/cellar/batch/fields";
import { planBatch } from "../../src/cellar/batch/plan";
import { gridHost, type GridHost } from "../../src/hosts/grid/grid-host";
import {
  compareWith,
  readPlan,
  updatePlan,
  writeBatch,
  writeSeason,
} from "../../src/taskpane/workbook-actions";
import { seasonBook } from "../../src/workbook/book";
import { sheetWords, typedTexts } from "../../src/workbook/sheet-words";
import { translatedSheets } from "../../src/workbook/translated";
import { fr } from "../../src/words/fr";
import { languageCalled } from "../../src/words/sheet-language";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { inputsOf, sampleInputs } from "../support/samples";

const FRENCH = { code: "fr", name: "Français", catalogue: fr };
const brut = sampleInputs("oxlip-hill-brut.json");
const named = (inputs: BatchInputs, name: string, lot = ""): BatchInputs => ({
  ...inputs,
  batch: { ...inputs.batch, name, lot },
});

let grid: HeadlessGrid;
let host: GridHost;
beforeEach(async () => {
  grid = await headlessGrid();
  host = gridHost(grid.api);
});
afterEach(() => grid.dispose());

const write = async (inputs: BatchInputs, code: string) =>
  (await writeBatch(host, inputs, planBatch(inputs), "add-in", undefined, await languageCalled(code))).sheets;

test("every word of a choice is the same, written with the plan or by an update", async () => {
  const [plan = ""] = await write(brut, "fr");
  const choices = placedFields(fields).flatMap(({ field, path, dotted }) =>
    field.kind === "choice" ? field.options.map((option) => ({ dotted, path, option })) : [],
  );
  const written = new Map<string, unknown>();
  for (const { dotted, path, option } of choices) {
    const [section, key] = path as [keyof BatchInputs, string];
    const changed = { ...brut, [section]: { ...brut[section], [key]: option } } as BatchInputs;
    const { changes } = await compareWith(host, plan, changed);
    const own = changes.find(({ said }) => said.endsWith(`→ ${option}`));
    if (!own) continue;
    await updatePlan(host, plan, changed, changes);
    expect((await compareWith(host, plan, changed)).changes).toEqual([]);
    const cell = (await host.sheetsNaming("plan_worst"))[0]!.cells.get(path.join("_"));
    expect([dotted, cell?.value]).toEqual([dotted, sheetWords(FRENCH)(option)]);
    written.set(`${dotted} ${option}`, cell?.value);
    const back = await compareWith(host, plan, brut);
    await updatePlan(host, plan, brut, back.changes);
  }
  expect(written.size).toBeGreaterThan(15);
});

test("a season takes plans in one language, and is in theirs", async () => {
  await write(named(brut, "A"), "fr");
  await host.remove(["Notes"]);
  await write(named(brut, "B"), "en");
  await expect(writeSeason(host)).rejects.toThrow(
    "“Plan · A” is in Français, “Plan · B” in English: a season takes plans in one language.",
  );
  await host.remove(["Plan · B"]);
  expect(await writeSeason(host)).toContain("sheet “Saison”, from 1 plan");
});

test("a plan is brought up to date in its own language, whatever the notes say", async () => {
  const [plan = ""] = await write(brut, "fr");
  await host.remove(["Notes"]);
  const dose = inputsOf({ ...brut, tirage: { ...brut.tirage, goal: "dose", dose_gL: 22 } });
  const { changes } = await compareWith(host, plan, dose);
  await updatePlan(host, plan, dose, changes);
  const [sheet] = await host.sheetsNaming("plan_worst");
  expect(sheet!.cells.get("tirage_goal")!.value).toBe(sheetWords(FRENCH)("dose"));
});

test("a sheet of values only is not brought up to date", async () => {
  const [plan = ""] = await write(brut, "en");
  await grid.settled().catch(() => undefined);
  await host.freeze(plan);
  expect((await readPlan(host, plan)).live).toBe(false);
  await expect(compareWith(host, plan, named(brut, "Other"))).rejects.toThrow("holds values only");
});

test("names and lots that are words of ours stay as they were typed, everywhere", () => {
  const inputs = named(brut, "Reserve", "none");
  const batch = { inputs, plan: planBatch(inputs) };
  for (const kind of ["add-in", "portable", "values"] as const) {
    const english = seasonBook([batch], kind);
    const french = translatedSheets(english, FRENCH, { typed: typedTexts(inputs) });
    english.forEach(({ cells }, sheet) =>
      cells.forEach(({ value }, cell) => {
        const there = french[sheet]!.cells[cell]!.value;
        if (value === "Reserve" || value === "none") expect(there).toBe(value);
        if (typeof value === "string" && value.includes(": Reserve")) expect(there).toMatch(/: Reserve$/);
      }),
    );
    expect(french.some(({ name }) => name === "Registre · Reserve")).toBe(true);
  }
});

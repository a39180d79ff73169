/**
 * French is complete, and sheets written in it calculate as the English ones do.
 */
import { gridHost } from "../../src/hosts/grid/grid-host";
import { readPlan, writeBatch } from "../../src/taskpane/workbook-actions";
import { planBatch } from "../../src/cellar/batch/plan";
import { placedFields } from "../../src/cellar/batch/field-kinds";
import { fields } from "../../src/cellar/batch/fields";
import { seasonBook } from "../../src/workbook/book";
import { plainWord, typedTexts } from "../../src/workbook/sheet-words";
import { translatedSheets } from "../../src/workbook/translated";
import { fr } from "../../src/words/fr";
import { languageCalled, languagesAtHand } from "../../src/words/sheet-language";
import { translator } from "../../src/words/translate";
import { calculatedByLibreOffice, differencesFrom, errorsIn } from "../support/independent";
import { libreOfficeTest, removeConversions } from "../support/libreoffice";
import { headlessGrid } from "../support/grid";
import { sampleFiles, sampleInputs } from "../support/samples";
import { sheetTexts } from "../support/sheet-texts";
import { sourceTexts } from "../support/source-texts";
import { NOT_SHOWN, SAME_IN_FRENCH } from "./not-shown";
afterAll(removeConversions);

const translate = translator(fr);
const batches = sampleFiles.map((file) => {
  const inputs = sampleInputs(file);
  return { inputs, plan: planBatch(inputs) };
});
const FRENCH = { code: "fr", name: "Français", catalogue: fr };
const typed = batches.flatMap(({ inputs }) => typedTexts(inputs));
const kinds = ["add-in", "portable", "values"] as const;
const placeholders = (text: string) => [...new Set(text.match(/\{\d+\}/gu) ?? [])].sort();

test("every text of the code is French, or listed as one that nobody reads", () => {
  const missing = sourceTexts().filter(
    ({ text }) => fr[text] === undefined && !NOT_SHOWN.has(text) && !SAME_IN_FRENCH.has(text),
  );
  expect(missing).toEqual([]);
});

test("what is put into a text is put into the other one", () => {
  const wrong = Object.entries(fr).filter(
    ([english, french]) => placeholders(english).join() !== placeholders(french).join(),
  );
  expect(wrong).toEqual([]);
});

test("no text is empty or left with a space too much", () => {
  const wrong = Object.entries(fr).filter(
    ([english, text]) => text.trim() === "" || / {2}/u.test(text) !== / {2}/u.test(english),
  );
  expect(wrong).toEqual([]);
});

test.each(kinds)("sheets with formulas %s leave no word in English", (formulas) => {
  const left = [...sheetTexts(seasonBook(batches, formulas))].filter(
    (text) => /\p{L}{2}/u.test(text) && translate(text) === text && !SAME_IN_FRENCH.has(text),
  );
  expect(left).toEqual([]);
});

test("words of a choice stay different from one another", () => {
  for (const { field } of placedFields(fields)) {
    if (field.kind !== "choice") continue;
    expect(new Set(field.options.map(translate)).size).toBe(field.options.length);
  }
});

libreOfficeTest(
  "a portable season in French: LibreOffice calculates every cell as the module does",
  async () => {
    const module = translatedSheets(seasonBook(batches), FRENCH, { typed });
    const portable = translatedSheets(seasonBook(batches, "portable"), FRENCH, { typed });
    expect(module.map(({ name }) => name)).toContain("Saison");
    const read = await calculatedByLibreOffice(portable);
    expect(differencesFrom(module, read)).toEqual([]);
    expect(errorsIn(portable, read)).toEqual([]);
  },
);

test("a plan written in French is read back, and what follows is in the workbook's language", async () => {
  const grid = await headlessGrid();
  const host = gridHost(grid.api);
  const inputs = sampleInputs("oxlip-hill-rose.json");
  const french = await languageCalled("fr");
  const { sheets, said } = await writeBatch(host, inputs, planBatch(inputs), "add-in", undefined, french);
  const { batch, unread } = await readPlan(host, sheets[0]!);
  // the word that stands in the sheet
  expect(said).toContain(`“${fr[planBatch(inputs).worst]}”`);
  expect(unread).toEqual([]);
  expect(batch).toMatchObject({ tirage: { goal: inputs.tirage.goal }, dosage: { kind: inputs.dosage.kind } });
  // asked for in English, where there are French sheets already
  const more = await writeBatch(
    host,
    { ...inputs, batch: { ...inputs.batch, name: "B" } },
    planBatch(inputs),
  );
  expect(more.sheets.some((name) => name.startsWith("Registre · "))).toBe(true);
  grid.dispose();
});

test("a word that the code does not know is refused, not guessed", async () => {
  const plain = plainWord(await languagesAtHand());
  expect(plain("sucre sec", ["dry sugar", "liqueur"])).toBe("dry sugar");
  expect(plain("Zucker", ["dry sugar", "liqueur"])).toBeUndefined();
});

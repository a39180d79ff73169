/**
 * Words of the sheets in another language: which of them change, and the way back to the code's own.
 */
import { placedFields } from "../cellar/batch/field-kinds";
import { fields, type BatchInputs } from "../cellar/batch/fields";
import { designations } from "../cellar/rules/designations";
import { BETWEEN_CLASSES, pressureRules } from "../cellar/rules/pressure-classes";
import { LANGUAGES, sweetnessRules } from "../cellar/rules/sweetness-bands";
import type { SheetLanguage } from "../words/sheet-language";
import { translator, type Translate } from "../words/translate";

/** Words that our functions take or give; they know them in no other language. */
const functionWords: ReadonlySet<string> = new Set([
  ...designations.map(({ name }) => name),
  ...Object.keys(sweetnessRules),
  ...LANGUAGES,
  ...Object.values(sweetnessRules).flatMap(({ bands }) =>
    bands.flatMap(({ terms }) => Object.values(terms).flat()),
  ),
  ...Object.values(pressureRules).flatMap(({ classes }) => classes.map(({ name }) => name)),
  BETWEEN_CLASSES,
  // what SWEETNESS.CHECK answers
  "permitted",
  "within tolerance",
  "not permitted",
]);

/** What a sheet says for a text of ours. `typed`: texts that are somebody's own, as they typed them. */
export const sheetWords = ({ catalogue }: SheetLanguage, typed: readonly string[] = []): Translate =>
  translator(catalogue, new Set([...functionWords, ...typed]));

/** Every free text of a batch: names, lots, notes. */
export const typedTexts = (inputs: BatchInputs): string[] =>
  placedFields(fields).flatMap(({ field, path }) => {
    if (field.kind !== "text") return [];
    const value = path.reduce<unknown>((node, key) => (node as Record<string, unknown>)[key], inputs);
    return typeof value === "string" && value !== "" ? [value] : [];
  });

/** Finds the English word behind one of several options, in whichever of these languages it stands. */
export function plainWord(languages: readonly SheetLanguage[]) {
  const all = languages.map((language) => sheetWords(language));
  return (word: string, options: readonly string[]): string | undefined =>
    options.find((option) => all.some((say) => say(option) === word));
}

/**
 * The languages in which sheets are written.
 */
import { LANGUAGES, type LanguageChoice } from "./languages";
import type { Catalogue } from "./translate";

export interface SheetLanguage {
  readonly code: string;
  readonly name: string;
  readonly catalogue: Catalogue;
}

export const ENGLISH: SheetLanguage = { code: LANGUAGES[0].code, name: LANGUAGES[0].name, catalogue: {} };

export async function sheetLanguage({ code, name, load }: LanguageChoice): Promise<SheetLanguage> {
  return { code, name, catalogue: await load() };
}

/** What a sheet says of its language; sheets from before there were several are English. */
export async function languageCalled(code: unknown): Promise<SheetLanguage> {
  const found = LANGUAGES.find((each) => each.code === code);
  return found ? sheetLanguage(found) : ENGLISH;
}

/** All that can be loaded: with the server gone, words of another language are refused, not guessed. */
export async function languagesAtHand(): Promise<SheetLanguage[]> {
  const loaded = await Promise.allSettled(LANGUAGES.map(sheetLanguage));
  return loaded.flatMap((each) => (each.status === "fulfilled" ? [each.value] : []));
}

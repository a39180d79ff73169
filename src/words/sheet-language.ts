/**
 * The language in which sheets are written, and words read back from any language that there is.
 */
import { LANGUAGES, type LanguageChoice } from "./languages";
import { translator, type Translate } from "./translate";

export interface SheetLanguage {
  readonly code: string;
  readonly translate: Translate;
}

export const ENGLISH: SheetLanguage = { code: "en", translate: (text) => text };

export async function sheetLanguage({ code, load }: LanguageChoice): Promise<SheetLanguage> {
  return { code, translate: translator(await load()) };
}

/** What Notes says of its language; sheets from before there were several are English. */
export async function languageCalled(code: unknown): Promise<SheetLanguage> {
  const found = LANGUAGES.find((each) => each.code === code);
  return found ? sheetLanguage(found) : ENGLISH;
}

/**
 * The English word behind one of several, in whichever language it stands; undefined if it is none of them. A language
 * that cannot be loaded, as when the server is gone, is left out: its words are then refused, not guessed.
 */
export async function plainWords(): Promise<
  (word: string, options: readonly string[]) => string | undefined
> {
  const loaded = await Promise.allSettled(LANGUAGES.map(sheetLanguage));
  const all = loaded.flatMap((each) => (each.status === "fulfilled" ? [each.value] : []));
  return (word, options) => options.find((option) => all.some(({ translate }) => translate(option) === word));
}

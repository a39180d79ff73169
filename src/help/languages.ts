/**
 * The languages of the help pages and of functions.json. One more is one file beside words/fr-functions.ts and one
 * line here. The catalogues are not loaded as the pane does it, since the build's own loader cannot.
 */
import { fr } from "../words/fr";
import { frFunctions } from "../words/fr-functions";
import { LANGUAGES, type LanguageChoice } from "../words/languages";
import { translator, type Catalogue, type Translate } from "../words/translate";

export interface HelpLanguage {
  /** As in BCP 47. */
  readonly code: string;
  /** In its own words. */
  readonly name: string;
  /** Where its pages are within help: "", "fr/". */
  readonly folder: string;
  readonly say: Translate;
  /** Whether the functions' own catalogue has this text. */
  readonly knows: (text: string) => boolean;
}

/** What the functions say of themselves, and what everything else says. */
interface Words {
  readonly functions: Catalogue;
  readonly all: Catalogue;
}
const WORDS: Readonly<Record<string, Words>> = { fr: { functions: frFunctions, all: fr } };

export const ENGLISH: HelpLanguage = {
  code: "en",
  name: "English",
  folder: "",
  say: (text) => text,
  knows: () => true,
};

function described({ code, name }: LanguageChoice): HelpLanguage {
  const words = WORDS[code];
  if (words === undefined) {
    const file = `src/words/${code}-functions.ts`;
    throw new Error(
      `the functions are not described in ${name}; add ${file}, and a line in src/help/languages.ts`,
    );
  }
  const { functions, all } = words;
  const say = translator({ ...all, ...functions });
  return { code, name, folder: `${code}/`, say, knows: (text) => text in functions };
}

/** Those of the pane; English, in which the docs are written, comes first. */
export function helpLanguages(
  choices: readonly LanguageChoice[] = LANGUAGES,
): [HelpLanguage, ...HelpLanguage[]] {
  return [ENGLISH, ...choices.filter(({ code }) => code !== ENGLISH.code).map(described)];
}

/**
 * The language of the pane: the reader's own at first, then the one that was chosen.
 */
import { LANGUAGES, nearest } from "../words/languages";
import { sheetLanguage, type SheetLanguage } from "../words/sheet-language";
import { translator } from "../words/translate";
import { element } from "./dom";
import { showFor } from "./typed-numbers";
import { PageWords } from "./page-words";

const KEY = "mousse.language";

export interface Language {
  readonly element: HTMLElement;
  /** For sheets. */
  readonly sheets: () => Promise<SheetLanguage>;
}

function remembered(): string | null {
  try {
    return window.localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

/** The system's own way with numbers and dates, where it is of this language. */
const localeOf = (code: string) => (nearest(navigator.language).code === code ? undefined : code);

/** `roots`: the parts of the page that are ours. `spoken`: called when another language is spoken. */
export function languageChoice(roots: readonly Element[], spoken: () => void): Language {
  const words = new PageWords(roots);
  let chosen = nearest(remembered() ?? navigator.language);
  const list = element(
    "select",
    { class: "language", "aria-label": "Language" },
    ...LANGUAGES.map(({ code, name }) =>
      element("option", { value: code, lang: code, translate: "no" }, name),
    ),
  );
  list.value = chosen.code;

  async function speak(): Promise<void> {
    const { code, load } = chosen;
    try {
      const catalogue = await load();
      if (code !== chosen.code) return;
      document.documentElement.lang = code;
      showFor(localeOf(code));
      words.speak(translator(catalogue));
      spoken();
    } catch {
      if (code !== chosen.code) return;
      // what could not be loaded leaves the page, and what is written, as it is
      chosen = nearest(document.documentElement.lang);
      list.value = chosen.code;
    }
  }
  list.addEventListener("change", () => {
    chosen = nearest(list.value);
    try {
      window.localStorage.setItem(KEY, chosen.code);
    } catch {
      // it is asked again the next time
    }
    void speak();
  });
  void speak();
  return { element: list, sheets: () => sheetLanguage(chosen) };
}

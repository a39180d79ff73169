/**
 * The language of the pane: the reader's own at first, then the one that was chosen.
 */
import { LANGUAGES, nearest } from "../words/languages";
import { sheetLanguage, type SheetLanguage } from "../words/sheet-language";
import { translator } from "../words/translate";
import { element } from "./dom";
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

/** `roots`: the parts of the page that are ours. */
export function languageChoice(roots: readonly Element[]): Language {
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
      words.speak(translator(catalogue));
    } catch {
      // what could not be loaded leaves the page as it is
      list.value = document.documentElement.lang;
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

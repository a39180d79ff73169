/**
 * The list of the functions by family, with a search; the one that is chosen takes the list's place until it is left.
 */
import type { Host } from "../hosts/host";
import { button, element } from "./dom";
import { functionCall, type FunctionCall, type Spoken } from "./function-call";
import { familiesOf, firstSentence, isFound, type ListedFunction } from "./function-search";

export interface FunctionChoice {
  readonly element: HTMLElement;
  /** Back to the list, and to its search. */
  search(): void;
  hostFound(): void;
}

const ENGLISH = "en";
const read = new Map<string, Promise<readonly ListedFunction[]>>();

/** Beside the page, as Excel reads it. Asked for once, unless it fails: then it is asked for again. */
function functionsFrom(file: string): Promise<readonly ListedFunction[]> {
  const known = read.get(file) ?? fetched(file);
  read.set(file, known);
  known.catch(() => read.delete(file));
  return known;
}

async function fetched(file: string): Promise<readonly ListedFunction[]> {
  const answer = await fetch(file);
  if (!answer.ok) throw new Error(`The server answers ${answer.status} for ${file}.`);
  return ((await answer.json()) as { functions: readonly ListedFunction[] }).functions;
}

/** In English, from which kinds, units and defaults are read; the page's own language is asked for as well. */
export function listedFunctions(): Promise<readonly ListedFunction[]> {
  void spokenFunctions();
  return functionsFrom("functions.json");
}

/** In the page's language, or in English where the server does not have them in it. */
async function spokenFunctions(): Promise<Spoken> {
  const code = document.documentElement.lang;
  const spoken = code === ENGLISH ? [] : await functionsFrom(`functions.${code}.json`).catch(() => []);
  return spoken.length === 0
    ? { code: ENGLISH, functions: new Map() }
    : { code, functions: new Map(spoken.map((each) => [each.id, each])) };
}

export async function functionChoice(host: () => Host | null): Promise<FunctionChoice> {
  const functions = await listedFunctions();
  let spoken = await spokenFunctions();
  let call: FunctionCall | undefined;
  const said = (each: ListedFunction) => spoken.functions.get(each.id) ?? each;

  const search = element("input", {
    type: "search",
    id: "function-search",
    autocomplete: "off",
    spellcheck: "false",
    "aria-describedby": "function-count",
  });
  const count = element("p", { id: "function-count", class: "note", role: "status" });
  const families = familiesOf(functions).map((family) => {
    const entries = family.functions.map((each) => {
      const choose = button("", { class: "entry-button" });
      const what = element("span", { class: "what", translate: "no" });
      choose.append(element("span", { class: "id" }, each.id), " ", what);
      choose.addEventListener("click", () => open(each, choose));
      return { each, choose, what, item: element("li", {}, choose) };
    });
    const group = element(
      "details",
      { class: "family" },
      element("summary", {}, family.title),
      element("ul", {}, ...entries.map(({ item }) => item)),
    );
    return { group, entries };
  });
  const entries = families.flatMap((family) => family.entries);
  const list = element(
    "div",
    {},
    element(
      "div",
      { class: "search" },
      element("label", { for: search.id }, "Search for a function"),
      search,
      count,
    ),
    ...families.map(({ group }) => group),
  );
  const chosen = element("div", { hidden: true });

  /** English words find it too, whatever the page's language. */
  const inBoth = (each: ListedFunction) => ({
    ...each,
    description: `${each.description} ${said(each).description}`,
  });
  const isShown = ({ item }: (typeof entries)[number]) => !item.hidden;
  function narrow(): void {
    const wanted = search.value.trim();
    for (const { each, item } of entries) item.hidden = !isFound(inBoth(each), wanted);
    for (const { group, entries: own } of families) {
      group.hidden = !own.some(isShown);
      group.open = wanted !== "";
    }
    const found = entries.filter(isShown).length;
    count.textContent =
      wanted === ""
        ? `${found} functions. Words of the trade do as well: sugar, remuage, psi.`
        : found === 0
          ? `None of ${entries.length} functions; try fewer or other words.`
          : `${found} of ${entries.length} functions`;
  }
  function speak(): void {
    for (const { each, what } of entries) what.textContent = firstSentence(said(each).description);
    call?.speak(spoken);
    if (search.value.trim() !== "") narrow();
  }
  search.addEventListener("input", narrow);
  // from the search on to what it found; a single one is meant
  search.addEventListener("keydown", (event) => {
    if (event.key !== "Enter" || search.value.trim() === "") return;
    const [first, ...more] = entries.filter(isShown);
    if (more.length === 0) first?.choose.click();
    else first?.choose.focus();
  });

  function open(each: ListedFunction, choose: HTMLElement): void {
    call = functionCall(each, host, () => {
      close();
      choose.focus();
    });
    call.speak(spoken);
    chosen.replaceChildren(call.element);
    chosen.hidden = false;
    list.hidden = true;
    call.begin();
  }
  function close(): void {
    call = undefined;
    chosen.replaceChildren();
    chosen.hidden = true;
    list.hidden = false;
  }

  /** The page's language may be changed while the list is there. */
  async function follow(): Promise<void> {
    const { lang } = document.documentElement;
    const found = await spokenFunctions();
    if (lang !== document.documentElement.lang || found.code === spoken.code) return;
    spoken = found;
    speak();
  }
  new MutationObserver(() => void follow()).observe(document.documentElement, { attributeFilter: ["lang"] });

  speak();
  narrow();
  void follow();
  return {
    element: element("div", {}, list, chosen),
    search() {
      void follow();
      close();
      search.focus();
    },
    hostFound: () => call?.hostFound(),
  };
}

/**
 * The list of the functions by family, with a search; the one that is chosen takes the list's place until it is left.
 */
import type { Host } from "../hosts/host";
import { button, element } from "./dom";
import { functionCall, type FunctionCall } from "./function-call";
import { familiesOf, firstSentence, isFound, type ListedFunction } from "./function-search";

export interface FunctionChoice {
  readonly element: HTMLElement;
  /** Back to the list, and to its search. */
  search(): void;
  hostFound(): void;
}

let listed: Promise<readonly ListedFunction[]> | undefined;

/** Asked for once, unless it fails: then it is asked for again. */
export function listedFunctions(): Promise<readonly ListedFunction[]> {
  listed ??= readFunctions().catch((error: unknown) => {
    listed = undefined;
    throw error;
  });
  return listed;
}

/** Beside the page, as Excel reads it. */
async function readFunctions(): Promise<readonly ListedFunction[]> {
  const answer = await fetch("functions.json");
  if (!answer.ok) throw new Error(`The server answers ${answer.status} for functions.json.`);
  return ((await answer.json()) as { functions: readonly ListedFunction[] }).functions;
}

export async function functionChoice(host: () => Host | null): Promise<FunctionChoice> {
  const functions = await listedFunctions();
  let call: FunctionCall | undefined;

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
      choose.append(
        element("span", { class: "id" }, each.id),
        " ",
        element("span", { class: "what" }, firstSentence(each.description)),
      );
      choose.addEventListener("click", () => open(each, choose));
      return { each, choose, item: element("li", {}, choose) };
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

  const isShown = ({ item }: (typeof entries)[number]) => !item.hidden;
  function narrow(): void {
    const wanted = search.value.trim();
    for (const entry of entries) entry.item.hidden = !isFound(entry.each, wanted);
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

  narrow();
  return {
    element: element("div", {}, list, chosen),
    search() {
      close();
      search.focus();
    },
    hostFound: () => call?.hostFound(),
  };
}

/**
 * One function with a field for each of its arguments; the call goes into the selected cell, or is shown to be copied.
 */
import type { Host, SelectedCell } from "../hosts/host";
import { button, element } from "./dom";
import { argumentField, type ArgumentField } from "./function-field";
import { callFormula, typedFor } from "./function-formula";
import { misplaced, sheetText } from "./function-argument";
import type { ListedFunction } from "./function-search";

/** The functions in the words of a language, by id; none where that is English. */
export interface Spoken {
  readonly code: string;
  readonly functions: ReadonlyMap<string, ListedFunction>;
}

export interface FunctionCall {
  readonly element: HTMLElement;
  /** Goes to the top of it. */
  begin(): void;
  hostFound(): void;
  /** Its descriptions and help page from now on in this language. */
  speak(spoken: Spoken): void;
}

const helpPage = (id: string, code = "en") =>
  `help/${code === "en" ? "" : `${code}/`}${id.toLowerCase()}.html`;

/** The documented example, from the function's English help page beside this one: the call, and what it gives. */
async function documentedExample(id: string): Promise<{ formula: string; gives: string }> {
  const answer = await fetch(helpPage(id));
  const page = new DOMParser().parseFromString(answer.ok ? await answer.text() : "", "text/html");
  const term = [...page.querySelectorAll("dt")].find(({ textContent }) => textContent === "Example");
  const said = term?.nextElementSibling;
  const formula = said?.querySelector("code")?.textContent;
  if (!said || !formula) throw new Error(`The help page of ${id} could not be read.`);
  return { formula, gives: said.textContent.slice(formula.length).replace(/^ gives /u, "") };
}

const placeName = ({ sheet, address }: SelectedCell) => `${sheetText(sheet)}!${address}`;
const LONGEST_SHOWN = 80;
const short = (text: string) => (text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text);
const wordsOf = (error: unknown) => (error instanceof Error ? error.message : String(error));

export function functionCall(
  { id, description, parameters }: ListedFunction,
  host: () => Host | null,
  back: () => void,
): FunctionCall {
  let busy = false;
  const title = element("h2", { tabindex: "-1", id: "function-title" }, `MOUSSE.${id}`);
  const all = button("All functions");
  const fields = parameters.map(argumentField);
  const put = element("button", { type: "submit", class: "put" });
  const example = button("Example");
  const help = element("a", { href: helpPage(id), target: "_blank", rel: "noopener" }, "Help page");
  const what = element("p", { translate: "no" }, description);
  const status = element("div", { class: "said", role: "status" });
  const say = (...said: (Node | string)[]) => status.replaceChildren(...said);
  const form = element(
    "form",
    { novalidate: true, "aria-labelledby": title.id },
    ...fields.map((field) => field.element),
    element("div", { class: "actions" }, put, example, help),
  );
  const hostFound = () =>
    (put.textContent = host() === null ? "Show the formula" : "Put into the selected cell");
  hostFound();

  /** A field reads its argument's English; only what it tells people is put into their language. */
  const notes = fields.map((field) => field.element.querySelector(".note")!);
  const english = notes.map((note) => note.textContent);
  notes.forEach((note) => note.setAttribute("translate", "no"));
  function speak({ code, functions }: Spoken): void {
    const said = functions.get(id);
    what.textContent = said?.description ?? description;
    notes.forEach((note, index) => {
      note.textContent = said?.parameters[index]?.description ?? english[index]!;
    });
    help.href = helpPage(id, code);
  }

  /** The formula; nothing where a field has first to be mended, which is then the one to go to. */
  function formulaTyped(problemOf: (field: ArgumentField) => string | undefined): string | undefined {
    const wrong = fields.filter((field) => {
      const problem = problemOf(field);
      field.show(problem);
      return problem !== undefined;
    });
    wrong[0]?.input.focus();
    if (wrong.length > 0)
      say(wrong.length === 1 ? "One argument to mend." : `${wrong.length} arguments to mend.`);
    return wrong.length > 0
      ? undefined
      : callFormula(
          id,
          fields.map((field) => field.formula()),
        );
  }

  function showToCopy(formula: string): void {
    const text = element("input", { readonly: true, value: formula, "aria-label": "Formula to copy" });
    say("No spreadsheet is connected. Copy the formula into a cell: ", text);
    text.select();
    text.focus();
  }

  async function putInto(at: Host, cell: SelectedCell, formula: string): Promise<void> {
    await at.typeFormula(cell, formula);
    say(`Put into ${placeName(cell)}.`);
  }

  /** Says what stands in the cell; it stays there unless the user says otherwise. */
  function ask(at: Host, cell: SelectedCell, formula: string): void {
    const question = element("p", { id: "function-question" });
    question.textContent = `${placeName(cell)} is not blank. It holds: ${short(cell.content)}`;
    const replace = button("Replace it", { "aria-describedby": question.id });
    const leave = button("Leave it", { "aria-describedby": question.id });
    replace.addEventListener("click", () => {
      void doing(() => putInto(at, cell, formula));
      put.focus();
    });
    leave.addEventListener("click", () => {
      say(`${placeName(cell)} was left as it is.`);
      put.focus();
    });
    say(question, element("div", { class: "actions" }, replace, leave));
    // an Enter too many is to change nothing
    leave.focus();
  }

  async function doing(work: () => Promise<void>): Promise<void> {
    if (busy) return;
    busy = true;
    try {
      await work();
    } catch (error) {
      say(`Not put into the cell. ${wordsOf(error)}`);
    } finally {
      busy = false;
    }
  }

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    say("");
    const formula = formulaTyped((field) => field.problem());
    if (formula === undefined) return;
    const at = host();
    if (at === null) showToCopy(formula);
    else
      void doing(async () => {
        const [cell, sheets] = [await at.selectedCell(), await at.sheetNames()];
        const misplacedIn = (field: ArgumentField) => {
          const reference = field.reference();
          return reference && misplaced(reference, cell, sheets);
        };
        if (formulaTyped(misplacedIn) === undefined) return;
        if (cell.content === "") await putInto(at, cell, formula);
        else ask(at, cell, formula);
      });
  });
  example.addEventListener("click", () => {
    documentedExample(id).then(
      ({ formula, gives }) => {
        typedFor(id, parameters, formula).forEach((typed, index) => fields[index]!.fill(typed));
        say(`The example is filled in; it gives ${gives}.`);
      },
      (error: unknown) => say(`No example. ${wordsOf(error)}`),
    );
  });
  all.addEventListener("click", back);
  // the second click of a double click is not a second order
  put.addEventListener("click", (event) => event.detail > 1 && event.preventDefault());

  return {
    element: element(
      "div",
      { class: "function" },
      all,
      title,
      what,
      ...(parameters.length === 0 ? [element("p", { class: "note" }, "It takes no arguments.")] : []),
      form,
      status,
    ),
    begin: () => title.focus(),
    hostFound,
    speak,
  };
}

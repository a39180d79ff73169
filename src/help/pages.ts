/**
 * The help pages, as HTML made from the functions' docs and the workings of their examples, in one language.
 */
import type { FunctionDoc } from "./doc-comments";
import { code, escape } from "./html";
import { ENGLISH, type HelpLanguage } from "./languages";
import { page, pageName, type Place } from "./page";
import { exampleWorking, table, workingSection } from "./working";

export { pageName };

const familyOf = ({ id }: FunctionDoc) => id.split(".")[0]!;
const callOf = ({ id, parameters }: FunctionDoc) =>
  `MOUSSE.${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ")})`;

/** "TIRAGE.SUGAR(50, 24) = 121.83" split at the sign that stands outside the call. */
function exampleParts(example: string): { call: string; result: string } {
  const at = example.lastIndexOf(" = ");
  return { call: example.slice(0, at), result: example.slice(at + 3) };
}

/** As typed in a cell: functions of the add-in carry its name, INDEX is the spreadsheet's own. */
const typed = (call: string) =>
  call.startsWith("INDEX(") ? `=INDEX(MOUSSE.${call.slice("INDEX(".length)}` : `=MOUSSE.${call}`;

/** As typed where a comma marks decimals: =MOUSSE.TIRAGE.SUGAR(50,5; 24). What stands in quotes stays. */
const withCommas = (call: string, { say }: HelpLanguage) =>
  call.replace(/"(?:[^"]|"")*"|,|\d+\.\d+|\b(?:TRUE|FALSE)\b/gu, (part) =>
    part.startsWith('"') ? part : part === "," ? ";" : say(part.replace(".", ",")),
  );

/** A sentence with code where {0} stands. */
const around = (sentence: string, text: string) => sentence.split("{0}").map(escape).join(code(text));

function argumentTable({ parameters }: FunctionDoc, { say }: HelpLanguage): string {
  if (parameters.length === 0) return `      <p>${escape(say("It takes no arguments."))}</p>`;
  const rows = parameters.map(
    ({ name, optional, text }) =>
      `<tr role="row"><th scope="row" role="rowheader">${code(name)}</th><td role="cell">${escape(say(optional ? "optional" : "needed"))}</td><td role="cell">${escape(say(text))}</td></tr>`,
  );
  return table(say("Arguments"), [say("Argument"), say("Given"), say("What, unit and range")], rows);
}

function functionPage(doc: FunctionDoc, place: Place): string {
  const { language } = place;
  const { say } = language;
  const { description, returns, equation, source, refuses, caution, example } = doc;
  const { call, result } = exampleParts(example);
  const entry = (term: string, text: string) =>
    `      <dt>${escape(say(term))}</dt><dd>${escape(say(text))}</dd>`;
  const formula = typed(call);
  const elsewhere = withCommas(formula, language);
  return page(
    `MOUSSE.${doc.id}`,
    `    <nav aria-label="${escape(say("The functions"))}"><a href="index.html">${escape(say("All functions"))}</a></nav>
    <main>
      <h1>MOUSSE.${escape(doc.id)}</h1>
      <p>${escape(say(description))}</p>
      <p class="call">${code(`=${callOf(doc)}`)}</p>
${caution === undefined ? "" : `      <p class="caution"><strong>${escape(say("Take care."))}</strong> ${escape(say(caution))}</p>\n`}${argumentTable(doc, language)}
      <dl>
${[
  entry("Gives", returns),
  entry("Equation", equation),
  entry("Source", source),
  ...(refuses === undefined ? [] : [entry("Refuses", refuses)]),
  `      <dt>${escape(say("Example"))}</dt><dd>${code(formula)} ${escape(say("gives"))} ${escape(result)}</dd>`,
].join("\n")}
      </dl>
${elsewhere === formula ? "" : `      <p class="note">${around(say(ELSEWHERE), elsewhere)}</p>\n`}${workingSection(exampleWorking(call), say)}
      <p class="note">${escape(say("An argument out of range gives #VALUE! and says what is allowed; a question with no answer gives #N/A and says what would make one possible."))}</p>
    </main>`,
    place,
  );
}

const ELSEWHERE =
  "Formulas and their numbers are written as in English. Where a comma marks decimals, type {0}";
const HOW_TO =
  "Type {0} in a cell. Tank volumes are hL, bottle and dose volumes mL, strengths g/L, mass kg, pressure bar above atmospheric, temperature °C, alcohol % vol.";
const CARE =
  "Filled bottles can burst, CO2 in cellars kills, neck baths are colder than −20 °C. The glass maker's own rating, local law and a licensed oenologist decide.";

function indexPage(docs: readonly FunctionDoc[], place: Place): string {
  const { say } = place.language;
  const families = [...new Set(docs.map(familyOf))];
  const lists = families.map((family) => {
    const items = docs
      .filter((doc) => familyOf(doc) === family)
      .map(
        (doc) =>
          `        <li><a href="${pageName(doc.id)}">${code(doc.id)}</a> ${escape(say(doc.description))}</li>`,
      );
    return `      <h2>${family}</h2>\n      <ul>\n${items.join("\n")}\n      </ul>`;
  });
  return page(
    say("Mousse: functions"),
    `    <main>
      <h1>${escape(say("The functions"))}</h1>
      <p>${around(say(HOW_TO), "=MOUSSE.")}</p>
      <p class="caution"><strong>${escape(say("Take care."))}</strong> ${escape(say(CARE))}</p>
${lists.join("\n")}
    </main>`,
    place,
  );
}

/** Every help page of a language by its file name within help, "fr/index.html"; `languages` are those to link to. */
export function helpPages(
  docs: readonly FunctionDoc[],
  language = ENGLISH,
  languages: readonly HelpLanguage[] = [language],
): ReadonlyMap<string, string> {
  const placed = (file: string, make: (place: Place) => string) =>
    [language.folder + file, make({ file, language, languages })] as const;
  return new Map([
    placed("index.html", (place) => indexPage(docs, place)),
    ...docs.map((doc) => placed(pageName(doc.id), (place) => functionPage(doc, place))),
  ]);
}

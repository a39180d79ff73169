/**
 * The help pages, as HTML made from the functions' docs and the workings of their examples.
 */
import type { FunctionDoc } from "./doc-comments";
import { escape } from "./html";
import { exampleWorking, workingSection } from "./working";

const familyOf = ({ id }: FunctionDoc) => id.split(".")[0]!;
export const pageName = (id: string) => `${id.toLowerCase()}.html`;
const callOf = ({ id, parameters }: FunctionDoc) =>
  `MOUSSE.${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(", ")})`;

function page(title: string, body: string): string {
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>${escape(title)}</title>
    <link rel="icon" href="../assets/icon-32.png" />
    <link rel="stylesheet" href="help.css" />
  </head>
  <body>
${body}
  </body>
</html>
`;
}

/** "TIRAGE.SUGAR(50, 24) = 121.83" split at the sign that stands outside the call. */
function exampleParts(example: string): { call: string; result: string } {
  const at = example.lastIndexOf(" = ");
  return { call: example.slice(0, at), result: example.slice(at + 3) };
}

/** As typed in a cell: functions of the add-in carry its name, INDEX is the spreadsheet's own. */
const typed = (call: string) =>
  call.startsWith("INDEX(") ? `=INDEX(MOUSSE.${call.slice("INDEX(".length)}` : `=MOUSSE.${call}`;

function functionPage(doc: FunctionDoc): string {
  const { description, parameters, returns, equation, source, refuses, caution, example } = doc;
  const rows = parameters.map(
    ({ name, optional, text }) =>
      `        <tr role="row"><th scope="row" role="rowheader"><code>${escape(name)}</code></th><td role="cell">${optional ? "optional" : "needed"}</td><td role="cell">${escape(text)}</td></tr>`,
  );
  const { call, result } = exampleParts(example);
  const entry = (term: string, text: string) => `      <dt>${term}</dt><dd>${escape(text)}</dd>`;
  return page(
    `MOUSSE.${doc.id}`,
    `    <nav><a href="index.html">All functions</a></nav>
    <main>
      <h1>MOUSSE.${escape(doc.id)}</h1>
      <p>${escape(description)}</p>
      <p class="call"><code>=${escape(callOf(doc))}</code></p>
${caution === undefined ? "" : `      <p class="caution"><strong>Take care.</strong> ${escape(caution)}</p>\n`}${
      rows.length === 0
        ? "      <p>It takes no arguments.</p>"
        : `      <table class="stacked" role="table" aria-label="Arguments">
        <thead role="rowgroup"><tr role="row"><th scope="col" role="columnheader">Argument</th><th scope="col" role="columnheader">Given</th><th scope="col" role="columnheader">What, unit and range</th></tr></thead>
        <tbody role="rowgroup">
${rows.join("\n")}
        </tbody>
      </table>`
    }
      <dl>
${[
  entry("Gives", returns),
  entry("Equation", equation),
  entry("Source", source),
  ...(refuses === undefined ? [] : [entry("Refuses", refuses)]),
  `      <dt>Example</dt><dd><code>${escape(typed(call))}</code> gives ${escape(result)}</dd>`,
].join("\n")}
      </dl>
${workingSection(exampleWorking(call))}
      <p class="note">An argument out of range gives #VALUE! and says what is allowed; a question with no answer gives #N/A and says what would make one possible.</p>
    </main>`,
  );
}

function indexPage(docs: readonly FunctionDoc[]): string {
  const families = [...new Set(docs.map(familyOf))];
  const lists = families.map((family) => {
    const items = docs
      .filter((doc) => familyOf(doc) === family)
      .map(
        (doc) =>
          `        <li><a href="${pageName(doc.id)}"><code>${escape(doc.id)}</code></a> ${escape(doc.description)}</li>`,
      );
    return `      <h2>${family}</h2>\n      <ul>\n${items.join("\n")}\n      </ul>`;
  });
  return page(
    "Mousse: functions",
    `    <main>
      <h1>The functions</h1>
      <p>Type <code>=MOUSSE.</code> in a cell. Tank volumes are hL, bottle and dose volumes mL, strengths g/L, mass kg, pressure bar above atmospheric, temperature °C, alcohol % vol.</p>
      <p class="caution"><strong>Take care.</strong> Filled bottles can burst, CO2 in cellars kills, neck baths are colder than −20 °C. The glass maker's own rating, local law and a licensed oenologist decide.</p>
${lists.join("\n")}
    </main>`,
  );
}

/** Every help page by its file name. */
export function helpPages(docs: readonly FunctionDoc[]): ReadonlyMap<string, string> {
  return new Map([
    ["index.html", indexPage(docs)],
    ...docs.map((doc) => [pageName(doc.id), functionPage(doc)] as const),
  ]);
}

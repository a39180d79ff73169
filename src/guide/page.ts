/**
 * The guide's page, made from the chapters and the sizes of their pictures.
 */
import { escape } from "../help/html";
import type { Chapter, Comparison, Picture, Step } from "./chapter";
import { marked } from "./marks";
import type { Size } from "./png";

const TITLE = "Mousse: a guide";
const ABOUT =
  "From the first plan to the season, in pictures of the workbench. In Excel the same pane stands beside your own sheets. Each picture was taken by a script that did what the text says.";
const CARE =
  "Filled bottles can burst, CO2 in cellars kills, neck baths are colder than −20 °C. The glass maker's own rating, local law and a licensed oenologist decide.";

/** Wider pictures can be moved sideways on a narrow screen. */
const WIDE = 500;

type SizeOf = (picture: string) => Size;

function figure({ name, alt }: Picture, sizeOf: SizeOf): string {
  const { width, height } = sizeOf(name);
  const image = `<img src="pictures/${name}.png" width="${width}" height="${height}" alt="${escape(alt)}" loading="lazy" />`;
  return width > WIDE
    ? `\n          <figure class="wide" tabindex="0" role="group" aria-label="Picture, wider than a narrow screen">${image}</figure>`
    : `\n          <figure>${image}</figure>`;
}

const stepItem = ({ text, picture }: Step, sizeOf: SizeOf) =>
  `        <li>\n          <p>${marked(text)}</p>${picture ? figure(picture, sizeOf) : ""}\n        </li>`;

function comparisonTable(comparisons: readonly Comparison[]): string {
  const heads = ["What", "Held against", "How far apart"];
  const rows = comparisons.map(
    ({ what, against, apart }) =>
      `            <tr role="row"><th scope="row" role="rowheader">${escape(what)}</th><td role="cell">${escape(against)}</td><td role="cell">${escape(apart)}</td></tr>`,
  );
  return `        <table class="stacked" role="table" aria-label="The model beside published figures">
          <thead role="rowgroup"><tr role="row">${heads.map((head) => `<th scope="col" role="columnheader">${head}</th>`).join("")}</tr></thead>
          <tbody role="rowgroup">
${rows.join("\n")}
          </tbody>
        </table>`;
}

function section({ key, title, about, steps, comparisons, lists = [] }: Chapter, sizeOf: SizeOf): string {
  const parts = [
    `        <h2>${escape(title)}</h2>`,
    `        <p>${marked(about)}</p>`,
    `        <ol class="steps">\n${steps.map((step) => stepItem(step, sizeOf)).join("\n")}\n        </ol>`,
    ...(comparisons ? [comparisonTable(comparisons)] : []),
    ...lists.map(
      ({ heading, items }) =>
        `        <h3>${escape(heading)}</h3>\n        <ul>\n${items.map((item) => `          <li>${marked(item)}</li>`).join("\n")}\n        </ul>`,
    ),
  ];
  return `      <section id="${key}">\n${parts.join("\n")}\n      </section>`;
}

export function guidePage(chapters: readonly Chapter[], sizeOf: SizeOf): string {
  const contents = chapters.map(
    ({ key, title }) => `          <li><a href="#${key}">${escape(title)}</a></li>`,
  );
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>${escape(TITLE)}</title>
    <link rel="icon" href="../assets/icon-32.png" />
    <link rel="stylesheet" href="guide.css" />
  </head>
  <body>
    <main>
      <h1>${escape(TITLE)}</h1>
      <p>${escape(ABOUT)}</p>
      <p class="caution"><strong>Take care.</strong> ${escape(CARE)}</p>
      <nav aria-label="Chapters">
        <ol>
${contents.join("\n")}
        </ol>
      </nav>
${chapters.map((chapter) => section(chapter, sizeOf)).join("\n")}
      <p class="note">The batches are invented. Made by npm run guide; a test fails where a step no longer works.</p>
    </main>
  </body>
</html>
`;
}

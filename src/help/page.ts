/**
 * The frame of a help page in its language, with links to the same page in the others.
 */
import { escape } from "./html";
import { ENGLISH, type HelpLanguage } from "./languages";

export const pageName = (id: string) => `${id.toLowerCase()}.html`;

/** Which page it is. */
export interface Place {
  readonly file: string;
  readonly language: HelpLanguage;
  /** All that this page is there in. */
  readonly languages: readonly HelpLanguage[];
}

function languageLinks({ file, language, languages }: Place, up: string): string {
  if (languages.length < 2) return "";
  const links = languages.map(({ code, name, folder }) =>
    code === language.code
      ? `<span aria-current="true">${escape(name)}</span>`
      : `<a href="${up}${folder}${file}" lang="${code}" hreflang="${code}">${escape(name)}</a>`,
  );
  return `    <nav class="languages" aria-label="${escape(language.say("Languages"))}">${links.join(" / ")}</nav>\n`;
}

export function page(title: string, body: string, place: Place): string {
  const { code } = place.language;
  const up = code === ENGLISH.code ? "" : "../";
  return `<!doctype html>
<html lang="${code}">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <title>${escape(title)}</title>
    <link rel="icon" href="${up}../assets/icon-32.png" />
    <link rel="stylesheet" href="${up}help.css" />
  </head>
  <body>
${languageLinks(place, up)}${body}
  </body>
</html>
`;
}

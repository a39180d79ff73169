/**
 * The marks in a chapter's texts: names, what is typed or seen, links.
 */
import { code, escape } from "../help/html";

const MARK = /\*\*(?<name>.+?)\*\*|`(?<seen>.+?)`|\[(?<words>[^\]]+)\]\((?<link>[^)]+)\)/gu;

export interface Marked {
  readonly names: readonly string[];
  readonly seen: readonly string[];
  readonly links: readonly string[];
}

export function marksOf(text: string): Marked {
  const found = [...text.matchAll(MARK)].map(({ groups }) => groups ?? {});
  const each = (key: string) => found.flatMap((groups) => groups[key] ?? []);
  return { names: each("name"), seen: each("seen"), links: each("link") };
}

/** As HTML. */
export function marked(text: string): string {
  let html = "";
  let done = 0;
  for (const match of text.matchAll(MARK)) {
    const { name, seen, words = "", link = "" } = match.groups ?? {};
    html += escape(text.slice(done, match.index));
    if (name !== undefined) html += `<b>${escape(name)}</b>`;
    else if (seen !== undefined) html += code(seen);
    else html += `<a href="${escape(link)}">${escape(words)}</a>`;
    done = match.index + match[0].length;
  }
  return html + escape(text.slice(done));
}

/**
 * What a package that ships says of its licence: its id, checked against those that let anybody pass it on, and the
 * text, from the package's own files.
 */
import { existsSync, readFileSync, readdirSync } from "node:fs";
import path from "node:path";

export interface Licensed {
  readonly name: string;
  readonly version: string;
  /** As in SPDX. */
  readonly id: string;
  readonly text: string;
}

/** Whoever passes these on has to keep the notice, and nothing more. */
export const PERMISSIVE: readonly string[] = [
  "0BSD",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "CC0-1.0",
  "ISC",
  "MIT",
];

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name?: string; readonly email?: string };
}

/** The package's folder for any file in it; undefined for a file of our own. */
export const packageFolder = (file: string): string | undefined =>
  /^.*[/\\]node_modules[/\\](?:@[^/\\]+[/\\])?[^/\\]+(?=[/\\])/u.exec(file)?.[0];

export function licensed(folder: string): Licensed {
  const manifest = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8")) as Manifest;
  const { name, version } = manifest;
  const own = ownText(folder);
  const id = manifest.license ?? (own === undefined ? undefined : idIn(own));
  if (id === undefined || !isPermissive(id))
    throw new Error(
      `${name} ${version} is under ${id ?? "no licence that is named"}; ship only ${PERMISSIVE.join(", ")}`,
    );
  return { name, version, id, text: own ?? withoutText(manifest, id) };
}

/** "(MIT OR GPL-3.0)" leaves the choice; "MIT AND GPL-3.0" does not. */
export const isPermissive = (expression: string): boolean =>
  expression
    .replace(/[()]/gu, "")
    .split(" OR ")
    .some((choice) => choice.split(" AND ").every((id) => PERMISSIVE.includes(id.trim())));

function idIn(text: string): string | undefined {
  if (/^\s*Apache License\s+Version 2\.0/u.test(text)) return "Apache-2.0";
  return /^\s*(?:The )?MIT License/iu.test(text) ? "MIT" : undefined;
}

/** Its licence file with its notices, or the chapter of its read-me file. */
function ownText(folder: string): string | undefined {
  const read = (file: string) => readFileSync(path.join(folder, file), "utf8").trim();
  const files = readdirSync(folder).filter((file) => existsSync(path.join(folder, file)));
  const found = files.filter((file) => /^(?:licen[cs]e|copying|notice)(?:[.-]|$)/iu.test(file)).sort();
  if (found.length > 0) return found.map(read).join("\n\n");
  const about = files.find((file) => /^readme\.md$/iu.test(file));
  const chapter = about && /^#+ licen[cs]e\s+(.+?)(?=\n#|$(?![\s\S]))/imsu.exec(read(about))?.[1]?.trim();
  // a mere link or id is no text
  return chapter && chapter.length > 400 ? chapter : undefined;
}

/** The package came without a text; its manifest names the licence and the author. */
function withoutText({ name, author }: Manifest, id: string): string {
  const text = TEXTS[id];
  if (text === undefined)
    throw new Error(`${name} holds no text of ${id}; put it into src/build/licences-package.ts`);
  const who = typeof author === "string" ? author : (author?.name ?? "its authors");
  return `(The package names the licence ${id} and holds no text of it.)\n\nCopyright (c) ${who}\n\n${text}`;
}

const TEXTS: Readonly<Record<string, string>> = {
  MIT: `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`,
  "Apache-2.0": `The text of the licence stands with the other packages that are under it, and at https://www.apache.org/licenses/LICENSE-2.0.`,
};

/**
 * Parts of a written file, edited. The library decides some things that it takes no option for.
 */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** The first day that a zip can hold, in local time as zips do: same data, same file, on whatever day. */
const FIXED_DAY = new Date(1980, 0, 1);

export function editParts(
  file: Uint8Array,
  edits: Readonly<Record<string, (xml: string) => string>>,
): Uint8Array {
  const parts = unzipSync(file);
  for (const [path, edit] of Object.entries(edits)) {
    const part = parts[path];
    if (!part) throw new Error(`The written file has no part ${path}.`);
    parts[path] = strToU8(edit(strFromU8(part)));
  }
  return zipSync(parts, { mtime: FIXED_DAY });
}

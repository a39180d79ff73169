/**
 * Words of the trade matched without regard to case, accents, hyphens or surrounding blanks.
 */
import { Refusal } from "./refusal";

export function fold(text: string): string {
  return text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .replace(/[-\s]+/g, " ")
    .trim()
    .toLowerCase();
}

const indexes = new WeakMap<readonly unknown[], ReadonlyMap<string, unknown>>();

/** The entries of a list by their words, each as it is written and folded; made once for a list, which must stay as it is. */
function indexOf<T>(list: readonly T[], wordsOf: (entry: T) => readonly string[]): ReadonlyMap<string, T> {
  const known = indexes.get(list) as ReadonlyMap<string, T> | undefined;
  if (known) return known;
  const index = new Map<string, T>();
  const words = list.flatMap((entry) => wordsOf(entry).map((word) => [word, fold(word), entry] as const));
  for (const [, folded, entry] of words) if (!index.has(folded)) index.set(folded, entry);
  for (const [word, folded] of words) index.set(word, index.get(folded)!);
  indexes.set(list, index);
  return index;
}

/** The entry of a list whose word this is, or a refusal that lists what is known. */
export function matchWord<T>(
  list: readonly T[],
  wordsOf: (entry: T) => readonly string[],
  given: unknown,
  argument: string,
): T {
  if (typeof given === "string") {
    const index = indexOf(list, wordsOf);
    const found = index.get(given) ?? index.get(fold(given));
    if (found !== undefined) return found;
  }
  const known = [...new Set(list.flatMap((entry) => [...wordsOf(entry)]))].join(", ");
  throw new Refusal({ kind: "domain", argument, given, remedy: `give one of: ${known}` });
}

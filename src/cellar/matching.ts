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

/** The entries of a list by their words, each as it is written and folded. */
function indexOf<T>(list: readonly T[], wordsOf: (entry: T) => readonly string[]): ReadonlyMap<string, T> {
  const index = new Map<string, T>();
  const words = list.flatMap((entry) => wordsOf(entry).map((word) => [word, fold(word), entry] as const));
  for (const [, folded, entry] of words) if (!index.has(folded)) index.set(folded, entry);
  for (const [word, folded] of words) index.set(word, index.get(folded)!);
  return index;
}

/** Finds the entry of a list, which must stay as it is, by one of its words; refuses others with all that is known. */
export function matcher<T>(
  list: readonly T[],
  wordsOf: (entry: T) => readonly string[],
): (given: unknown, argument: string) => T {
  let index: ReadonlyMap<string, T> | undefined;
  return (given, argument) => {
    if (typeof given === "string") {
      index ??= indexOf(list, wordsOf);
      const found = index.get(given) ?? index.get(fold(given));
      if (found !== undefined) return found;
    }
    const known = [...new Set(list.flatMap((entry) => [...wordsOf(entry)]))].join(", ");
    throw new Refusal({ kind: "domain", argument, given, remedy: `give one of: ${known}` });
  };
}

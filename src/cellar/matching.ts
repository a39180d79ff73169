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

/** The entry of a list whose word this is, or a refusal that lists what is known. */
export function matchWord<T>(
  list: readonly T[],
  wordsOf: (entry: T) => readonly string[],
  given: unknown,
  argument: string,
): T {
  if (typeof given === "string") {
    const wanted = fold(given);
    const found = list.find((entry) => wordsOf(entry).some((word) => fold(word) === wanted));
    if (found !== undefined) return found;
  }
  const known = [...new Set(list.flatMap((entry) => [...wordsOf(entry)]))].join(", ");
  throw new Refusal({ kind: "domain", argument, given, remedy: `give one of: ${known}` });
}

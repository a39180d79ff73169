/**
 * Which name the last word before the cursor stands for, of the names that are known.
 */

/** The letters before the cursor that may begin a name; "" after a bracket, a number or an operator. */
export const wordBefore = (text: string): string => /[\p{L}_][\p{L}\p{N}_.]*$/u.exec(text)?.[0] ?? "";

/**
 * A name typed in full is that name; else the one picked in the list, if it begins with what was typed; else the first
 * that does. Undefined if none does, or nothing was typed.
 */
export function completionOf<Name extends { readonly name: string }>(
  word: string,
  picked: string,
  known: readonly Name[],
): Name | undefined {
  const typed = word.toUpperCase();
  const begun = typed === "" ? [] : known.filter(({ name }) => name.toUpperCase().startsWith(typed));
  return (
    begun.find(({ name }) => name.toUpperCase() === typed) ??
    begun.find(({ name }) => name === picked) ??
    begun[0]
  );
}

/**
 * Which name the word at the cursor of a formula stands for, of the names that are known.
 */

/** A piece of a formula, in order and without gaps; what may be the name of a function or a cell is marked. */
export interface Piece {
  readonly text: string;
  readonly name: boolean;
}

export interface Word {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const WORD = /^(\s*)([\p{L}_][\p{L}\p{N}_.]*)\s*$/u;

/** The name in which the cursor stands, or at whose end; undefined elsewhere: in a text, a number, a reference. */
export function wordAt(pieces: readonly Piece[], cursor: number): Word | undefined {
  let end = 0;
  for (const { text, name } of pieces) {
    const start = end;
    end += text.length;
    if (cursor > end) continue;
    const [, space, word] = (name && WORD.exec(text)) || [];
    if (cursor <= start || word === undefined) return undefined;
    const from = start + space!.length;
    return { text: word, from, to: from + word.length };
  }
  return undefined;
}

/** The line of a list that stands out, and whether it was picked since the last key that typed anything. */
export interface Line {
  readonly name: string;
  readonly picked: boolean;
}

/**
 * Of the names that begin with what was typed: the one picked; else the one typed in full; else the one that stands
 * out; else the first. Undefined if none begins so.
 */
export function completionOf<Name extends { readonly name: string }>(
  typed: string,
  line: Line | undefined,
  known: readonly Name[],
): Name | undefined {
  const begun = known.filter(({ name }) => name.toUpperCase().startsWith(typed.toUpperCase()));
  const standingOut = begun.find(({ name }) => name === line?.name);
  const inFull = begun.find(({ name }) => name.length === typed.length);
  return (line?.picked ? standingOut : undefined) ?? inFull ?? standingOut ?? begun[0];
}

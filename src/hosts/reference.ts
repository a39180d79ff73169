/**
 * What a defined name stands for, as programs write it: "='Plan · Brut'!$B$12".
 */
export interface Place {
  readonly row: number;
  readonly column: number;
}

const ONE_CELL = /^=?(?:'((?:[^']|'')+)'|([^'!#=]+))!\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i;

/** The single cell of this sheet; nothing for a range, a constant, a broken name or a cell of another sheet. */
export function placeIn(sheetName: string, reference: unknown): Place | undefined {
  const match = typeof reference === "string" ? ONE_CELL.exec(reference.trim()) : null;
  if (!match) return undefined;
  const [, quoted, plain, letters = "", digits] = match;
  const sheet = quoted?.replaceAll("''", "'") ?? plain ?? "";
  if (sheet.toLowerCase() !== sheetName.toLowerCase()) return undefined;
  return { row: Number(digits) - 1, column: columnOf(letters.toUpperCase()) };
}

/** "A" is 0; capital letters. */
export const columnOf = (letters: string) =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

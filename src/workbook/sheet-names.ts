/**
 * Names for new sheets: legal in every spreadsheet program, and never one that is taken.
 */
const LONGEST = 31;
const FORBIDDEN = /[[\]:*?/\\\u0000-\u001f]/g;

/** "Plan · Brut", or "Plan · Brut (2)" where that is taken. */
export function freeSheetName(kind: string, batchName: string, taken: readonly string[]): string {
  const legal = batchName.replace(FORBIDDEN, " ").replace(/\s+/g, " ").trim();
  // an apostrophe may not begin or end a sheet's name
  return freeName(`${kind} · ${legal}`.replace(/'+$/, "").trim(), taken);
}

/** A legal name with a number where it is taken; compared without regard to case, as programs do. */
export function freeName(plain: string, taken: readonly string[]): string {
  const used = new Set(taken.map((name) => name.toLowerCase()));
  for (let count = 1; ; count++) {
    const suffix = count === 1 ? "" : ` (${count})`;
    const name = shortened(plain, LONGEST - suffix.length) + suffix;
    if (!used.has(name.toLowerCase())) return name;
  }
}

/** A name that is too long shows that it was cut: "… 2" of a year would read as a copy's number. */
const shortened = (text: string, length: number) =>
  text.length <= length ? text : `${cutTo(text, length - 1)}…`;

/** Cut to a length without splitting a character that takes two code units. */
function cutTo(text: string, length: number): string {
  let cut = "";
  for (const character of text) {
    if (cut.length + character.length > length) break;
    cut += character;
  }
  return cut.trimEnd().replace(/'+$/, "");
}

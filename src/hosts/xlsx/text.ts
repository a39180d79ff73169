/**
 * Text as the file can hold it. A workbook file is XML, which has no room for some characters, and it reads
 * "_x0041_" as an escape, but for the texts of drawings.
 */

/** What XML 1.0 cannot hold: control characters, halves of surrogate pairs, U+FFFE and U+FFFF. */
const ILLEGAL = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

/** Text that only looks like an escape: its underscore is spelled out, so that it is read back as written. */
const SEEMING_ESCAPE = /_(?=x[0-9A-Fa-f]{4}_)/g;

/** Illegal characters become U+FFFD, so that one sees something was there; line ends become "\n". */
export const legalText = (text: string) => text.replace(/\r\n?/g, "\n").replace(ILLEGAL, "\uFFFD");

export const storedText = (text: string) => legalText(text).replace(SEEMING_ESCAPE, "_x005F_");

/** Longer than a spreadsheet program opens: said here, by address, instead of as "the file is damaged". */
export function refuseTooLong(what: string, text: string, limit: number): void {
  if (text.length > limit) {
    throw new RangeError(`${what} has ${text.length} characters; a workbook file takes at most ${limit}.`);
  }
}

/**
 * Texts that a spreadsheet program would read as something else once they are typed, or entered again.
 */

/** Text that nothing reads as anything else: it begins with a letter and holds no digit. */
const PLAIN_TEXT = /^\p{L}\P{N}*$/u;
const BOOLEAN = /^(true|false)\s*$/i;
/** No date and no amount is written at this length, so a sentence may hold digits. */
const SENTENCE = /^\p{L}.{60,}$/su;

/** Excel reads days and amounts in the user's own language, so only what is surely text is left as it is. */
export const readOtherwise = (text: string) =>
  text !== "" && ((!PLAIN_TEXT.test(text) && !SENTENCE.test(text)) || BOOLEAN.test(text));

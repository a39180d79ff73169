/**
 * The grid's kinds of text, as plain numbers. One is read anew when its cell is entered again; the other stays text,
 * and shows an apostrophe before it while it is edited.
 */
const TEXT = 1;
const KEPT_AS_TEXT = 4;

const MONTH =
  "(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|" +
  "sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)";
const WEEKDAY = "(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?";
/** What the engine, which knows English alone, would make a formula, a number, a day or a truth value of. */
const READ_OTHERWISE = new RegExp(
  String.raw`^(?:[^\p{L}]|(?:true|false|infinity)\s*$|${MONTH}[^\p{L}\p{N}]*\p{N}|${WEEKDAY}(?!\p{L})[^\p{N}]*\p{N})`,
  "iu",
);

export const textKind = (text: string) => (READ_OTHERWISE.test(text) ? KEPT_AS_TEXT : TEXT);

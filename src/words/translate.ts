/**
 * Texts in another language. English stands in the code and is the key; a catalogue gives the other language's text,
 * with {0}, {1} … for what changes from time to time, such as numbers and names.
 */
import { between } from "./between";

export type Catalogue = Readonly<Record<string, string>>;
/** A text that the catalogue does not know stays as it is. */
export type Translate = (text: string) => string;

interface Pattern {
  /** What stands round the placeholders. */
  readonly parts: readonly string[];
  readonly text: string;
  /** Which placeholder stands at each gap between them, and whether it is a name, in “quotes”. */
  readonly order: readonly { readonly placeholder: number; readonly isName: boolean }[];
}

const PLACEHOLDER = /\{(\d+)\}/gu;
const LETTER = /\p{L}/u;
/** Texts come back again and again while somebody types. */
const REMEMBERED = 5_000;
/** Longer than any of ours with what is put in; a file can hold far longer ones, which stay as they are. */
const LONGEST = 8_000;

/** `keep`: texts that are somebody's own, or that have to stay for another reason. */
export function translator(catalogue: Catalogue, keep: ReadonlySet<string> = new Set()): Translate {
  const exact = new Map<string, string>();
  const patterns: Pattern[] = [];
  for (const [english, text] of Object.entries(catalogue)) {
    if (english.search(PLACEHOLDER) < 0) exact.set(english, text);
    else patterns.push(patternOf(english, text));
  }
  // the pattern that says most goes first
  patterns.sort((one, other) => lengthOf(other) - lengthOf(one));
  const known = new Map<string, string>();

  function found(text: string): string {
    const whole = exact.get(text);
    if (whole !== undefined) return whole;
    for (const { parts, text: other, order } of patterns) {
      const groups = between(text, parts);
      if (!groups) continue;
      const values = new Map(
        order.map(({ placeholder, isName }, index) => {
          const value = groups[index] ?? "";
          return [placeholder, isName ? value : translate(value)];
        }),
      );
      return other.replace(PLACEHOLDER, (_, digits: string) => values.get(Number(digits)) ?? "");
    }
    return text;
  }

  function translate(text: string): string {
    if (text.length > LONGEST || !LETTER.test(text) || keep.has(text)) return text;
    // what stands round a text, such as a space before the next one, stays
    const core = text.trim();
    const before = text.slice(0, text.length - text.trimStart().length);
    const after = text.slice(before.length + core.length);
    const cached = known.get(core);
    if (cached !== undefined) return before + cached + after;
    const answer = found(core);
    if (known.size >= REMEMBERED) known.clear();
    known.set(core, answer);
    return before + answer + after;
  }
  return translate;
}

/** How much a pattern says; a placeholder counts for something, as it asks for a text. */
const lengthOf = ({ parts }: Pattern) => parts.join("(.+?)").length;

/** "{0} of {1}" as what stands round the two. */
function patternOf(english: string, text: string): Pattern {
  const pieces = english.trim().split(PLACEHOLDER);
  const parts = pieces.filter((_, index) => index % 2 === 0);
  const order = pieces.flatMap((piece, index) => {
    if (index % 2 === 0) return [];
    const isName = pieces[index - 1]!.endsWith("“") && pieces[index + 1]!.startsWith("”");
    return [{ placeholder: Number(piece), isName }];
  });
  return { parts, text: text.trim(), order };
}

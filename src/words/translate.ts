/**
 * Texts in another language. English stands in the code and is the key; a catalogue gives the other language's text,
 * with {0}, {1} … for what changes from time to time, such as numbers and names.
 */
export type Catalogue = Readonly<Record<string, string>>;
/** A text that the catalogue does not know stays as it is. */
export type Translate = (text: string) => string;

interface Pattern {
  readonly matches: RegExp;
  readonly text: string;
  /** Which placeholder each group of the expression stands for. */
  readonly order: readonly number[];
}

const PLACEHOLDER = /\{(\d+)\}/gu;
const LETTER = /\p{L}/u;
/** Texts come back again and again while somebody types. */
const REMEMBERED = 5_000;

export function translator(catalogue: Catalogue): Translate {
  const exact = new Map<string, string>();
  const patterns: Pattern[] = [];
  for (const [english, text] of Object.entries(catalogue)) {
    if (english.search(PLACEHOLDER) < 0) exact.set(english, text);
    else patterns.push(patternOf(english, text));
  }
  // the pattern that says most goes first
  patterns.sort((one, other) => other.matches.source.length - one.matches.source.length);
  const known = new Map<string, string>();

  function found(text: string): string {
    const whole = exact.get(text);
    if (whole !== undefined) return whole;
    for (const { matches, text: other, order } of patterns) {
      const groups = matches.exec(text);
      if (!groups) continue;
      const values = new Map(order.map((placeholder, index) => [placeholder, groups[index + 1] ?? ""]));
      return other.replace(PLACEHOLDER, (_, digits: string) => translate(values.get(Number(digits)) ?? ""));
    }
    return text;
  }

  function translate(text: string): string {
    if (!LETTER.test(text)) return text;
    // what stands round a text, such as a space before the next one, stays
    const [, before = "", core = "", after = ""] = /^(\s*)(.*?)(\s*)$/su.exec(text) ?? [];
    const cached = known.get(core);
    if (cached !== undefined) return before + cached + after;
    const answer = found(core);
    if (known.size >= REMEMBERED) known.clear();
    known.set(core, answer);
    return before + answer + after;
  }
  return translate;
}

/** "{0} of {1}" as an expression that finds both. */
function patternOf(english: string, text: string): Pattern {
  const parts = english.trim().split(PLACEHOLDER);
  const order: number[] = [];
  const source = parts.map((part, index) => {
    if (index % 2 === 0) return part.replace(/[.*+?^${}()|[\]\\/]/gu, "\\$&");
    order.push(Number(part));
    return "(.+?)";
  });
  return { matches: new RegExp(`^${source.join("")}$`, "su"), text: text.trim(), order };
}

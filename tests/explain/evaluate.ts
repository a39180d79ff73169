/**
 * Equations with numbers, worked out as intervals: a number that may be rounded stands for all that round to it, so
 * the value calculated in full must lie within. Its own parser; nothing is run as code.
 */
import { halfLastDigit } from "../support/relative";

export interface Interval {
  readonly low: number;
  readonly high: number;
}

const between = (...ends: number[]): Interval => ({ low: Math.min(...ends), high: Math.max(...ends) });
const exactly = (value: number) => between(value, value);
const corners = (one: Interval, other: Interval, of: (x: number, y: number) => number) =>
  between(of(one.low, other.low), of(one.low, other.high), of(one.high, other.low), of(one.high, other.high));
const rising = ({ low, high }: Interval, of: (x: number) => number) => between(of(low), of(high));

const significantDigits = (printed: string) => printed.replace(/^0*\.?0*/u, "").replace(/[^\d]/gu, "").length;

/** What a printed number stands for. Fewer than five significant digits are never rounded. */
export function printedInterval(printed: string, isExact: (printed: string) => boolean): Interval {
  const value = Number(printed);
  if (significantDigits(printed) < 5 || isExact(printed)) return exactly(value);
  const half = halfLastDigit(printed);
  return between(value - half, value + half);
}

const TOKEN = /\s*(\d+(?:\.\d+)?|exp|min|round|[-−+·/^()√|⌊⌋⌈⌉;²³⁴⁵⁶])/uy;
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶";

function tokensOf(text: string): string[] {
  const tokens: string[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const at = TOKEN.lastIndex;
    const match = TOKEN.exec(text);
    if (!match) throw new Error(`"${text}" cannot be read from place ${at}`);
    tokens.push(match[1]!);
  }
  return tokens;
}

export function evaluate(text: string, isExact: (printed: string) => boolean = () => false): Interval {
  const tokens = tokensOf(text);
  let at = 0;
  let largest = 0;
  const take = (sign: string) => tokens[at] === sign && ++at > 0;
  const expect = (sign: string) => {
    if (!take(sign)) throw new Error(`"${text}": ${sign} expected, not ${tokens[at] ?? "the end"}`);
  };
  // a quotient that is whole but for a float's tail counts as whole
  const loosely = ({ low, high }: Interval) =>
    between(low - Math.abs(low) * 1e-9, high + Math.abs(high) * 1e-9);

  function sum(): Interval {
    let value = product();
    for (;;) {
      if (take("+")) value = corners(value, product(), (x, y) => x + y);
      else if (take("−") || take("-")) value = corners(value, product(), (x, y) => x - y);
      else return value;
    }
  }
  function product(): Interval {
    let value = signed();
    for (;;) {
      if (take("·")) value = corners(value, signed(), (x, y) => x * y);
      else if (take("/")) {
        const by = signed();
        if (by.low <= 0 && by.high >= 0) value = { low: -Infinity, high: Infinity };
        else value = corners(value, by, (x, y) => x / y);
      } else return value;
    }
  }
  function signed(): Interval {
    return take("−") || take("-") ? rising(signed(), (x) => -x) : power();
  }
  function power(): Interval {
    const base = atom();
    if (take("^")) return corners(base, signed(), (x, y) => x ** y);
    const exponent = SUPERSCRIPTS.indexOf(tokens[at] ?? "none");
    if (exponent < 2) return base;
    at++;
    const ends = [base.low ** exponent, base.high ** exponent];
    return exponent % 2 === 0 && base.low < 0 && base.high > 0 ? between(0, ...ends) : between(...ends);
  }
  function enclosed(end: string): Interval {
    const value = sum();
    expect(end);
    return value;
  }
  function atom(): Interval {
    if (take("(")) return enclosed(")");
    if (take("⌊")) return rising(loosely(enclosed("⌋")), Math.floor);
    if (take("⌈")) return rising(loosely(enclosed("⌉")), Math.ceil);
    if (take("√")) return rising(atom(), Math.sqrt);
    if (take("|")) {
      const { low, high } = enclosed("|");
      return low < 0 && high > 0 ? between(0, -low, high) : between(Math.abs(low), Math.abs(high));
    }
    if (take("exp")) return rising(atom(), Math.exp);
    if (take("round")) return rising(atom(), Math.round);
    if (take("min")) {
      expect("(");
      const one = sum();
      expect(";");
      return corners(one, enclosed(")"), Math.min);
    }
    const printed = tokens[at++];
    if (printed === undefined || !/^\d/u.test(printed)) throw new Error(`"${text}": a number expected`);
    largest = Math.max(largest, Number(printed));
    return printedInterval(printed, isExact);
  }

  const value = sum();
  if (at !== tokens.length) throw new Error(`"${text}": nothing expected after ${tokens[at - 1]!}`);
  // the last bits of a float are no disagreement, also where large numbers cancel out
  const slack = Math.max(Math.abs(value.low), Math.abs(value.high), largest) * 1e-11;
  return Number.isFinite(slack) ? { low: value.low - slack, high: value.high + slack } : value;
}

/**
 * Numbers for reading, and equations with the numbers put in. A number is written in full where seven significant
 * digits hold it, else rounded to five, so a number of fewer than five digits is always exact.
 */
const FULL_DIGITS = 7;
const ROUNDED_DIGITS = 5;
/** From here on, five digits would hide whole units. */
const WHOLE_FROM = 1e5;
const POWERS_FROM = 1e15;
const POWERS_BELOW = 1e-6;

export function shown(value: number): string {
  // the last bits of a float are no digits
  const full = Number(value.toPrecision(FULL_DIGITS));
  const isFull = Math.abs(full - value) <= 1e-12 * Math.abs(value);
  const size = Math.abs(value);
  if (size !== 0 && (size >= POWERS_FROM || size < POWERS_BELOW))
    return withPower(isFull ? full : value, isFull);
  if (isFull) return signed(full.toString());
  const rounded = value.toPrecision(ROUNDED_DIGITS);
  return signed(size >= WHOLE_FROM || rounded.includes("e") ? value.toFixed(0) : rounded);
}

function withPower(value: number, isFull: boolean): string {
  const [mantissa = "", power = ""] = value.toExponential(isFull ? undefined : ROUNDED_DIGITS - 1).split("e");
  return `(${signed(mantissa)}·10^(${signed(String(Number(power)))}))`;
}

/** "-5" to "−5": the sign that equations are set with. */
const signed = (text: string) => (text === "-0" ? "0" : text.replace("-", "−"));

/** For a sentence: thousands apart, "5 000" (with spaces that do not break). */
export function inProse(value: number): string {
  const [whole = "", ...decimals] = shown(value).split(".");
  return [whole.replace(/\B(?=(?:\d{3})+$)/gu, "\u00a0"), ...decimals].join(".");
}

const SYMBOL = /\p{L}[\p{L}\p{Nd}]*/gu;
const FUNCTIONS = new Set(["exp", "min", "round"]);

/** "V0·(s − S0)" to "5000·(24 − 0)"; a negative number is put in brackets. */
export function numbersPutIn(expression: string, valueOf: (symbol: string) => number): string {
  return expression.replace(SYMBOL, (symbol) => {
    if (FUNCTIONS.has(symbol)) return symbol;
    const value = shown(valueOf(symbol));
    return value.startsWith("−") ? `(${value})` : value;
  });
}

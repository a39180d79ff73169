/**
 * Numbers against a printed source: equal when they round to what is printed, to its last digit.
 */

/** "121.83" → half a unit of its last digit, 0.005. */
export function halfLastDigit(printed: string): number {
  const [mantissa = "", exponent = "0"] = printed.toLowerCase().split("e");
  const decimals = mantissa.includes(".") ? mantissa.length - mantissa.indexOf(".") - 1 : 0;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

/** Fails unless the value is what the source printed. The printed text keeps its digits, so pass it as text. */
export function expectPrinted(value: number, printed: string, note = ""): void {
  const distance = Math.abs(value - Number(printed));
  // the last digits of a float must not decide over a tie
  if (!(distance <= halfLastDigit(printed) * (1 + 1e-9))) {
    throw new Error(`${value} is not ${printed} as printed${note ? ` (${note})` : ""}: off by ${distance}`);
  }
}

/** Fails unless two numbers agree to a relative tolerance. */
export function expectRelative(value: number, expected: number, tolerance: number, note = ""): void {
  const scale = Math.max(Math.abs(value), Math.abs(expected), Number.MIN_VALUE);
  if (!(Math.abs(value - expected) <= tolerance * scale)) {
    throw new Error(`${value} is not ${expected} within ${tolerance} relative${note ? ` (${note})` : ""}`);
  }
}

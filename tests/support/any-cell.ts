/**
 * Whatever can stand in a cell, and what a script could pass by mistake.
 */
import fc from "fast-check";

export const numbers = fc.oneof(
  fc.double(),
  fc.integer({ min: -5, max: 60 }),
  fc.double({ min: 0, max: 1000, noNaN: true }),
  fc.constantFrom(0, -0, NaN, Infinity, -Infinity, Number.MAX_VALUE, Number.MIN_VALUE, 2 ** 53, 1e-300, 1e12),
  // dates
  fc.integer({ min: -1, max: 3_000_000 }),
);
export const words = fc.constantFrom(
  "brut",
  "Extra-Brut",
  "EU",
  "oiv",
  "CA-QC",
  "kcal",
  "total",
  "fr",
  "crémant",
  "psi abs",
  "12",
  "TRUE",
);
export const cells = fc.oneof(
  { weight: 4, arbitrary: numbers },
  { weight: 2, arbitrary: words },
  fc.string({ unit: "grapheme" }),
  fc.boolean(),
  fc.constantFrom(null, undefined, ""),
  fc.array(numbers, { maxLength: 3 }),
  fc.array(fc.array(fc.oneof(numbers, words), { maxLength: 3 }), { maxLength: 3 }),
  fc.constantFrom({}, new Date(0), () => 1, 10n),
);

/**
 * PRESSURE and SUGAR by hand.
 */
import type { Bare } from "./bare";

const GAS = (100 * 44.0095) / 8.314462;
const ENTHALPY = 24_700 / 8.314462;
const INVERT = (2 * 180.156) / 342.297;
const ATMOSPHERE = 1.01325;

const solved = (celsius: number, vol: number, sugar: number) =>
  1.951 *
  Math.exp(ENTHALPY * (1 / (celsius + 273.15) - 1 / 293.15)) *
  (0.86 - 0.01 * vol) *
  (1 - 0.00144 * sugar);

function shift(
  bar: number,
  from: number,
  to: number,
  vol: number,
  sugar: number,
  headspace: number,
  air: number,
): number {
  const gas = (headspace / 100) * GAS;
  const coldK = from + 273.15;
  const warmK = to + 273.15;
  const co2 = (bar + ATMOSPHERE - (air * coldK) / 293.15) * (solved(from, vol, sugar) + gas / coldK);
  return co2 / (solved(to, vol, sugar) + gas / warmK) + (air * warmK) / 293.15 - ATMOSPHERE;
}

const co2 = (bar: number, celsius: number, vol: number, sugar: number) =>
  (bar + ATMOSPHERE) * solved(celsius, vol, sugar);

const fromCo2 = (co2GL: number, celsius: number, vol: number, sugar: number) =>
  co2GL / solved(celsius, vol, sugar) - ATMOSPHERE;

const RATIO = [
  1.85, 1.8, 1.74, 1.68, 1.64, 1.59, 1.54, 1.5, 1.45, 1.4, 1.36, 1.32, 1.28, 1.24, 1.2, 1.16, 1.13, 1.09,
  1.06, 1.03, 1.0, 0.97, 0.95, 0.93, 0.91, 0.88,
];

function at20(bar: number, celsius: number): number {
  const below = Math.floor(celsius);
  const low = RATIO[below]!;
  return bar * (low + (RATIO[below + 1]! - low) * (celsius - below));
}

const PSI = (0.45359237 * 9.80665) / 0.0254 ** 2 / 1e5;
const KGF = 9.80665e4 / 1e5;
/** bar in one unit, and bar above vacuum at its zero. */
const SCALES: Readonly<Record<string, readonly [number, number]>> = {
  bar: [1, ATMOSPHERE],
  kPa: [0.01, ATMOSPHERE],
  atm: [ATMOSPHERE, ATMOSPHERE],
  psi: [PSI, ATMOSPHERE],
  "kgf/cm2": [KGF, ATMOSPHERE],
  "bar abs": [1, 0],
  "psi abs": [PSI, 0],
};
const UNITS = Object.keys(SCALES);

function convert(value: number, fromUnit: string, toUnit: string): number {
  const [from, fromZero] = SCALES[fromUnit]!;
  const [to, toZero] = SCALES[toUnit]!;
  return (value * from + fromZero - toZero) / to;
}

function pressureClass(bar: number, bottle: number, rules: string): string {
  switch (rules) {
    case "EU":
      if (bar >= (bottle < 250 ? 3 : 3.5)) return "quality sparkling wine";
      if (bar >= 3) return "sparkling wine";
      return bar >= 1 && bar <= 2.5 ? "semi-sparkling wine" : "between classes";
    case "OIV":
      return bar >= (bottle < 250 ? 3 : 3.5) ? "sparkling wine" : "between classes";
    case "US": {
      const held = co2(bar, 20, 12, 0);
      if (held >= 0 && held <= 3.92) return "still wine";
      return held >= 3.92 ? "effervescent wine" : "between classes";
    }
    case "AU":
      return co2(bar, 20, 12, 0) >= 5 ? "sparkling wine" : "between classes";
    default: {
      const cold = (shift(bar, 20, 10, 12, 0, 10 / 3, 0) + ATMOSPHERE) / ATMOSPHERE;
      return cold >= 3 && cold <= 5 ? "sparkling wine" : "between classes";
    }
  }
}

function density(brix: number): number {
  const w = brix / 100;
  return 998.2 + w * (385.1761 + w * (135.3705 + w * (40.9299 + w * (-3.9643 + w * (13.4853 - w * 17.289)))));
}

const strength = (brix: number) => (brix / 100) * density(brix);

/** By halving too: a plain loop. */
function brixOf(strengthGL: number): number {
  let low = 0;
  let high = 85;
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    if (strength(middle) < strengthGL) low = middle;
    else high = middle;
  }
}

export const barePressure: readonly Bare[] = [
  { id: "PRESSURE.AT20", bare: at20, inputs: (v) => [v.between(3, 6), v.between(0, 25)] },
  {
    id: "PRESSURE.SHIFT",
    bare: shift,
    inputs: (v) => [
      v.between(4, 7),
      v.between(5, 15),
      v.between(15, 30),
      v.between(10, 13),
      v.between(0, 30),
      v.between(2, 6),
      v.between(0, 0.8),
    ],
  },
  {
    id: "PRESSURE.CO2",
    bare: co2,
    inputs: (v) => [v.between(3, 7), v.between(5, 25), v.between(10, 13), v.between(0, 30)],
  },
  {
    id: "PRESSURE.FROMCO2",
    bare: fromCo2,
    inputs: (v) => [v.between(8, 12), v.between(5, 25), v.between(10, 13), v.between(0, 30)],
  },
  { id: "PRESSURE.CONVERT", bare: convert, inputs: (v) => [v.between(1, 9), v.one(UNITS), v.one(UNITS)] },
  {
    id: "PRESSURE.CLASS",
    bare: pressureClass,
    inputs: (v) => [v.between(0.5, 7), v.one([200, 375, 750]), v.one(["EU", "OIV", "US", "AU", "CA-QC"])],
  },
  { id: "SUGAR.INVERT", bare: (grams: number) => grams * INVERT, inputs: (v) => [v.between(1, 1000)] },
  { id: "SUGAR.SUCROSE", bare: (grams: number) => grams / INVERT, inputs: (v) => [v.between(1, 1000)] },
  { id: "SUGAR.STRENGTH", bare: strength, inputs: (v) => [v.between(5, 80)] },
  { id: "SUGAR.BRIX", bare: brixOf, inputs: (v) => [v.between(100, 900)] },
  { id: "SUGAR.DENSITY", bare: density, inputs: (v) => [v.between(5, 80)] },
];

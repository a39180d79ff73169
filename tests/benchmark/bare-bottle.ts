/**
 * TIRAGE by hand: the pressure in the closed bottle.
 */
import type { Bare, Varied } from "./bare";

const INVERT = (2 * 180.156) / 342.297;
const CO2 = (4 * 44.0095) / 342.297;
const GAS = (100 * 44.0095) / 8.314462;
const ENTHALPY = 24_700 / 8.314462;
const VOL = INVERT / 16.83;

/** g/L of CO2 for each bar, wine and headspace together. */
function capacity(celsius: number, vol: number, sugarGL: number, headspace: number): number {
  const kelvin = celsius + 273.15;
  const factor = 1.951 * Math.exp(ENTHALPY * (1 / kelvin - 1 / 293.15));
  return factor * (0.86 - 0.01 * vol) * (1 - 0.00144 * sugarGL) + ((headspace / 100) * GAS) / kelvin;
}

const nitrogen = (celsius: number) => (0.79 * (celsius + 273.15)) / 293.15;

function pressure(
  dose: number,
  celsius: number,
  base: number,
  share: number,
  headspace: number,
  co2: number,
) {
  const vol = base * (1 - dose * 0.000625) + dose * VOL;
  return (dose * CO2 * share + co2) / capacity(celsius, vol, 0, headspace) + nitrogen(celsius) - 1.01325;
}

function dose(
  bar: number,
  celsius: number,
  base: number,
  share: number,
  headspace: number,
  co2: number,
): number {
  const kelvin = celsius + 273.15;
  const factor = 1.951 * Math.exp(ENTHALPY * (1 / kelvin - 1 / 293.15));
  const own = bar + 1.01325 - nitrogen(celsius);
  return (
    (own * (factor * (0.86 - 0.01 * base) + ((headspace / 100) * GAS) / kelvin) - co2) /
    (CO2 * share + own * 0.01 * factor * (VOL - base * 0.000625))
  );
}

function range(
  doseGL: number,
  celsius: number,
  base: number,
  doseSd: number,
  yieldSd: number,
  temperatureSd: number,
  headspaceSd: number,
  share: number,
  headspace: number,
  co2: number,
): number[][] {
  const kelvin = celsius + 273.15;
  const factor = 1.951 * Math.exp(ENTHALPY * (1 / kelvin - 1 / 293.15));
  const vol = base * (1 - doseGL * 0.000625) + doseGL * VOL;
  const solved = factor * (0.86 - 0.01 * vol);
  const gas = ((headspace / 100) * GAS) / kelvin;
  const held = solved + gas;
  const bar = (doseGL * CO2 * share + co2) / held;
  const byDose = ((CO2 * share + bar * 0.01 * factor * (VOL - base * 0.000625)) / held) * doseSd;
  const byYield = ((doseGL * CO2) / held) * yieldSd;
  const byKelvin =
    ((bar * ((solved * ENTHALPY) / (kelvin * kelvin) + gas / kelvin)) / held + 0.79 / 293.15) * temperatureSd;
  const byHeadspace = ((bar * (GAS / 100 / kelvin)) / held) * headspaceSd;
  const half =
    1.96 * Math.sqrt(byDose * byDose + byYield * byYield + byKelvin * byKelvin + byHeadspace * byHeadspace);
  const expected = bar + nitrogen(celsius) - 1.01325;
  return [[expected - half, expected, expected + half]];
}

function curve(
  doseGL: number,
  base: number,
  from: number,
  to: number,
  step: number,
  share: number,
  headspace: number,
  co2: number,
): number[][] {
  const rows: number[][] = [];
  for (let celsius = from; celsius <= to; celsius += step)
    rows.push([celsius, pressure(doseGL, celsius, base, share, headspace, co2)]);
  return rows;
}

/** By halving too: a plain loop. */
function progress(
  bar: number,
  celsius: number,
  doseGL: number,
  base: number,
  share: number,
  headspace: number,
  co2: number,
): number {
  const diluted = base * (1 - doseGL * 0.000625);
  const above = nitrogen(celsius) - 1.01325;
  let low = 0;
  let high = 1;
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    const left = (1 - middle) * doseGL * INVERT;
    const held = capacity(celsius, diluted + middle * doseGL * VOL, left, headspace);
    if ((middle * doseGL * CO2 * share + co2) / held + above < bar) low = middle;
    else high = middle;
  }
}

function obtained(
  bar: number,
  celsius: number,
  doseGL: number,
  base: number,
  headspace: number,
  co2: number,
) {
  const vol = base * (1 - doseGL * 0.000625) + doseGL * VOL;
  const own = bar + 1.01325 - nitrogen(celsius);
  return (own * capacity(celsius, vol, 0, headspace) - co2) / (doseGL * CO2);
}

const filled = (v: Varied) => [v.between(0.9, 0.98), v.between(2, 6), v.between(0, 1)] as const;

export const bareBottle: readonly Bare[] = [
  {
    id: "TIRAGE.PRESSURE",
    bare: pressure,
    inputs: (v) => [v.between(18, 28), v.between(5, 25), v.between(9, 12), ...filled(v)],
  },
  {
    id: "TIRAGE.DOSE",
    bare: dose,
    inputs: (v) => [v.between(4, 6), v.between(8, 20), v.between(9, 12), ...filled(v)],
  },
  {
    id: "TIRAGE.RANGE",
    bare: range,
    inputs: (v) => [
      v.between(18, 28),
      v.between(5, 25),
      v.between(9, 12),
      v.between(0.2, 0.6),
      v.between(0.01, 0.03),
      v.between(0.2, 1),
      v.between(0.2, 1),
      ...filled(v),
    ],
  },
  {
    id: "TIRAGE.CURVE",
    bare: curve,
    inputs: (v) => [
      v.between(18, 28),
      v.between(9, 12),
      v.whole(0, 5),
      v.whole(28, 32),
      v.whole(1, 5),
      ...filled(v),
    ],
  },
  {
    id: "TIRAGE.PROGRESS",
    bare: progress,
    inputs: (v) => [v.between(1.5, 4), v.between(8, 14), v.between(22, 26), v.between(9, 12), ...filled(v)],
  },
  {
    id: "TIRAGE.YIELD",
    bare: obtained,
    inputs: (v) => [
      v.between(5.1, 5.4),
      v.between(10.5, 11.5),
      v.between(24, 25),
      v.between(10, 11),
      v.between(3, 4),
      v.between(0, 0.5),
    ],
  },
];

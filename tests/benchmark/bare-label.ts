/**
 * RIDDLING and LABEL by hand.
 */
import type { Bare } from "./bare";

function schedule(start: number, days: number, turnsADay: number): number[][] {
  const rows: number[][] = [];
  const turns = days * turnsADay;
  let mark = 0;
  for (let turn = 0; turn < turns; turn++) {
    const eighths = turn === 0 ? 1 : turn % 2 === 0 ? 2 : -2;
    mark += eighths;
    rows.push([
      start + Math.floor(turn / turnsADay),
      turn + 1,
      eighths,
      mark,
      15 + (60 * turn) / (turns - 1),
    ]);
  }
  return rows;
}

const energy = (vol: number, sugar: number, acid: number, glycerol: number, unit: string) =>
  unit === "kJ"
    ? vol * 0.78924 * 29 + (sugar * 17 + acid * 13 + glycerol * 10) / 10
    : vol * 0.78924 * 7 + (sugar * 4 + acid * 3 + glycerol * 2.4) / 10;

const labelled = (label: number, measured: number, rules: string) =>
  Math.abs(label - measured) <= (rules === "EU" ? 0.8 : 1.5) ? "within tolerance" : "outside tolerance";

function fill(bottle: number): number {
  if (bottle <= 50) return Math.ceil(bottle * 0.9) / 10;
  if (bottle <= 100) return 4.5;
  if (bottle <= 200) return Math.ceil(bottle * 0.45) / 10;
  if (bottle <= 300) return 9;
  if (bottle <= 500) return Math.ceil(bottle * 0.3) / 10;
  if (bottle <= 1000) return 15;
  if (bottle <= 10_000) return Math.ceil(bottle * 0.15) / 10;
  return bottle <= 15_000 ? 150 : Math.ceil(bottle * 0.1) / 10;
}

export const bareLabel: readonly Bare[] = [
  {
    id: "RIDDLING.SCHEDULE",
    bare: schedule,
    inputs: (v) => [v.whole(40_000, 50_000), v.whole(10, 20), v.whole(1, 3)],
  },
  {
    id: "RIDDLING.RACKS",
    bare: (bottles: number, places: number) => Math.ceil(bottles / places),
    inputs: (v) => [v.whole(500, 9000), v.one([60, 120, 504])],
  },
  {
    id: "RIDDLING.HOURS",
    bare: (bottles: number, turns: number, rate: number) => (bottles * turns) / rate,
    inputs: (v) => [v.whole(500, 9000), v.whole(10, 30), v.between(3000, 9000)],
  },
  { id: "LABEL.ALCOHOL", bare: (vol: number) => Math.round(vol * 2) / 2, inputs: (v) => [v.between(9, 14)] },
  {
    id: "LABEL.ENERGY",
    bare: energy,
    inputs: (v) => [
      v.between(10, 13),
      v.between(0, 30),
      v.between(4, 8),
      v.between(3, 8),
      v.one(["kJ", "kcal"]),
    ],
  },
  {
    id: "LABEL.ALCOHOLCHECK",
    bare: labelled,
    inputs: (v) => [v.between(10, 13.5), v.between(10, 13.5), v.one(["EU", "US"])],
  },
  {
    id: "LABEL.FILL",
    bare: fill,
    inputs: (v) => [v.one([50, 75, 187, 200, 250, 375, 500, 750, 1500, 3000, 12_000, 15_500])],
  },
];

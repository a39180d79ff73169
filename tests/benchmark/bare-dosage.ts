/**
 * DISGORGING, DOSAGE and COST by hand.
 */
import type { Bare } from "./bare";

function freezing(vol: number, sugar: number): number {
  const ethanol = vol * 10;
  const mol = (ethanol * 0.78924) / 46.069 + sugar / 180.156;
  return (-1.86 * mol) / (((1000 - ethanol - sugar * 0.625) * 0.9982) / 1000);
}

const space = (filled: number, lost: number, bottle: number) => bottle - (filled - lost);

const dosage = (bottle: number, wine: number, target: number, liqueur: number) =>
  (bottle * (target - wine)) / (liqueur - wine);

const mixed = (bottle: number, wine: number, added: number, liqueur: number) =>
  ((bottle - added) * wine + added * liqueur) / bottle;

const batch = (bottles: number, added: number, reserve: number) =>
  ((bottles * added) / 1000) * (1 + reserve / 100);

function recipe(volume: number, strength: number, carrier: number): number[][] {
  const sugar = (volume * (strength - carrier)) / (1000 - carrier * 0.625);
  return [[sugar, volume - sugar * 0.625]];
}

const stock = (litres: number, bottle: number, wine: number, target: number, liqueur: number) =>
  Math.floor((litres * 1000) / dosage(bottle, wine, target, liqueur));

/** The driest term after a dosage. */
function term(sugar: number): string {
  if (sugar <= 6) return "extra brut";
  if (sugar < 12) return "brut";
  if (sugar <= 17) return "extra dry";
  if (sugar <= 32) return "dry";
  return sugar <= 50 ? "medium dry" : "sweet";
}

function trial(bottle: number, wine: number, liqueur: number, targets: readonly (readonly number[])[]) {
  const rows: unknown[][] = [];
  for (const [target] of targets) {
    const each = dosage(bottle, wine, target!, liqueur);
    rows.push([target, each, (each * 100) / bottle, term(target!)]);
  }
  return rows;
}

const packs = (needed: number, size: number, reserve: number) =>
  Math.ceil((needed * (1 + reserve / 100)) / size);

export const bareDosage: readonly Bare[] = [
  { id: "DISGORGING.FREEZING", bare: freezing, inputs: (v) => [v.between(10, 13), v.between(0, 30)] },
  {
    id: "DISGORGING.SPACE",
    bare: space,
    inputs: (v) => [v.between(748, 752), v.between(10, 30), v.between(749, 755)],
  },
  {
    id: "DOSAGE.VOLUME",
    bare: dosage,
    inputs: (v) => [750, v.between(0, 2), v.between(4, 12), v.between(500, 700), v.between(20, 30)],
  },
  {
    id: "DOSAGE.SUGAR",
    bare: mixed,
    inputs: (v) => [750, v.between(0, 2), v.between(5, 20), v.between(500, 700)],
  },
  {
    id: "DOSAGE.TOPUP",
    bare: (room: number, added: number) => room - added,
    inputs: (v) => [v.between(20, 30), v.between(1, 19)],
  },
  { id: "DOSAGE.BATCH", bare: batch, inputs: (v) => [v.whole(500, 9000), v.between(5, 20), v.between(1, 9)] },
  {
    id: "DOSAGE.RECIPE",
    bare: recipe,
    inputs: (v) => [v.between(5, 500), v.between(500, 700), v.between(1, 100)],
  },
  {
    id: "DOSAGE.STOCK",
    bare: stock,
    inputs: (v) => [v.between(50, 500), 750, v.between(0, 2), v.between(4, 12), v.between(500, 700)],
  },
  {
    id: "DOSAGE.ALCOHOL",
    bare: mixed,
    inputs: (v) => [750, v.between(11, 13), v.between(5, 20), v.between(0, 20)],
  },
  {
    id: "DOSAGE.BLEND",
    bare: (weaker: number, stronger: number, target: number) => (target - weaker) / (stronger - weaker),
    inputs: (v) => [v.between(0, 100), v.between(500, 700), v.between(150, 450)],
  },
  {
    id: "DOSAGE.TRIAL",
    bare: trial,
    inputs: (v) => [
      750,
      v.between(0, 2),
      v.between(500, 700),
      Array.from({ length: v.whole(4, 8) }, () => [v.between(2.5, 60)]),
    ],
  },
  {
    id: "COST.PACKS",
    bare: packs,
    inputs: (v) => [v.between(500, 9000), v.between(50, 1000), v.between(1, 9)],
  },
  {
    id: "COST.HOLDING",
    bare: (amount: number, months: number, pct: number) => amount * ((1 + pct / 100) ** (months / 12) - 1),
    inputs: (v) => [v.between(100, 1e5), v.between(6, 60), v.between(1, 9)],
  },
  {
    id: "COST.BOTTLE",
    bare: (total: number, bottles: number, breakage: number) => total / (bottles * (1 - breakage / 100)),
    inputs: (v) => [v.between(100, 1e5), v.whole(500, 9000), v.between(0.5, 3)],
  },
];

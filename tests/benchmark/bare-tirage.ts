/**
 * TIRAGE by hand: sugar, volumes, bottles, alcohol.
 */
import type { Bare } from "./bare";

const INVERT = (2 * 180.156) / 342.297;
const VOL = INVERT / 16.83;

const sugar = (volume: number, dose: number, own: number) =>
  (volume * 100 * (dose - own / INVERT)) / (1000 - dose * 0.625);

const liqueur = (volume: number, dose: number, strength: number, own: number) =>
  (volume * 100 * (dose - own / INVERT)) / (strength - dose);

function volume(volumeHl: number, dose: number, strength: number, own: number, starterL: number): number {
  const wine = volumeHl + starterL / 100;
  return wine + (wine * (dose - own / INVERT)) / (strength - dose);
}

const bottles = (volumeHl: number, bottle: number, loss: number) =>
  Math.floor((volumeHl * 100_000 * (1 - loss / 100)) / bottle);

const alcohol = (base: number, dose: number, own: number) =>
  (base * (1000 - dose * 0.625)) / (1000 - (own / INVERT) * 0.625) + dose * VOL;

const starter = (volumeHl: number, wanted: number, held: number) =>
  (volumeHl * 100 * wanted) / (held - wanted);

export const bareTirage: readonly Bare[] = [
  { id: "TIRAGE.SUGAR", bare: sugar, inputs: (v) => [v.between(5, 200), v.between(18, 28), v.between(0, 4)] },
  {
    id: "TIRAGE.LIQUEUR",
    bare: liqueur,
    inputs: (v) => [v.between(5, 200), v.between(18, 28), v.between(400, 650), v.between(0, 4)],
  },
  {
    id: "TIRAGE.VOLUME",
    bare: volume,
    inputs: (v) => [
      v.between(5, 200),
      v.between(18, 28),
      v.between(400, 650),
      v.between(0, 4),
      v.between(10, 300),
    ],
  },
  {
    id: "TIRAGE.BOTTLES",
    bare: bottles,
    inputs: (v) => [v.between(5, 200), v.one([375, 750, 1500]), v.between(0.1, 3)],
  },
  {
    id: "TIRAGE.ALCOHOL",
    bare: alcohol,
    inputs: (v) => [v.between(9, 12), v.between(18, 28), v.between(0, 4)],
  },
  {
    id: "TIRAGE.STARTER",
    bare: starter,
    inputs: (v) => [v.between(5, 200), v.between(1, 3), v.between(50, 100)],
  },
];

/**
 * What a saleable bottle costs, by parts: which are told apart, and where they stand in one bar.
 */
import type { Part } from "../../workbook/plan/cost-parts";
import { ASCENT, LINE, WIDTH, apart, textWidth, type Box, type Label } from "./geometry-labels";
import type { Point } from "./svg";

/** Smaller parts are told together. */
export const LEAST_SHARE = 0.02;

export interface CostShare {
  readonly part: Part | "other";
  readonly perBottle: number;
  /** Of the whole, 0 to 1. */
  readonly share: number;
}

/** The greatest first, the gathered last; nothing where nothing costs. */
export function costShares(costs: Readonly<Record<Part, number>>, bottles: number): CostShare[] {
  const parts = Object.entries(costs) as [Part, number][];
  const total = parts.reduce((sum, [, cost]) => sum + cost, 0);
  if (!(total > 0)) return [];
  const all = parts
    .filter(([, cost]) => cost > 0)
    .map(([part, cost]): CostShare => ({ part, perBottle: cost / bottles, share: cost / total }))
    .sort((a, b) => b.share - a.share);
  const large = all.filter(({ share }) => share >= LEAST_SHARE);
  const small = all.filter(({ share }) => share < LEAST_SHARE);
  if (small.length === 0) return large;
  const sum = (of: (each: CostShare) => number) => small.reduce((whole, each) => whole + of(each), 0);
  return [
    ...large,
    { part: "other", perBottle: sum((each) => each.perBottle), share: sum((each) => each.share) },
  ];
}

export interface CostPicture {
  readonly height: number;
  readonly pieces: readonly {
    readonly box: Box;
    readonly number: Label;
    readonly leader: readonly Point[];
  }[];
}

const HEIGHT = 62;
const BAR = { left: 1, top: 26, width: WIDTH - 2, height: 35 } as const;
const GAP = 4;

export function costPicture(shares: readonly { readonly share: number }[]): CostPicture {
  const names = shares.map((_, index) => String(index + 1));
  let reached = 0;
  const boxes = shares.map(({ share }): Box => {
    const left = BAR.left + reached * BAR.width;
    reached += share;
    return { ...BAR, left, width: share * BAR.width };
  });
  const middles = boxes.map(({ left, width }) => left + width / 2);
  const widest = Math.max(0, ...names.map(textWidth)) + GAP;
  const places = apart(middles, widest, 0, WIDTH);
  return {
    height: HEIGHT,
    pieces: boxes.map((box, index) => ({
      box,
      number: { text: names[index]!, x: places[index]!, y: ASCENT, anchor: "middle" },
      leader: [
        [places[index]!, LINE + 1],
        [middles[index]!, BAR.top - 3],
        [middles[index]!, BAR.top],
      ],
    })),
  };
}

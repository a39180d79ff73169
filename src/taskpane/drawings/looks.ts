/**
 * How areas are told apart without colour: by lightness and by what they are hatched with. A pattern is found by its
 * id, so each drawing has its own.
 */
import { svg } from "./svg";

export const LOOKS = ["solid", "hatch", "light", "dots", "mid", "rows", "plain", "cross"] as const;
export type Look = (typeof LOOKS)[number];

let drawings = 0;

/** Side of a pattern's tile. */
const TILE = 6;
const tile = (...d: string[]) => d.map((each) => svg("path", { d: each, class: "drawing-stroke" }));
const dot = (x: number, y: number) => svg("circle", { cx: x, cy: y, r: 1.1, class: "drawing-ink" });

const PATTERNS: Partial<Record<Look, () => SVGElement[]>> = {
  // beyond the tile, so that lines meet at its corners
  hatch: () => tile("M-1 1L1 -1M0 6L6 0M5 7L7 5"),
  dots: () => [dot(1.5, 1.5), dot(4.5, 4.5)],
  rows: () => tile("M0 1.5H6M0 4.5H6"),
  cross: () => tile("M0 0L6 6M0 6L6 0"),
};

export interface Looks {
  /** The patterns, to stand in the drawing that uses them. */
  readonly defs: SVGDefsElement;
  /** What an area of this look is given. */
  readonly area: (look: Look) => { readonly class: string; readonly fill?: string };
}

export function newLooks(): Looks {
  const drawing = ++drawings;
  const id = (look: Look) => `drawing-${drawing}-${look}`;
  const patterns = LOOKS.flatMap((look) => {
    const inside = PATTERNS[look];
    if (!inside) return [];
    const attributes = { id: id(look), width: TILE, height: TILE, patternUnits: "userSpaceOnUse" };
    const paper = svg("rect", { width: TILE, height: TILE, class: "drawing-paper" });
    return [svg("pattern", attributes, paper, ...inside())];
  });
  return {
    defs: svg("defs", {}, ...patterns),
    area: (look) => ({
      class: `drawing-area drawing-${look}`,
      ...(PATTERNS[look] && { fill: `url(#${id(look)})` }),
    }),
  };
}

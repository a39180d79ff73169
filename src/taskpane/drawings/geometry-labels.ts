/**
 * Where texts go: none over another, none outside. Widths are estimated, for a drawing is laid out before anything
 * can measure it.
 */
import { widthOf } from "../../hosts/grid/chart-text";

/** Of every drawing, in its own pixels: about what the narrowest pane leaves. */
export const WIDTH = 300;
export const TEXT_SIZE = 12;
/** Of a line of text, above its foot and in all. */
export const ASCENT = 11;
export const LINE = 14;

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Label {
  readonly text: string;
  readonly x: number;
  /** The foot of the letters. */
  readonly y: number;
  readonly anchor: "start" | "middle" | "end";
}

const BEFORE = { start: 0, middle: 0.5, end: 1 } as const;

export const textWidth = (text: string) => widthOf(text, TEXT_SIZE);

export function boxOf({ text, x, y, anchor }: Label): Box {
  const width = textWidth(text);
  return { left: x - width * BEFORE[anchor], top: y - ASCENT, width, height: LINE };
}

/** Things that touch do not overlap, whatever the last bits of their floats say. */
const SLACK = 1e-9;

export const overlap = (one: Box, other: Box) =>
  one.left < other.left + other.width - SLACK &&
  other.left < one.left + one.width - SLACK &&
  one.top < other.top + other.height - SLACK &&
  other.top < one.top + one.height - SLACK;

export const isInside = (box: Box, frame: Box) =>
  box.left >= frame.left - SLACK &&
  box.top >= frame.top - SLACK &&
  box.left + box.width <= frame.left + frame.width + SLACK &&
  box.top + box.height <= frame.top + frame.height + SLACK;

/** Each label at the first of its places that is free; where none is, it is left to the words below the drawing. */
export function placed(
  wishes: readonly (readonly Label[])[],
  frame: Box,
  taken: readonly Box[] = [],
): Label[] {
  const full = [...taken];
  return wishes.flatMap((places) => {
    const found = places.find((label) => {
      const box = boxOf(label);
      return isInside(box, frame) && !full.some((each) => overlap(box, each));
    });
    if (!found) return [];
    full.push(boxOf(found));
    return [found];
  });
}

/**
 * Middles for things of one size in a row, in the order given, each as near to its wish as the others allow
 * (isotonic regression). There is room for all if size × number is at most to − from.
 */
export function apart(wishes: readonly number[], size: number, from: number, to: number): number[] {
  const last = to - size * wishes.length;
  const groups: { sum: number; count: number }[] = [];
  wishes.forEach((wish, index) => {
    let group = { sum: wish - size * (index + 0.5), count: 1 };
    for (let before = groups.at(-1); before && before.sum / before.count > group.sum / group.count;) {
      group = { sum: before.sum + group.sum, count: before.count + group.count };
      groups.pop();
      before = groups.at(-1);
    }
    groups.push(group);
  });
  return groups
    .flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
    .map((start, index) => Math.max(from, Math.min(last, start)) + size * (index + 0.5));
}

/**
 * Where the value of a mark may stand: places in the order in which they are tried.
 */
import { ASCENT, textWidth, type Box, type Label } from "./geometry-labels";
import type { Point } from "./svg";

const GAP = 6;
const MARK = 5;

/** The expected pressure, with the low and high end above one another. */
export interface PlacedMark {
  readonly x: number;
  readonly low: number;
  readonly expected: number;
  readonly high: number;
}

/**
 * Above the band or below it, over all the breadth of the text, and as near to the mark as that allows. What has
 * another mark close before it goes below first, or the value would be read as that mark's.
 */
export function besideCurve(
  text: string,
  { x }: PlacedMark,
  { left, width }: Box,
  low: readonly Point[],
  high: readonly Point[],
  beforeX = -Infinity,
): Label[] {
  const breadth = textWidth(text);
  const bounded = (start: number) => Math.min(Math.max(start, left + 1), left + width - breadth - 1);
  const above = (start: number) => Math.min(heightAt(high, start), heightAt(high, start + breadth)) - GAP;
  const below = (start: number) =>
    Math.max(heightAt(low, start), heightAt(low, start + breadth)) + ASCENT + 2;
  const [before, around, after] = [bounded(x - breadth), bounded(x - breadth / 2), bounded(x)];
  const places: Point[] = [
    [before, above(before)],
    [after, below(after)],
    [around, above(around)],
    [around, below(around)],
    [after, above(after)],
    [before, below(before)],
  ];
  if (beforeX < x && beforeX > x - breadth - GAP) places.unshift(places[1]!);
  return places.map(([start, y]) => ({ text, x: start, y, anchor: "start" as const }));
}

/** Of a line whose points lie evenly across. */
function heightAt(line: readonly Point[], x: number): number {
  const [from, to] = [line[0]![0], line.at(-1)![0]];
  const place = Math.min(1, Math.max(0, (x - from) / (to - from))) * (line.length - 1);
  const before = Math.min(Math.floor(place), line.length - 2);
  const [[, low], [, high]] = [line[before]!, line[before + 1]!];
  return low + (high - low) * (place - before);
}

export const besideLine = (text: string, { left, width }: Box, y: number): Label[] => [
  { text, x: left + GAP, y: y - 4, anchor: "start" },
  { text, x: left + GAP, y: y + ASCENT + 2, anchor: "start" },
  { text, x: left + width - GAP, y: y - 4, anchor: "end" },
  { text, x: left + width - GAP, y: y + ASCENT + 2, anchor: "end" },
];

export const besideMark = (text: string, [x, y]: Point): Label[] => [
  { text, x: x - 2 * MARK - GAP, y: y + 4, anchor: "end" },
  { text, x: x - 2 * MARK - GAP, y: y + ASCENT + GAP, anchor: "end" },
  { text, x: x + 2 * MARK + GAP, y: y + 4, anchor: "start" },
];

/** With so much room around it that no value of another mark is read as its own. */
export const squareAt = ([x, y]: Point, room: number): Box => ({
  left: x - MARK - room,
  top: y - MARK - room,
  width: 2 * (MARK + room),
  height: 2 * (MARK + room),
});

export const spanOf = ({ x, low, high }: PlacedMark): Box => ({
  left: x - MARK,
  top: high,
  width: 2 * MARK,
  height: Math.max(0, low - high),
});

/**
 * What every layout has to be: of numbers, inside its frame, no text over another.
 */
import {
  boxOf,
  isInside,
  overlap,
  type Box,
  type Label,
} from "../../../src/taskpane/drawings/geometry-labels";

/** Every number anywhere in it. */
function numbersIn(thing: unknown): number[] {
  if (typeof thing === "number") return [thing];
  return typeof thing === "object" && thing !== null ? Object.values(thing).flatMap(numbersIn) : [];
}
export const allFinite = (thing: unknown) => numbersIn(thing).every(Number.isFinite);

export function expectApart(labels: readonly Label[], frame: Box) {
  const boxes = labels.map(boxOf);
  boxes.forEach((box, index) => {
    expect(isInside(box, frame)).toBe(true);
    for (const other of boxes.slice(0, index)) expect(overlap(box, other)).toBe(false);
  });
}

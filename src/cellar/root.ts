/**
 * The root of a rising function between two bounds, by bisection: it always ends, and it ends at neighbouring
 * floating-point numbers, so the answer is as exact as the function.
 */
export function bisect(rising: (x: number) => number, low: number, high: number): number {
  let [below, above] = [low, high];
  if (rising(below) >= 0) return below;
  if (rising(above) <= 0) return above;
  for (;;) {
    const middle = below + (above - below) / 2;
    if (middle <= below || middle >= above) return middle;
    if (rising(middle) < 0) below = middle;
    else above = middle;
  }
}

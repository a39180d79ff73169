/**
 * Elements of a drawing from data: the one place where they are made. Text goes in as text, never as markup.
 */
type Attributes = Readonly<Record<string, string | number | undefined>>;

const NAMESPACE = "http://www.w3.org/2000/svg";

export function svg<Tag extends keyof SVGElementTagNameMap>(
  tag: Tag,
  attributes: Attributes = {},
  ...children: (Node | string)[]
): SVGElementTagNameMap[Tag] {
  const made = document.createElementNS(NAMESPACE, tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    made.setAttribute(name, typeof value === "number" ? inPixels(value) : value);
  }
  made.append(...children);
  return made;
}

/** A hundredth of a pixel is more than any screen shows. */
const inPixels = (value: number) => String(Number(value.toFixed(2)));

export type Point = readonly [x: number, y: number];

const corners = (points: readonly Point[]) =>
  points.map(([x, y]) => `${inPixels(x)} ${inPixels(y)}`).join("L");

/** The data of a path along these points. */
export const along = (points: readonly Point[]) => `M${corners(points)}`;
export const around = (points: readonly Point[]) => `M${corners(points)}Z`;

/** A line through the first points, then a curve by two handles to the last. */
export const bent = (points: readonly Point[]) =>
  `${along(points.slice(0, -3))}C${points
    .slice(-3)
    .map(([x, y]) => `${inPixels(x)} ${inPixels(y)}`)
    .join(" ")}`;

/**
 * Text in a drawing, whose width is estimated: a chart is laid out before anything can measure it.
 */
import { node, type SvgNode } from "./svg";

/** An Arial letter on average, as a share of its size; a little more than less. */
const LETTER = 0.53;

export const widthOf = (text: string, size: number) => [...text].length * size * LETTER;

/** As much of the text as goes in, with an ellipsis where some is left out. */
export function cut(text: string, width: number, size: number): string {
  const letters = [...text];
  const room = Math.max(1, Math.floor(width / (size * LETTER)));
  return letters.length <= room
    ? text
    : `${letters
        .slice(0, room - 1)
        .join("")
        .trimEnd()}…`;
}

export const label = (text: string, attributes: SvgNode["attributes"]) => node("text", attributes, text);

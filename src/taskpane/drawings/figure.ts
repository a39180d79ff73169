/**
 * A drawing with its caption above and its words below. The words are page text, so that they wrap, grow and are
 * translated like any other; the drawing itself holds figures and short names, and says the rest to those who do not
 * see it.
 */
import { element } from "../dom";
import { TEXT_SIZE, WIDTH, type Label } from "./geometry-labels";
import { svg } from "./svg";

/** One sentence, with the mark it explains if there is one. */
export interface Saying {
  readonly mark?: SVGElement[];
  readonly words: string;
}

export interface Drawn {
  /** Ends the class of the figure: "drawing drawing-pressure". */
  readonly name: "pressure" | "neck" | "timeline" | "cost";
  readonly caption: string;
  readonly height: number;
  readonly nodes: readonly SVGElement[];
  readonly sayings: readonly Saying[];
  /** What the drawing tells and the words below do not. */
  readonly unseen?: readonly string[];
  /** Instead of the words below, where they are a table. */
  readonly key?: HTMLElement;
}

export const SWATCH = { width: 24, height: 14 } as const;

export function swatch(mark: readonly SVGElement[]): SVGSVGElement {
  const { width, height } = SWATCH;
  const attributes = { class: "drawing-swatch", viewBox: `0 0 ${width} ${height}`, width, height };
  return svg("svg", { ...attributes, "aria-hidden": "true", focusable: "false" }, ...mark);
}

export function figure({ name, caption, height, nodes, sayings, unseen = [], key }: Drawn): HTMLElement {
  // every sentence stands by itself
  const told = [...sayings.map(({ words }) => words), ...unseen].flatMap((sentence) => [sentence, " "]);
  const picture = svg(
    "svg",
    {
      class: "drawing-picture",
      role: "img",
      viewBox: `0 0 ${WIDTH} ${height}`,
      width: WIDTH,
      height,
      "font-size": TEXT_SIZE,
    },
    svg("title", {}, caption),
    svg("desc", {}, ...told),
    ...nodes,
  );
  return framed(name, caption, element("div", { class: "drawing-view" }, picture), key ?? keyOf(sayings));
}

/** Where there is nothing to draw. */
export function sentence(name: Drawn["name"], caption: string, words: readonly string[]): HTMLElement {
  return framed(name, caption, ...words.map((each) => element("p", { class: "drawing-note" }, each)));
}

function framed(name: Drawn["name"], caption: string, ...inside: HTMLElement[]): HTMLElement {
  const attributes = { class: `drawing drawing-${name}` };
  return element("figure", attributes, element("figcaption", {}, caption), ...inside);
}

export function keyOf(sayings: readonly Saying[]): HTMLElement {
  const rows = sayings.map(({ mark, words }) =>
    mark
      ? element("li", {}, swatch(mark), element("span", {}, words))
      : element("li", { class: "drawing-unmarked" }, words),
  );
  return element("ul", { class: "drawing-key" }, ...rows);
}

export const write = ({ text, x, y, anchor }: Label, look: "" | "quiet" | "strong" = "") =>
  svg("text", { x, y, "text-anchor": anchor, class: look === "" ? undefined : `drawing-${look}` }, text);

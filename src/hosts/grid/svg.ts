/**
 * A drawing as data, and as elements of a page. Text goes in as text.
 */
export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children?: readonly SvgNode[];
  readonly text?: string;
}

const NAMESPACE = "http://www.w3.org/2000/svg";

/** Numbers to a tenth of a pixel. */
export function node(
  tag: string,
  attributes: SvgNode["attributes"],
  content: string | readonly SvgNode[] = [],
): SvgNode {
  const rounded = Object.entries(attributes).map(
    ([name, value]) => [name, typeof value === "number" ? Math.round(value * 10) / 10 : value] as const,
  );
  const inside = typeof content === "string" ? { text: content } : { children: content };
  return { tag, attributes: Object.fromEntries(rounded), ...inside };
}

export function svgElement({ tag, attributes, children = [], text }: SvgNode, page: Document): Element {
  const element = page.createElementNS(NAMESPACE, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  if (text !== undefined) element.textContent = text;
  element.append(...children.map((child) => svgElement(child, page)));
  return element;
}

/**
 * A strict reader of the help pages: tags nest, attributes are quoted, and a sign that should have been escaped is an
 * error. Stricter than a browser, which forgives all of these.
 */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (Element | string)[];
}

const VOID = new Set(["meta", "link", "br"]);
const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', nbsp: "\u00a0" };
const PART =
  /<!doctype html>|<(?<close>\/)?(?<name>[a-z][a-z0-9]*)(?<attributes>(?: [a-z-]+="[^"<>]*")*)(?: \/)?>|(?<text>[^<>]+)/uy;

function decoded(text: string): string {
  return text.replace(/&([^;\s]*);?/gu, (whole, name: string) => {
    const sign = whole.endsWith(";") ? ENTITIES[name] : undefined;
    if (sign === undefined) throw new Error(`"${whole}" is not escaped`);
    return sign;
  });
}

export function readMarkup(html: string): Element {
  const root: Element = { name: "", attributes: {}, children: [] };
  const open = [root];
  PART.lastIndex = 0;
  while (PART.lastIndex < html.length) {
    const at = PART.lastIndex;
    const groups = PART.exec(html)?.groups;
    if (!groups) throw new Error(`no markup: ${html.slice(at, at + 60)}`);
    const { name, close, attributes = "", text } = groups;
    const inner = open.at(-1)!;
    if (text !== undefined) inner.children.push(decoded(text));
    else if (name === undefined) continue;
    else if (close === undefined) {
      const pairs = [...attributes.matchAll(/ ([a-z-]+)="([^"]*)"/gu)];
      const element: Element = {
        name,
        attributes: Object.fromEntries(pairs.map(([, key = "", value = ""]) => [key, decoded(value)])),
        children: [],
      };
      inner.children.push(element);
      if (!VOID.has(name)) open.push(element);
    } else if (open.pop()!.name !== name) throw new Error(`</${name}> closes <${inner.name}>`);
  }
  if (open.length !== 1) throw new Error(`<${open.at(-1)!.name}> is not closed`);
  return root;
}

/** Every element below, in order, of one of these names. */
export function all(element: Element, ...names: readonly string[]): Element[] {
  return element.children.flatMap((child) => {
    if (typeof child === "string") return [];
    const below = all(child, ...names);
    return names.includes(child.name) ? [child, ...below] : below;
  });
}

/** The text within, blanks made one. */
export function textOf(element: Element): string {
  const text = (each: Element | string): string =>
    typeof each === "string" ? each : each.children.map(text).join("");
  return flat(text(element));
}

export const flat = (text: string) => text.replace(/\s+/gu, " ").trim();

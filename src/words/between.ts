/**
 * What stands in a text between parts that are known: "3 of 5" with "", " of ", "" gives "3" and "5", each as short as
 * may be and none empty. An expression with several (.+?) would try every way to share a text out, which takes for ever
 * in a long one that hardly fits.
 */
export function between(text: string, [first = "", ...rest]: readonly string[]): string[] | undefined {
  const last = rest.at(-1) ?? "";
  if (!text.startsWith(first) || !text.endsWith(last)) return undefined;
  const found: string[] = [];
  let at = first.length;
  for (const part of rest.slice(0, -1)) {
    const next = text.indexOf(part, at + 1);
    if (next <= at) return undefined;
    found.push(text.slice(at, next));
    at = next + part.length;
  }
  const end = text.length - last.length;
  return end > at ? [...found, text.slice(at, end)] : undefined;
}

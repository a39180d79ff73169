/**
 * How much text a validation rule takes, in Excel and in its files (MS-OI29500 2.1.613 for the refusal).
 */
export const RULE_TEXT = { title: 32, prompt: 255, refusal: 224, list: 255 } as const;

/** At most so many characters; what is cut ends with "…", between two words where there is a space. */
export function cut(text: string, limit: number): string {
  if (text.length <= limit) return text;
  const space = text.lastIndexOf(" ", limit - 1);
  const kept = text.slice(0, space > limit / 2 ? space : limit - 1);
  return `${kept.replace(/[\uD800-\uDBFF]$/, "")}…`;
}

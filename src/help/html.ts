/**
 * Text into HTML. Everything that is text is escaped here, once.
 */
export const escape = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

/** What is typed or calculated: the same in every language. */
export const code = (text: string) => `<code>${escape(text)}</code>`;

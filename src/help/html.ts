/**
 * Text into HTML. Everything that is text is escaped here, once.
 */
export const escape = (text: string) =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");

/**
 * Where the add-in is served: the one setting of the build that differs from place to place.
 */
export const LOCAL_ORIGIN = "https://localhost:3000";

const EXAMPLE = "https://example.org/mousse";

/** The address of the folder that holds the add-in, without a slash at its end; what will not do is said in words. */
export function originOf(given: unknown): string {
  if (typeof given !== "string") throw new Error(`origin has no address; give one such as ${EXAMPLE}`);
  const refused = (why: string) => new Error(`origin is "${given}"; ${why}, such as ${EXAMPLE}`);
  if (!URL.canParse(given)) throw refused("give an https address");
  const url = new URL(given);
  if (url.protocol !== "https:") throw refused("Excel takes add-ins over https only: give an https address");
  if (url.username !== "" || url.password !== "")
    throw refused("give the address without a name or password");
  if (given.includes("?") || given.includes("#")) throw refused("give the address without ? and #");
  if (/\.(html?|xml)\/?$/i.test(url.pathname)) throw refused("give the address of the folder, not of a file");
  const folder = withoutEndSlash(url.href);
  // blanks, capitals and dots that an address only seems to hold would not be found again in it
  if (folder !== withoutEndSlash(given) || url.pathname.includes("//"))
    throw refused(`give the address exactly as a browser shows it`);
  return folder;
}

const withoutEndSlash = (address: string) => (address.endsWith("/") ? address.slice(0, -1) : address);

/** An address under one origin, moved under another; any other text stays as it is. */
export function moved(text: string, from: string, to: string): string {
  if (!URL.canParse(text)) return text;
  const { origin, pathname, search, hash } = new URL(text);
  return origin === from ? `${to}${pathname}${search}${hash}` : text;
}

/**
 * Office.js in the pane's page. It comes from Microsoft's server and the page does not wait for it, so it may come
 * before the page's own scripts, after them, or never.
 */
type CustomFunction = (...args: never[]) => unknown;

/** True once the script has come, false once it is known not to; while its server does not answer, neither. */
export function officeCame(): Promise<boolean> {
  const isThere = () => typeof Office !== "undefined";
  return new Promise((resolve) => {
    if (isThere()) resolve(true);
    document
      .querySelector('script[src^="https://appsforoffice.microsoft.com/"]')
      ?.addEventListener("load", () => resolve(isThere()));
    // a page has loaded when each of its scripts has come or failed
    if (document.readyState === "complete") resolve(isThere());
    window.addEventListener("load", () => resolve(isThere()));
  });
}

/** The functions that were associated before Office.js came are associated with it, before Excel asks for them. */
export function handOverFunctions(): void {
  const { associated, associate } = CustomFunctions as unknown as {
    readonly associated?: ReadonlyMap<string, CustomFunction>;
    readonly associate: (id: string, calculate: CustomFunction) => void;
  };
  associated?.forEach((calculate, id) => associate(id, calculate));
}

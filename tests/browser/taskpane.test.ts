/**
 * The pane's page in a browser: with the genuine office.js but no Excel, and with office.js out of reach.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import type { Browser, Page, Route } from "playwright-core";
import { browserDescribe, launchChromium, serveDist } from "../support/chromium";

const OFFICE = path.resolve(__dirname, "../../node_modules/@microsoft/office-js/dist");
const { functions } = JSON.parse(
  readFileSync(path.resolve(__dirname, "../../dist/functions.json"), "utf8"),
) as {
  functions: { id: string }[];
};

/** The package's own files in place of Microsoft's server, which tests never ask. */
async function fromPackage(route: Route): Promise<void> {
  const file = new URL(route.request().url()).pathname.split("/hosted/")[1] ?? "";
  try {
    await route.fulfill({ body: readFileSync(path.join(OFFICE, file)), contentType: "text/javascript" });
  } catch {
    await route.abort();
  }
}

browserDescribe("the pane's page", () => {
  let browser: Browser;
  let server: Awaited<ReturnType<typeof serveDist>>;
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  async function opened(office: (route: Route) => Promise<void>): Promise<{ page: Page; errors: string[] }> {
    const page = await browser.newPage({ viewport: { width: 320, height: 720 } });
    const errors: string[] = [];
    page.on("pageerror", (error) => errors.push(error.message));
    await page.route("https://appsforoffice.microsoft.com/**", office);
    await page.goto(`${server.address}/taskpane.html`);
    return { page, errors };
  }

  test("with office.js every function is associated with it", async () => {
    const { page, errors } = await opened(fromPackage);
    await page.locator("#pane .status", { hasText: "No spreadsheet is connected" }).waitFor();
    const known = await page.evaluate(() => {
      const { _association } = (
        window as unknown as { CustomFunctions: { _association: { mappings: object } } }
      ).CustomFunctions;
      return Object.keys(_association.mappings);
    });
    expect(known.sort()).toEqual(functions.map(({ id }) => id).sort());
    expect(await page.locator("#pane .figures tr").count()).toBeGreaterThan(5);
    expect(await page.locator("button.write").isDisabled()).toBe(true);
    expect(errors).toEqual([]);
    await page.close();
  });

  test("without office.js the figures are there all the same, and the reason in words", async () => {
    const { page, errors } = await opened((route) => route.abort());
    await page.locator("#pane .status", { hasText: "No spreadsheet is connected" }).waitFor();
    expect(await page.locator("#pane .figures tr").count()).toBeGreaterThan(5);
    expect(errors).toEqual([]);
    await page.close();
  });

  test("nothing is cut off at 320 px", async () => {
    const { page } = await opened((route) => route.abort());
    await page.evaluate(() => document.querySelectorAll("details").forEach((each) => (each.open = true)));
    const overflowing = await page.evaluate(() =>
      [...document.querySelectorAll("#pane *")]
        .filter((each) => each.getBoundingClientRect().right > 320.5 && !each.closest(".visually-hidden"))
        .map((each) => each.outerHTML.slice(0, 80)),
    );
    expect(overflowing).toEqual([]);
    await page.close();
  });
});

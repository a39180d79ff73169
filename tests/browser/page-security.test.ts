/**
 * What the pages may do and whom they need: no script but their own, no server but their own, no waiting for
 * Office.js, and nothing missing when the server goes away after the page has loaded.
 */
import { readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import type { Browser, Page, Route } from "playwright-core";
import { AHEAD_MS } from "../../src/taskpane/ahead";
import { browserDescribe, launchChromium, serveDist } from "../support/chromium";
import { samplePath } from "../support/samples";
import { holdBackTimers } from "../support/timers";

const OFFICE_SERVER = "https://appsforoffice.microsoft.com";
const OFFICE = path.resolve(__dirname, "../../node_modules/@microsoft/office-js/dist");
const SOURCES = path.resolve(__dirname, "../../src");
/** Longer than the pane takes to load ahead what it needs later. */
const IDLE_MS = 4_000;

async function genuine(route: Route): Promise<void> {
  const file = new URL(route.request().url()).pathname.split("/hosted/")[1] ?? "";
  await route.fulfill({ body: readFileSync(path.join(OFFICE, file)), contentType: "text/javascript" });
}
/** Whether the functions were loaded so often, at last ahead, and nothing since this was last asked. */
function allCame(times: number): boolean {
  const page = window as { came?: number };
  const files = performance.getEntriesByType("resource").map(({ name }) => name);
  const before = page.came;
  page.came = files.length;
  const listed = files.filter((name) => name.endsWith("/functions.json")).length;
  return listed >= times && before === files.length;
}
const refused = (route: Route) => route.abort();
const silent = () => undefined;

test.each(["taskpane", "workbench"])(
  "the policy of %s.html is the one that it.md gives as a header",
  (name) => {
    const source = readFileSync(path.join(SOURCES, name, `${name}.html`), "utf8");
    const [, policy] = /"(default-src [^"]+)"/.exec(source)!;
    expect(readFileSync(path.join(SOURCES, "docs/it.md"), "utf8")).toContain(
      `Content-Security-Policy: ${policy}\n`,
    );
  },
);

/** What is said when something does not come is said by then, whatever the machine. */
const PROMISED_MS = 10_000;

browserDescribe("the pages", () => {
  let browser: Browser;
  let server: Awaited<ReturnType<typeof serveDist>>;
  beforeAll(async () => (browser = await launchChromium()));
  afterAll(() => browser.close());
  beforeEach(async () => (server = await serveDist()));
  afterEach(() => server.close());

  /** A page with what it asked for, whom it asked, and what was refused to it. */
  async function opened(file: string, office: (route: Route) => unknown = refused) {
    const context = await browser.newContext({
      viewport: { width: 1280, height: 800 },
      acceptDownloads: true,
    });
    const page = await context.newPage();
    const asked = new Set<string>();
    page.on("request", (request) => {
      const { protocol, origin } = new URL(request.url());
      if (protocol.startsWith("http")) asked.add(origin);
    });
    await page.addInitScript(() => {
      const violations: string[] = [];
      Object.assign(window, { violations });
      document.addEventListener("securitypolicyviolation", (event) =>
        violations.push(`${event.effectiveDirective} ${event.blockedURI} ${event.sourceFile}`),
      );
    });
    await holdBackTimers(page, PROMISED_MS + 1, null);
    await page.route(`${OFFICE_SERVER}/**`, office);
    await page.goto(`${server.address}/${file}`, { waitUntil: "commit" });
    const violations = () => page.evaluate(() => (window as unknown as { violations: string[] }).violations);
    return { page, asked, violations };
  }

  const status = (page: Page, text: string) => page.locator("#pane .status", { hasText: text });
  const figures = (page: Page) => page.locator("#pane .figures tr").first();

  async function writePlan(page: Page): Promise<void> {
    await page.locator("button.write:enabled").waitFor();
    await page.locator("button.write").click();
    await status(page, "Written").waitFor();
  }

  /** Tried by the page itself, as the test's own scripts are above the policy. */
  const ranScripts = (page: Page) =>
    page.evaluate(
      () =>
        new Promise<string[]>((done) => {
          const ran: string[] = [];
          Object.assign(window, { ran });
          const script = document.createElement("script");
          script.textContent = "window.ran.push('inline')";
          document.body.append(script);
          const image = document.createElement("img");
          image.setAttribute("onerror", "window.ran.push('attribute')");
          image.src = "data:,";
          document.body.append(image);
          setTimeout(() => {
            try {
              (0, eval)("window.ran.push('eval')");
            } catch {
              // refused
            }
          });
          setTimeout(() => done(ran), 500);
        }),
    );

  describe("pane", () => {
    test("asks its own server and Office.js's, and only Office.js's measuring outside Excel is refused", async () => {
      const { page, asked, violations } = await opened("taskpane.html", genuine);
      await status(page, "open this pane from Excel").waitFor();
      const [download] = await Promise.all([
        page.waitForEvent("download"),
        page.getByRole("button", { name: "Keep as a file" }).click(),
      ]);
      expect(download.suggestedFilename()).toMatch(/\.json$/);
      await page.waitForTimeout(IDLE_MS);
      expect([...asked].sort()).toEqual([server.address, OFFICE_SERVER].sort());
      const ofThePage = (await violations()).filter(
        (each) => !each.includes(OFFICE_SERVER) && !each.includes("https://telemetryservice."),
      );
      expect(ofThePage).toEqual([]);
      await page.context().close();
    });

    test("runs no script that was put into it", async () => {
      const { page, violations } = await opened("taskpane.html");
      await figures(page).waitFor();
      expect(await ranScripts(page)).toEqual([]);
      expect((await violations()).filter((each) => each.startsWith("script-src")).length).toBeGreaterThan(1);
      await page.context().close();
    });

    test("works from a folder of its server", async () => {
      const { page } = await opened("taskpane.html");
      await page.goto("about:blank");
      await page.route(`${server.address}/mousse/**`, (route) =>
        route.continue({ url: route.request().url().replace("/mousse/", "/") }),
      );
      const wanted: string[] = [];
      page.on("request", (request) => wanted.push(request.url()));
      await page.goto(`${server.address}/mousse/taskpane.html`);
      await figures(page).waitFor();
      await page.waitForTimeout(IDLE_MS / 2);
      const own = wanted.filter((url) => !url.startsWith(OFFICE_SERVER));
      expect(own.length).toBeGreaterThan(4);
      for (const url of own) expect(url).toContain(`${server.address}/mousse/`);
      await page.context().close();
    });

    test("stands while Office.js does not answer, says so, and takes it when it comes", async () => {
      let answer: (() => void) | undefined;
      const { page } = await opened("taskpane.html", (route) => {
        answer ??= () => void genuine(route);
      });
      await figures(page).waitFor();
      expect(answer).toBeDefined();
      await page.locator('[id="baseWine.alcohol_vol"]').fill("85");
      expect(await page.locator('[id="baseWine.alcohol_vol-message"]').textContent()).toContain(
        "give 5 to 16",
      );
      await status(page, "has not answered yet").waitFor();
      // what comes after it goes to the same server
      await page.route(`${OFFICE_SERVER}/**`, (route) =>
        route.request().url().endsWith("/office.js") ? silent() : genuine(route),
      );
      answer!();
      await status(page, "open this pane from Excel").waitFor();
      const { functions } = JSON.parse(
        readFileSync(path.resolve(__dirname, "../../dist/functions.json"), "utf8"),
      ) as { functions: { id: string }[] };
      const known = await page.evaluate(() =>
        Object.keys(
          (window as unknown as { CustomFunctions: { _association: { mappings: object } } }).CustomFunctions
            ._association.mappings,
        ),
      );
      expect(known.sort()).toEqual(functions.map(({ id }) => id).sort());
      await page.context().close();
    });

    test("says that Office.js cannot be reached", async () => {
      const { page } = await opened("taskpane.html", refused);
      await status(page, "Office.js, which Excel's add-ins need, could not be loaded").waitFor();
      expect(await page.locator("#pane .status:not(.replaced)").textContent()).toContain(
        "cannot be reached from here",
      );
      await page.context().close();
    });

    test("loads ahead whatever it loads when it is first asked for", () => {
      const folder = path.join(SOURCES, "taskpane");
      const imported = (file: string) =>
        [...readFileSync(path.join(folder, file), "utf8").matchAll(/(?<!typeof )import\("([^"]+)"\)/g)].map(
          ([, it]) => it,
        );
      const later = readdirSync(folder)
        .filter((file) => file.endsWith(".ts") && file !== "ahead.ts" && file !== "taskpane.ts")
        .flatMap(imported);
      expect(later.length).toBeGreaterThan(1);
      expect(imported("ahead.ts")).toEqual(expect.arrayContaining(later));
    });

    test("reads a workbook after its server has gone", async () => {
      const { page } = await opened("taskpane.html");
      await figures(page).waitFor();
      await page.waitForFunction(allCame, 1, { polling: AHEAD_MS });
      await server.close();
      await page.locator("#batch-file").setInputFiles(samplePath("oxlip-hill-rose.portable.xlsx"));
      await status(page, "Read from").waitFor();
      await page.context().close();
    });
  });

  describe("workbench", () => {
    test("writes and saves a plan without anything refused, and asks its own server alone", async () => {
      const { page, asked, violations } = await opened("workbench.html");
      await writePlan(page);
      // a list to choose from, a menu and a dialog, as these bring styles of their own
      for (const button of ["left", "left", "right"] as const) {
        await page.mouse.click(430, 453, { button });
        await page.waitForTimeout(500);
      }
      await page.keyboard.press("Escape");
      const [download] = await Promise.all([page.waitForEvent("download"), page.locator("#save").click()]);
      expect(download.suggestedFilename()).toMatch(/\.xlsx$/);
      await page.waitForTimeout(IDLE_MS);
      expect(await violations()).toEqual([]);
      expect([...asked]).toEqual([server.address]);
      await page.context().close();
    });

    test("runs no script that was put into it", async () => {
      const { page } = await opened("workbench.html");
      await page.locator("button.write:enabled").waitFor();
      expect(await ranScripts(page)).toEqual([]);
      await page.context().close();
    });

    test("writes, gathers and saves after its server has gone", async () => {
      const { page } = await opened("workbench.html");
      await page.locator("button.write:enabled").waitFor();
      // once for the spreadsheet, once for the pane
      await page.waitForFunction(allCame, 2, { polling: AHEAD_MS });
      await server.close();
      const gone = await page.evaluate(() =>
        fetch("functions.json").then(
          () => false,
          () => true,
        ),
      );
      expect(gone).toBe(true);
      await writePlan(page);
      await page.getByText("Plans in the workbook").click();
      await page.getByRole("button", { name: "Write the season" }).click();
      await status(page, "eason").waitFor();
      const [download] = await Promise.all([page.waitForEvent("download"), page.locator("#save").click()]);
      expect(readFileSync(await download.path()).length).toBeGreaterThan(10_000);
      await page.context().close();
    });
  });
});

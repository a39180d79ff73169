/**
 * The pane in French: no text of it stays English, and what is written and read back is French too.
 */
import type { Browser, Page } from "playwright-core";
import { browserDescribe, launchChromium, serveDist } from "../support/chromium";

/** Words that no French sentence has. Names of sheets, functions and examples are left out where they stand. */
const ENGLISH =
  /\b(?:the|of|and|is|are|with|from|not|for|by|to|at|wine|bottles?|sugar|write|months|alcohol|pressure)\b/iu;

browserDescribe("the pane in French", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, locale: "fr-FR" });
    page = await context.newPage();
    await page.goto(`${server.address}/workbench.html`);
    await page.locator("button.write:enabled", { hasText: "Écrire le plan" }).waitFor();
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  /** Everything that is read or spoken in the pane. */
  const texts = () =>
    page.evaluate(() => {
      const found = new Set<string>();
      for (const root of document.querySelectorAll("#pane, .bar")) {
        const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT | NodeFilter.SHOW_ELEMENT);
        for (let node: Node | null = root; node; node = walker.nextNode()) {
          const parent = node instanceof Element ? node : node.parentElement;
          if (parent?.closest('[translate="no"]')) continue;
          if (node instanceof Text) found.add(node.data.trim());
          else if (node instanceof Element)
            for (const name of ["aria-label", "title", "placeholder"])
              found.add(node.getAttribute(name) ?? "");
        }
      }
      return [...found].filter((text) => /\p{L}{2}/u.test(text));
    });
  const english = async () =>
    (await texts()).filter((text) => ENGLISH.test(text) && !/^[A-Z]+\.[A-Z0-9]+$/u.test(text));
  const openAll = () =>
    page.evaluate(() =>
      document
        .querySelectorAll("#pane details")
        .forEach((each) => ((each as HTMLDetailsElement).open = true)),
    );

  test("all of the form, its figures, drawings, what-if and bench", async () => {
    await openAll();
    await page.locator(".picture figure").nth(3).waitFor();
    await page.locator("details.what-if input[type=range]").first().waitFor();
    await page.locator("details.bench button").first().waitFor();
    await openAll();
    expect(await page.locator("html").getAttribute("lang")).toBe("fr");
    expect(await english()).toEqual([]);
  });

  test("what is to be mended", async () => {
    await page.locator('[id="baseWine.alcohol_vol"]').fill("85");
    await page.locator('[id="tirage.hottest_C"]').fill("x");
    await page.locator('[id="batch.tirageDate"]').fill("");
    expect(await english()).toEqual([]);
    await page.locator("select.examples").selectOption("1");
  });

  test("what is said when a plan is written, read and brought up to date", async () => {
    await page.locator("button.write:enabled").click();
    await page.locator("#pane .status", { hasText: "Écrit" }).waitFor();
    expect(await english()).toEqual([]);
    await page.locator(".plans button:enabled", { hasText: "Lire" }).click();
    await page.locator("#pane .status", { hasText: "Lu" }).waitFor();
    expect(await english()).toEqual([]);
    await page.locator('[id="tirage.cellar_C"]').fill("11");
    await page.locator("button", { hasText: "Mettre à jour" }).click();
    await page.locator("#pane .changes li").waitFor();
    expect(await english()).toEqual([]);
    await page.locator("#pane .status button").first().click();
    await page.locator("#pane .status", { hasText: "Modifi" }).waitFor();
    expect(await english()).toEqual([]);
  });

  test("and back to English without a word lost", async () => {
    await page.locator("select.language").selectOption("en");
    await page.locator("button.write", { hasText: /^Write/ }).waitFor();
    expect(await page.locator("#pane h1").textContent()).toBe("Plan a batch");
    const french = (await texts()).filter(
      (text) =>
        /[àâçéèêëîïôûœ]/iu.test(text) && !/Rosé|Crémant|Satèn|Français|dosé|août|févr|déc/u.test(text),
    );
    expect(french).toEqual([]);
  });
});

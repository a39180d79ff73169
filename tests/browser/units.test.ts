/**
 * Units chosen in the form: what was typed and what was left blank stay what they were, there and back.
 */
import type { Browser, Page } from "playwright-core";
import { browserDescribe, launchChromium, serveDist, withoutOffice } from "../support/chromium";
import { readFileSync } from "node:fs";

browserDescribe("units of the form", () => {
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

  async function opened(context?: Awaited<ReturnType<Browser["newContext"]>>): Promise<Page> {
    const page = await (context ?? (await browser.newContext({ locale: "en-US" }))).newPage();
    await withoutOffice(page);
    await page.goto(`${server.address}/taskpane.html`);
    await page.evaluate(() =>
      document
        .querySelectorAll("#pane details")
        .forEach((each) => ((each as HTMLDetailsElement).open = true)),
    );
    return page;
  }
  async function kept(page: Page): Promise<Record<string, Record<string, unknown>>> {
    const download = page.waitForEvent("download");
    await page.getByRole("button", { name: "Keep as a file" }).click();
    return JSON.parse(readFileSync(await (await download).path(), "utf8")) as Record<
      string,
      Record<string, unknown>
    >;
  }
  const box = (page: Page, dotted: string) => page.locator(`[id="${dotted}"]`);
  const choose = (page: Page, label: string, unit: string) =>
    page.getByLabel(`Unit of ${label}`, { exact: true }).selectOption(unit);

  test("there and back, nothing in the kept file has changed", async () => {
    const page = await opened();
    await box(page, "tirage.pressure_bar").fill("6");
    await box(page, "tirage.hottest_C").fill("24.5");
    await box(page, "baseWine.volume_hL").fill("41.3");
    const before = await kept(page);
    for (const [label, unit, back] of [
      ["Excess pressure wanted", "psi", "bar"],
      ["Cellar temperature", "°F", "°C"],
      ["Base wine", "gal (US)", "hL"],
    ] as const) {
      await choose(page, label, unit);
      expect(await kept(page)).toEqual(before);
      await choose(page, label, back);
      expect(await kept(page)).toEqual(before);
    }
    expect(await box(page, "tirage.hottest_C").inputValue()).toBe("24.5");
  });

  test("what is typed in another unit is kept in ours, and shown in both", async () => {
    const page = await opened();
    await choose(page, "Excess pressure wanted", "psi");
    await choose(page, "Cellar temperature", "°F");
    await box(page, "tirage.pressure_bar").fill("87");
    await box(page, "tirage.hottest_C").fill("77");
    const { tirage } = await kept(page);
    // 1 psi is 0.0689475729 bar; 77 °F are 25 °C
    expect(tirage!.pressure_bar).toBeCloseTo(87 * 0.0689475729, 6);
    expect(tirage!.hottest_C).toBe(25);
    await choose(page, "Excess pressure wanted", "bar");
    expect(await box(page, "tirage.pressure_bar").inputValue()).toBe("5.99844");
  });

  test("a refusal names what was typed, and the ends that it gives are taken", async () => {
    const page = await opened();
    await choose(page, "Excess pressure wanted", "psi");
    await box(page, "tirage.pressure_bar").fill("300");
    const message = page.locator('[id="tirage.pressure_bar-message"]');
    expect(await message.textContent()).toBe("Excess pressure wanted is 300; give -14.5 to 290.07 psi");
    await box(page, "tirage.pressure_bar").fill("290.07");
    expect(await message.textContent()).not.toMatch(/give -14.5/);
  });

  test("°Brix that there are not are refused as they were typed", async () => {
    const page = await opened();
    await box(page, "tirage.sugarForm").selectOption("liqueur");
    await choose(page, "Strength of the tirage liqueur", "°Brix");
    await box(page, "tirage.liqueur_gL").fill("1000");
    expect(await page.locator('[id="tirage.liqueur_gL-message"]').textContent()).toMatch(
      /^Strength of the tirage liqueur is 1000; give 0 to /,
    );
  });

  test("blanks stay blank, readings too", async () => {
    const page = await opened();
    await choose(page, "Cellar temperature", "°F");
    expect(await page.locator("#pane .problem:not([hidden])").count()).toBe(0);
    expect(await box(page, "readings.r1.at_C").inputValue()).toBe("");
  });

  test("another page's choice leaves this one alone", async () => {
    const context = await browser.newContext({ locale: "en-US" });
    const [one, other] = [await opened(context), await opened(context)];
    await choose(other, "Excess pressure wanted", "psi");
    await box(one, "tirage.pressure_bar").fill("6");
    expect((await kept(one)).tirage!.pressure_bar).toBe(6);
    expect(await one.getByLabel("Unit of Excess pressure wanted").inputValue()).toBe("bar");
  });

  test("a date that is none is quoted, not dropped", async () => {
    const page = await opened();
    await page.locator("#batch-file").setInputFiles({
      name: "bad.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify({ batch: { name: "x", tirageDate: "14.4.2026" } })),
    });
    await page.locator('[id="batch.tirageDate-message"]', { hasText: "14.4.2026" }).waitFor();
  });

  test("the form can be brought back, with what was usual, after more was typed", async () => {
    const page = await opened();
    await page.getByRole("button", { name: "Empty", exact: true }).click();
    const usual = await page.locator(".usual:not([hidden])").count();
    expect(usual).toBeGreaterThan(20);
    await page.locator("select.examples").selectOption("1");
    await box(page, "batch.name").fill("Something else");
    await page.getByRole("button", { name: "Bring the form back" }).click();
    expect(await page.locator(".usual:not([hidden])").count()).toBe(usual);
    expect(await box(page, "batch.name").inputValue()).toBe("");
  });
});

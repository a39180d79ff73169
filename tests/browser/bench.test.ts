/**
 * The dosage bench in a browser.
 */
import type { Browser, Page } from "playwright-core";
import type { BatchInputs } from "../../src/cellar/batch/fields";
import { browserDescribe, launchChromium } from "../support/chromium";
import { inputsOf, sampleInputs } from "../support/samples";
import { changed } from "../cellar/batch/worked-batch";
import { bundled, follow, opened, overhang, taken } from "../taskpane/variants/page";

const rose = sampleInputs("oxlip-hill-rose.json");
const zeroDosed = sampleInputs("oxlip-hill-magnum-zero.json");
/** 750 mL, nothing left, concentrate of 600 g/L, 20 mL of room, 13 400 bottles. */
const worked = (dosage: Record<string, unknown> = {}): BatchInputs =>
  inputsOf(changed({ dosage: { kind: "concentrate", ...dosage } }));

browserDescribe("the dosage bench in the pane", () => {
  let browser: Browser;
  let page: Page;
  let section: Awaited<ReturnType<typeof bundled>>;
  const errors: string[] = [];
  beforeAll(async () => {
    section = await bundled("bench", "benchSection");
    browser = await launchChromium();
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    await page.close();
    expect(errors.splice(0)).toEqual([]);
  });

  async function start(inputs: BatchInputs | null, width = 320): Promise<void> {
    page = await opened(browser, section, width);
    page.on("pageerror", (error) => errors.push(error.message));
    await follow(page, inputs);
  }
  const trial = (name: string) => page.getByRole("listitem", { name, exact: true });
  const names = () =>
    page.locator(".trial").evaluateAll((all) => all.map((each) => each.getAttribute("aria-label")));
  const fact = (name: string, label: string) =>
    trial(name)
      .locator("dl > div", { has: page.locator("dt", { hasText: label }) })
      .locator("dd")
      .textContent();
  const inGlass = (name: string) => trial(name).locator(".glass strong").textContent();
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
  const said = () => page.locator(".said").textContent();

  test("nothing heavy is loaded with it", async () => {
    await start(null);
    expect(section.sources).toContain("src/taskpane/bench/section.ts");
    expect(section.sources.filter((source) => /workbook|hosts|zod/u.test(source))).toEqual([]);
    expect(section.js.length).toBeLessThan(250_000);
  });

  test("the rows by hand: 100·8/600 mL in the glass, 10 mL a bottle, 140.7 L with the reserve", async () => {
    await start(worked({ stock_L: 100 }));
    expect(await names()).toEqual([
      "Zero dosage",
      "Trial at 1.5 g/L",
      "Trial at 4.5 g/L",
      "Trial at 8 g/L",
      "Trial at 14.5 g/L",
    ]);
    expect(await inGlass("Trial at 8 g/L")).toBe("1.33 mL");
    expect(await fact("Trial at 8 g/L", "Liqueur a bottle")).toBe("10.00 mL");
    expect(await fact("Trial at 8 g/L", "Liqueur for the batch")).toBe("140.7 L");
    expect(await fact("Trial at 8 g/L", "Stock")).toBe("40.7 L short: enough for 10,000 of 13,400 bottles.");
    expect(await fact("Trial at 4.5 g/L", "Terms")).toBe("extra brut, brut");
    expect(await trial("Trial at 8 g/L").locator(".mark").textContent()).toBe("as in the form");
    expect(await inGlass("Zero dosage")).toBe("0.00 mL");
    expect(await fact("Zero dosage", "Terms")).toBe("brut nature, extra brut, brut");
    expect(await page.locator(".caution").textContent()).toContain("Glasses lose CO2");
  });

  test("another glass, with a decimal comma: 37.5 mL take half of what 75 take", async () => {
    await start(worked());
    const glass = page.getByRole("textbox", { name: "Volume of a glass" });
    await glass.fill("37,5");
    // 37.5·8/600
    expect(await inGlass("Trial at 8 g/L")).toBe("0.50 mL");
    await glass.fill("5");
    expect(await page.locator("#bench-glass_mL-message").textContent()).toBe(
      "Volume of a glass is 5; give 10 to 1000 mL",
    );
    expect(await page.locator(".glass").first().isVisible()).toBe(false);
    await glass.fill("150");
    expect(await inGlass("Trial at 8 g/L")).toBe("2.00 mL");
  });

  test("a trial is added, filled in, noted, used and removed by keyboard alone", async () => {
    await start(worked());
    await page.getByRole("button", { name: "Add a trial" }).press("Enter");
    await page.keyboard.type("11");
    expect(await trial("Trial at 11 g/L").locator(".glass").isVisible()).toBe(true);
    await page.locator(".said", { hasText: "Trial at 11 g/L: 1.83 mL into the glass; brut." }).waitFor();
    await page.keyboard.press("Tab");
    await page.keyboard.type("rounder than 8");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    expect(await taken(page)).toEqual([[11]]);
    // what was noted stays with it when the form takes the sweetness
    await follow(page, worked({ target_gL: 11 }));
    expect(await trial("Trial at 11 g/L").getByLabel("Tasting notes").inputValue()).toBe("rounder than 8");
    expect(await trial("Trial at 11 g/L").locator(".mark").textContent()).toBe("as in the form");
    await press("Remove: Trial at 14.5 g/L");
    expect(await names()).not.toContain("Trial at 14.5 g/L");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Add a trial");
  });

  test("twelve trials, and a word about the thirteenth", async () => {
    await start(worked());
    for (let count = 4; count < 12; count += 1) await press("Add a trial");
    await press("Add a trial");
    expect(await said()).toBe("12 trials are in the list already. Remove one before you add another.");
    expect(await page.locator(".trial").count()).toBe(13);
    await press("The usual trials again");
    expect(await page.locator(".trial").count()).toBe(5);
  });

  test("a sweetness that is no number, or cannot be reached, says so and shows no figures", async () => {
    await start(worked({ residual_gL: 2 }));
    await press("Add a trial");
    const box = page.locator(".trial").last().getByRole("textbox", { name: "Sweetness to try" });
    await box.fill("ten");
    const last = page.locator(".trial").last();
    expect(await last.locator(".problem").textContent()).toBe('Sweetness is "ten"; give 0 to 300 g/L');
    expect(await last.locator("dl").isVisible()).toBe(false);
    await box.fill("1");
    expect(await last.locator(".problem:visible").textContent()).toBe(
      "Sweetness wanted is 1; the wine already holds 2 g/L; give a target of at least that",
    );
    expect(await last.locator("dl").isVisible()).toBe(false);
    expect(await last.getByRole("button", { name: /^Use this sweetness/u }).isDisabled()).toBe(true);
  });

  test("zero dosage is used as the wine's own sugar; where the form adds none it is all there is", async () => {
    await start(rose);
    await press("Use this sweetness: Zero dosage");
    expect(await taken(page)).toEqual([[rose.dosage.residual_gL]]);
    await follow(page, zeroDosed);
    expect(await names()).toEqual(["Zero dosage"]);
    expect(await page.locator(".bench").textContent()).toContain("The form adds no dosage.");
    expect(await page.getByRole("button", { name: /^Use this/u }).count()).toBe(0);
    await follow(page, null);
    expect(await page.locator(".trial").first().isVisible()).toBe(false);
    expect(await page.locator(".bench").textContent()).toContain("The form has fields to mend.");
  });

  test.each([320, 400])("at %d px nothing sticks out", async (width) => {
    await start(rose, width);
    await press("Add a trial");
    await page.locator(".trial").last().getByRole("textbox", { name: "Sweetness to try" }).fill("28");
    await press("Add a trial");
    await page.locator(".trial").last().getByRole("textbox", { name: "Sweetness to try" }).fill("ten");
    expect(await overhang(page)).toBe(0);
    if (process.env.SHOTS) {
      await page.setViewportSize({ width, height: 2400 });
      await page.screenshot({ path: `${process.env.SHOTS}/bench-${width}.png` });
    }
  });
});

/**
 * The pages on other screens, enlarged to 200 % and 400 %: nothing is cut off, nothing has to be scrolled sideways, and
 * every control can be reached, by pointer and by keyboard.
 */
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { browserDescribe, launchChromium, serveDist, withoutOffice } from "../support/chromium";
import { eventually } from "../support/eventually";

/** 640 px are 320 at 200 %; 1280 × 1024 are 320 × 256 at 400 %. */
const SCREENS: Readonly<Record<string, BrowserContextOptions>> = {
  "a pane of 320 px": { viewport: { width: 320, height: 720 } },
  "640 px at 200 %": { viewport: { width: 320, height: 360 }, deviceScaleFactor: 2 },
  "1280 × 1024 at 400 %": { viewport: { width: 320, height: 256 }, deviceScaleFactor: 4 },
};
const HALVED: BrowserContextOptions = { viewport: { width: 640, height: 400 }, deviceScaleFactor: 2 };

browserDescribe("on other screens", () => {
  let browser: Browser;
  let server: Awaited<ReturnType<typeof serveDist>>;
  let page: Page;
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });
  afterEach(() => page.context().close());

  async function opened(file: string, options: BrowserContextOptions): Promise<void> {
    page = await (await browser.newContext(options)).newPage();
    await withoutOffice(page);
    await page.goto(`${server.address}/${file}`);
    await page.locator("h1").waitFor();
  }
  const openDetails = () =>
    page.evaluate(() =>
      document
        .querySelectorAll<HTMLDetailsElement>("#pane details:not([hidden])")
        .forEach((each) => (each.open = true)),
    );
  /** Everything that can be opened, two variants kept, and a function whose arguments are to be mended. */
  async function everything(): Promise<void> {
    await openDetails();
    await page.locator(".picture figure").nth(3).waitFor();
    await page.locator(".bench .trial").first().waitFor();
    const keep = page.locator(".variants .actions").nth(1).locator("button").first();
    await keep.click();
    await page.locator("#variant-volume_hL").fill("70");
    await keep.click();
    await page.locator("#function-search").fill("tirage pressure wine temperature");
    await page.locator("#function-search").fill("TIRAGE.PRESSURE");
    await page.locator("#function-search").press("Enter");
    await page.locator(".function .put").click();
    await page.locator("#argument-dose_gL-problem").waitFor();
  }

  /** What sticks out at the side, what is cut, and controls that cannot be brought before the eye and the pointer. */
  const astray = () =>
    page.evaluate(() => {
      const say = (each: Element) => each.outerHTML.slice(0, 120);
      const seen = [...document.querySelectorAll<HTMLElement>("body *")].filter(
        (each) =>
          each.checkVisibility() &&
          !each.closest("#grid > *, .univer-popup, [id^=univer], svg *, .visually-hidden, .stacked thead"),
      );
      // what scrolls in a box of its own is not lost
      const inOwnBox = (each: Element) => each.closest(".side-by-side, .drawing-view") !== null;
      const width = document.documentElement.clientWidth;
      const beyond = seen.filter(
        (each) => !inOwnBox(each) && each.getBoundingClientRect().right > width + 0.5,
      );
      const cut = seen.filter(
        (each) =>
          each.scrollWidth > each.clientWidth + 1 &&
          ["hidden", "clip"].includes(getComputedStyle(each).overflowX) &&
          !each.matches("input, select"),
      );
      const controls = seen.filter((each) =>
        each.matches("a[href], button, input, select, summary, label.button"),
      );
      const unreachable = controls.filter((each) => {
        each.scrollIntoView({ block: "center", inline: "nearest" });
        const { left, right, top, bottom } = each.getBoundingClientRect();
        const at = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
        const isHit = at !== null && (each.contains(at) || at.contains(each));
        return !isHit || left < -0.5 || right > width + 0.5 || top < -0.5 || bottom > innerHeight + 0.5;
      });
      return {
        controls: controls.length,
        scrolledAside: document.documentElement.scrollWidth - width,
        beyond: beyond.map(say),
        cut: cut.map(say),
        unreachable: unreachable.map(say),
      };
    });
  const fine = { scrolledAside: 0, beyond: [], cut: [], unreachable: [] };

  test.each(
    Object.keys(SCREENS).flatMap((screen) => ["en", "fr"].map((locale) => [screen, locale] as const)),
  )("the pane, %s, in %s", async (screen, locale) => {
    await opened("taskpane.html", { ...SCREENS[screen], locale });
    await everything();
    const { controls, ...found } = await astray();
    expect(controls).toBeGreaterThan(150);
    expect(found).toEqual(fine);
  });

  test.each([
    ["workbench.html", HALVED, 50],
    ["workbench.html", SCREENS["1280 × 1024 at 400 %"]!, 50],
    ["help/index.html", SCREENS["1280 × 1024 at 400 %"]!, 52],
    ["help/tirage.pressure.html", SCREENS["1280 × 1024 at 400 %"]!, 2],
  ])("%s at %j", async (file, options, least) => {
    await opened(file, options);
    if (file.startsWith("workbench")) await page.locator("button.write:enabled").waitFor();
    const { controls, ...found } = await astray();
    expect(controls).toBeGreaterThanOrEqual(least);
    expect(found).toEqual(fine);
  });

  test("Tab goes through everything and out again, and back the same way", async () => {
    await opened("taskpane.html", SCREENS["a pane of 320 px"]!);
    await openDetails();
    await page.locator(".bench .trial").first().waitFor();
    await page.locator("#function-search").waitFor();
    await page.locator("#variant-volume_hL").waitFor();
    const number = await page.evaluate(() => {
      const controls = [
        ...document.querySelectorAll<HTMLElement>(
          "#pane :is(a[href], button, input, select, summary, [tabindex='0'])",
        ),
      ].filter((each) => each.checkVisibility() && !each.matches(":disabled"));
      controls.forEach((each, index) => (each.dataset.control = String(index)));
      return controls.length;
    });
    expect(number).toBeGreaterThan(150);
    const at = () =>
      page.evaluate(() => Number((document.activeElement as HTMLElement).dataset.control ?? -1));
    async function through(key: string): Promise<number[]> {
      const way = [await at()];
      // a date has four stops
      for (let steps = 0; steps < number + 40; steps += 1) {
        await page.keyboard.press(key);
        const now = await at();
        if (now === -1) break;
        if (now !== way.at(-1)) way.push(now);
      }
      return way;
    }
    await page.locator("select.language").focus();
    const inOrder = Array.from({ length: number }, (_, index) => index);
    expect(await through("Tab")).toEqual(inOrder);
    await page.locator("#formulas").focus();
    // from the first it may go round to the last
    expect((await through("Shift+Tab")).slice(0, number)).toEqual([...inOrder].reverse());
  });

  const focusIn = (selector: string) =>
    page.waitForFunction((wanted) => document.activeElement?.closest(wanted) !== null, selector);

  test("F6 leads back into the spreadsheet after Shift+Tab had left the form and the mouse came back to it", async () => {
    await opened("workbench.html", { viewport: { width: 1280, height: 800 } });
    await page.locator("button.write:enabled").waitFor();
    await page.locator("#grid").click({ position: { x: 300, y: 300 } });
    await page.keyboard.press("F6");
    await focusIn("#pane");
    await page.keyboard.press("Shift+Tab");
    await page.keyboard.press("Shift+Tab");
    await focusIn("#grid");
    await page.locator('[id="batch.name"]').click();
    await page.keyboard.press("F6");
    await page.waitForFunction(() => (document.activeElement as HTMLElement).isContentEditable);
  });

  test("Shift+F6 leads to what saves the workbook, from the sheet and from the form", async () => {
    await opened("workbench.html", { viewport: { width: 1280, height: 800 } });
    await page.locator("button.write:enabled").waitFor();
    for (const from of ["#grid", "#pane"]) {
      if (from === "#grid") await page.locator("#grid").click({ position: { x: 300, y: 300 } });
      else await page.locator("select.language").focus();
      await focusIn(from);
      await page.keyboard.press("Shift+F6");
      await focusIn("#save");
    }
    await page.keyboard.press("Shift+Tab");
    await focusIn("#values");
    await page.keyboard.press("Space");
    expect(await page.locator("#values").isChecked()).toBe(true);
    await page.keyboard.press("Tab");
    const download = page.waitForEvent("download");
    await page.keyboard.press("Enter");
    expect((await download).suggestedFilename()).toBe("mousse-season.xlsx");
    await page.keyboard.press("F6");
    await page.waitForFunction(() => (document.activeElement as HTMLElement).isContentEditable);
  });

  // the spreadsheet has the keyboard from the start and keeps Tab for its cells
  test("F6 leads out of the spreadsheet, and back into it", async () => {
    await opened("workbench.html", { viewport: { width: 1280, height: 800 } });
    await page.locator("button.write:enabled").waitFor();
    await page.locator("#grid").click({ position: { x: 300, y: 300 } });
    expect(await page.evaluate(() => document.activeElement?.closest("#grid") !== null)).toBe(true);
    await page.keyboard.press("F6");
    expect(await page.evaluate(() => document.activeElement?.closest("#pane") !== null)).toBe(true);
    await page.keyboard.press("F6");
    await page.waitForFunction(() => (document.activeElement as HTMLElement).isContentEditable);
    await page.keyboard.type("=6*7");
    await page.keyboard.press("Enter");
    const values = () =>
      page.evaluate(() => {
        const { grid } = window as unknown as {
          grid: {
            getActiveWorkbook(): { getActiveSheet(): { getDataRange(): { getValues(): unknown[][] } } };
          };
        };
        return grid.getActiveWorkbook().getActiveSheet().getDataRange().getValues().flat();
      });
    await eventually(async () => expect(await values()).toContain(42));
  });
});

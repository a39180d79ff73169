/**
 * The pane by keyboard alone: each control is reached in the order of the page, shows that it has the keyboard, and
 * keeps it or hands it on when it is pressed.
 */
import type { Browser, Locator, Page } from "playwright-core";
import { browserDescribe, launchChromium, serveDist, withoutOffice } from "../support/chromium";

/** A workbook that takes whatever is written. */
function openWorkbook(): void {
  const names: string[] = [];
  const host = {
    name: "this workbook",
    sheetNames: () => Promise.resolve([...names]),
    keepsNotes: () => true,
    sheetsNaming: () => Promise.resolve([]),
    recall: () => Promise.resolve(undefined),
    keep: () => Promise.resolve(),
    remove: () => Promise.resolve(),
    write: ({ sheets }: { sheets: { name: string }[] }) => {
      names.push(...sheets.map(({ name }) => name));
      return Promise.resolve([]);
    },
  };
  Object.assign(window, { mousseHost: Promise.resolve(host) });
}

interface Stop {
  readonly what: string;
  readonly isOnPage: boolean;
  readonly ring: string;
  readonly row: { readonly top: number; readonly bottom: number; readonly left: number };
}

browserDescribe("by keyboard alone", () => {
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
  beforeEach(async () => {
    page = await browser.newPage({ viewport: { width: 320, height: 720 }, locale: "en" });
    await withoutOffice(page);
    await page.addInitScript(openWorkbook);
    await page.goto(`${server.address}/taskpane.html`);
    await page.locator("button.write:enabled").waitFor();
  });
  afterEach(() => page.context().close());

  /** What has the keyboard, how that is seen, and where it stands on the whole page. */
  const stop = (): Promise<Stop> =>
    page.evaluate(() => {
      const at = document.activeElement as HTMLElement;
      // a file's own button is not seen: its label shows the ring
      const seen = at.matches(".visually-hidden") ? (at.previousElementSibling as HTMLElement) : at;
      const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(seen);
      const { top, bottom, left, right } = seen.getBoundingClientRect();
      // head, middle and foot one below the other, however far the middle is scrolled
      const part = [...document.getElementById("pane")!.children].findIndex((each) => each.contains(at));
      const down = part * 100_000 + (at.closest(".sections")?.scrollTop ?? 0);
      return {
        what: at.id || `${at.tagName} ${at.ariaLabel ?? at.textContent}`,
        isOnPage:
          at !== document.body && top >= 0 && left >= 0 && bottom <= innerHeight && right <= innerWidth,
        ring: `${outlineStyle} ${outlineWidth} ${outlineColor}`,
        row: { top: top + down, bottom: bottom + down, left },
      };
    });
  async function seen(): Promise<Stop> {
    const now = await stop();
    expect(now).toEqual({ ...now, isOnPage: true, ring: "solid 2px rgb(47, 93, 80)" });
    return now;
  }
  /** Onwards by Tab; below or to the right each time. */
  async function tabTo(target: Locator): Promise<void> {
    await target.waitFor();
    for (let before: Stop | undefined, steps = 0; ; steps += 1) {
      if (steps > 0) await page.keyboard.press("Tab");
      if (await target.evaluate((each) => each === document.activeElement)) {
        await seen();
        return;
      }
      if (steps > 120) throw new Error(`Tab does not lead to ${target.toString()}`);
      if (steps === 0) continue;
      const now = await seen();
      if (before && before.what !== now.what) {
        const isBelow = now.row.top >= before.row.bottom - 8;
        const isBeside = now.row.bottom > before.row.top && now.row.left > before.row.left;
        expect([before.what, now.what, isBelow || isBeside]).toEqual([before.what, now.what, true]);
      }
      before = now;
    }
  }
  const press = async (target: Locator) => {
    await tabTo(target);
    await page.keyboard.press("Enter");
  };
  const box = (dotted: string) => page.locator(`[id="${dotted}"]`);
  const button = (name: string) => page.getByRole("button", { name, exact: true });
  const summary = (of: string) => page.locator(`${of} > summary`);
  const status = (text: string) => page.locator("#pane .status", { hasText: text }).waitFor();
  async function type(dotted: string, typed: string): Promise<void> {
    await tabTo(box(dotted));
    await page.keyboard.type(typed);
  }

  test("the first plan, from an empty form to its sheets", async () => {
    await press(button("Begin a batch of my own"));
    expect((await seen()).what).toBe("batch.name");
    await page.keyboard.type("First");
    await type("batch.tirageDate", "04142026");
    await type("baseWine.volume_hL", "10");
    await type("baseWine.alcohol_vol", "10,5");
    await type("baseWine.sugar_gL", "1");
    await type("tirage.pressure_bar", "5.2");
    await type("tirage.pressureAt_C", "12");
    await type("tirage.hottest_C", "24");
    await press(summary("#step-lees"));
    await type("lees.lees_months", "18");
    await press(summary("#step-dosage"));
    await type("disgorging.lost_mL", "20");
    await type("dosage.residual_gL", "1");
    await type("dosage.target_gL", "8");
    await type("dosage.strength_gL", "600");
    await type("dosage.liqueur_vol", "10.5");
    await press(button("Write the plan"));
    await status("Written to this workbook: sheet “Plan · First”");
    expect((await seen()).what).toBe("BUTTON Write as another plan");
  });

  test("a number out of range is told where the keyboard is", async () => {
    await tabTo(box("baseWine.alcohol_vol"));
    await page.keyboard.type("85");
    expect((await seen()).what).toBe("baseWine.alcohol_vol");
    const described = (await box("baseWine.alcohol_vol").getAttribute("aria-describedby"))!.split(" ");
    expect(described).toContain("baseWine.alcohol_vol-message");
    expect(await box("baseWine.alcohol_vol-message").textContent()).toContain("give 5 to 16");
    expect(await box("baseWine.alcohol_vol").getAttribute("aria-invalid")).toBe("true");
    await tabTo(page.locator("footer .glance > summary"));
    expect(await page.locator("footer .glance > summary").textContent()).toContain("mend");
  });

  test("what if: a slider moved, a variant kept, put into the form", async () => {
    await press(summary(".what-if"));
    await tabTo(page.getByRole("slider", { name: "Volume of base wine, slider" }));
    for (let times = 0; times < 4; times += 1) await page.keyboard.press("ArrowRight");
    await press(button("Keep this variant"));
    await page.getByText("Kept as variant A: 62 hL of base wine instead of 60 hL.").waitFor();
    await press(button("Put variant A into the form"));
    expect((await seen()).what).toBe("BUTTON Put variant A into the form");
    expect(await box("baseWine.volume_hL").inputValue()).toBe("62");
    await press(button("Remove variant A"));
    expect((await seen()).what).toBe("BUTTON Keep this variant");
    await press(button("Bring the form back"));
    expect((await seen()).what).toBe("batch.name");
  });

  test("a sweetness of the bench is taken, and its box has the keyboard", async () => {
    await press(summary("#step-dosage"));
    await press(summary("details.bench"));
    await press(page.getByRole("button", { name: /^Use this sweetness: Trial at/u }).first());
    expect((await seen()).what).toMatch(/^bench-trial-\d+$/u);
  });

  test("an invented plan is thrown away, and the keyboard goes on from what is said", async () => {
    await press(button("Write the plan"));
    await press(button("Throw the example away"));
    // an Enter too many is to change nothing
    expect((await seen()).what).toBe("BUTTON Keep them");
    await page.keyboard.press("Shift+Tab");
    await press(button("Yes, delete them"));
    await status("The example is gone");
    expect((await seen()).what).toContain("The example is gone");
  });
});

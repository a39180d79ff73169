/**
 * The pages for who hears them, who sees them in other colours, and who cannot bear motion.
 */
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { browserDescribe, launchChromium, serveDist, withoutOffice } from "../support/chromium";

const CONTROLS = /^(?:button|link|textbox|searchbox|combobox|slider|checkbox|Date|DisclosureTriangle)$/u;
const GROUPS = /^(?:group|region|form|listitem|row|figure|navigation|main|banner)$/u;

browserDescribe("for every sense", () => {
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

  /** With all open that can be opened, and two variants kept. */
  async function opened(file: string, options: BrowserContextOptions = {}): Promise<void> {
    const viewport = { width: 320, height: 16_000 };
    page = await (await browser.newContext({ viewport, ...options })).newPage();
    await withoutOffice(page);
    await page.goto(`${server.address}/${file}`);
    await page.locator("h1").waitFor();
    if (!file.startsWith("help")) await openAll();
  }
  async function openAll(): Promise<void> {
    const details = () =>
      page.evaluate(() =>
        document
          .querySelectorAll<HTMLDetailsElement>("#pane details:not([hidden])")
          .forEach((each) => (each.open = true)),
      );
    await details();
    await page.locator(".picture figure").nth(3).waitFor();
    await page.locator(".bench .trial").first().waitFor();
    await page.locator(".functions .family").first().waitFor();
    await details();
    const keep = page.locator(".variants .actions").nth(1).locator("button").first();
    await keep.click();
    await page.locator("#variant-volume_hL").fill("70");
    await keep.click();
  }

  /** Controls without a name, and those that are called as another of the same group. */
  async function alike(): Promise<string[]> {
    const session = await page.context().newCDPSession(page);
    const { nodes } = await session.send("Accessibility.getFullAXTree");
    const byId = new Map(nodes.map((node) => [node.nodeId, node]));
    const textOf = (value: { value?: unknown } | undefined) =>
      typeof value?.value === "string" ? value.value : "";
    const groupOf = (parentId: string | undefined): string => {
      const parent = parentId === undefined ? undefined : byId.get(parentId);
      if (parent === undefined) return "";
      const [role, name] = [textOf(parent.role), textOf(parent.name)];
      // a group without a name tells nothing apart; a date's own parts are named by the browser
      const isGroup = (GROUPS.test(role) && name !== "") || role === "Date";
      return isGroup && !parent.ignored ? `${name} ${parent.nodeId}` : groupOf(parent.parentId);
    };
    const found = nodes
      .filter(({ ignored, role }) => !ignored && CONTROLS.test(textOf(role)))
      .map(({ name, role, parentId }) => `${textOf(name)}: ${textOf(role)} in ${groupOf(parentId)}`);
    expect(found.length).toBeGreaterThan(200);
    return found.filter((each, index, all) => each.startsWith(":") || all.indexOf(each) !== index);
  }

  test.each(["en", "fr"])("in %s each control has a name, and no two of a group the same", async (locale) => {
    await opened("taskpane.html", { locale });
    expect(await alike()).toEqual([]);
  });

  /**
   * Texts that do not stand out from what they lie on, and controls without an edge (but for those that are told by
   * their words), as the pixels have them: which colours are forced upon a page its styles do not tell.
   */
  async function faint(): Promise<string[]> {
    const places = await page.evaluate(() => {
      const shown = [...document.querySelectorAll("#pane *")].filter(
        (each) => each.checkVisibility() && !each.closest(".visually-hidden, option, :disabled, title, desc"),
      );
      const placeOf = (what: string, { left, top, width, height }: DOMRect) =>
        [what, Math.floor(left), Math.floor(top), Math.ceil(width) + 1, Math.ceil(height) + 1] as const;
      const texts = shown.flatMap((each) =>
        [...each.childNodes].flatMap((node) => {
          if (!(node instanceof Text) || node.data.trim() === "") return [];
          const range = document.createRange();
          range.selectNode(node);
          return [placeOf(`${node.data}: text`, range.getBoundingClientRect())];
        }),
      );
      const edges = shown
        .filter((each) =>
          each.matches("button:not(.entry-button), input:not([type=range]), select:not(.unit, .language)"),
        )
        .map((each) => placeOf(`${each.outerHTML}: edge`, each.getBoundingClientRect()))
        // the left edge, half way down
        .map(([what, left, top, , height]) => [what, left - 2, top + height / 2, 6, 1] as const);
      return [...texts, ...edges];
    });
    expect(places.length).toBeGreaterThan(400);
    const shot = (await page.screenshot()).toString("base64");
    const reader = await page.context().newPage();
    const found = await reader.evaluate(
      async ([png, all]) => {
        const image = new Image();
        image.src = `data:image/png;base64,${png}`;
        await image.decode();
        const canvas = Object.assign(document.createElement("canvas"), {
          width: image.width,
          height: image.height,
        });
        const drawn = canvas.getContext("2d", { willReadFrequently: true })!;
        drawn.drawImage(image, 0, 0);
        const share = (part: number) =>
          part / 255 <= 0.04045 ? part / 255 / 12.92 : ((part / 255 + 0.055) / 1.055) ** 2.4;
        return all.flatMap(([what, left, top, width, height]) => {
          const { data } = drawn.getImageData(left, top, width, height);
          const lights = Array.from(
            { length: data.length / 4 },
            (_, at) =>
              0.2126 * share(data[at * 4]!) +
              0.7152 * share(data[at * 4 + 1]!) +
              0.0722 * share(data[at * 4 + 2]!),
          );
          const contrast = (Math.max(...lights) + 0.05) / (Math.min(...lights) + 0.05);
          const least = what.endsWith(": edge") ? 3 : 4.5;
          return contrast < least ? [`${what.slice(0, 120)} ${contrast.toFixed(2)}`] : [];
        });
      },
      [shot, places] as const,
    );
    await reader.close();
    return found;
  }

  test.each<[string, BrowserContextOptions]>([
    ["our own colours", {}],
    ["the reader's own light colours", { forcedColors: "active", colorScheme: "light" }],
    ["the reader's own dark colours", { forcedColors: "active", colorScheme: "dark" }],
  ])("in %s all stands out, where the keyboard is too", async (_, options) => {
    await opened("taskpane.html", options);
    expect(await faint()).toEqual([]);
    await page.locator('[id="baseWine.alcohol_vol"]').fill("85");
    expect(
      await page
        .locator('[id="baseWine.alcohol_vol"]')
        .evaluate((each) => getComputedStyle(each).outlineStyle),
    ).toBe("solid");
    expect(await faint()).toEqual([]);
  });

  test.each(["taskpane.html", "workbench.html", "help/tirage.pressure.html"])(
    "nothing of %s moves by itself",
    async (file) => {
      await opened(file, { reducedMotion: "reduce" });
      const moving = await page.evaluate(() =>
        [...document.querySelectorAll("body, body *")]
          .filter((each) => !each.closest("#grid > *, .univer-popup, [id^=univer]"))
          .filter((each) => {
            const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(each);
            return animationName !== "none" || transitionDuration !== "0s" || scrollBehavior !== "auto";
          })
          .map((each) => each.outerHTML.slice(0, 100)),
      );
      expect(moving).toEqual([]);
    },
  );

  test.each([
    ["no-preference", true],
    ["reduce", false],
  ] as const)("a bar of unknown length, where motion is %s, is shown: %s", async (reducedMotion, isShown) => {
    await opened("help/index.html", { reducedMotion });
    await page.addInitScript(() => {
      const never = new Promise(() => undefined);
      const none = () => Promise.resolve([]);
      const host = {
        name: "it",
        sheetNames: none,
        sheetsNaming: none,
        recall: () => never,
        write: () => never,
      };
      Object.assign(window, { mousseHost: Promise.resolve(host) });
    });
    await page.goto(`${server.address}/taskpane.html`);
    await page.locator("button.write:enabled").click();
    await page.locator(".status button").waitFor();
    expect(await page.locator(".status:not(.replaced)").textContent()).toContain("Writing …");
    expect(await page.locator(".status progress").isVisible()).toBe(isShown);
  });
});

/**
 * The guide tells of the program as it is built: every step works, every name in it is on the page at that step, and
 * the page that is kept is the one that the script writes. Pictures are compared by size, as fonts differ between
 * machines.
 */
import { existsSync, readFileSync, readdirSync, statSync } from "node:fs";
import path from "node:path";
import type { Browser } from "playwright-core";
import { chapters } from "../../src/guide/chapters";
import { marked, marksOf } from "../../src/guide/marks";
import { guidePage } from "../../src/guide/page";
import { sizeOf } from "../../src/guide/png";
import { walk } from "../../src/guide/walk";
import { browserDescribe, launchChromium, serveDist } from "../support/chromium";

const ROOT = path.resolve(__dirname, "../..");
const GUIDE = path.join(ROOT, "src/guide");
const picture = (name: string) => readFileSync(path.join(GUIDE, "pictures", `${name}.png`));
const pictures = chapters.flatMap(({ steps }) => steps.flatMap((step) => step.picture ?? []));

const REFRESH = "run npm run build, then npm run guide";
/** How far a picture's sides may be from those of a new one. */
const FONTS_DIFFER = 0.25;
const MOST_BYTES = 1_200_000;

describe("the guide as it is kept", () => {
  test(`is what the script writes; if not, ${REFRESH}`, () => {
    const kept = readFileSync(path.join(GUIDE, "index.html"), "utf8");
    expect(kept).toBe(guidePage(chapters, (name) => sizeOf(picture(name))));
  });

  test("has every picture once, with words for who does not see it, and is light", () => {
    const files = readdirSync(path.join(GUIDE, "pictures")).sort();
    expect(files).toEqual(pictures.map(({ name }) => `${name}.png`).sort());
    for (const { alt } of pictures) expect(alt.length).toBeGreaterThan(30);
    const bytes = files.map((file) => statSync(path.join(GUIDE, "pictures", file)).size);
    expect(bytes.reduce((sum, each) => sum + each)).toBeLessThan(MOST_BYTES);
  });

  test("each comparison with a published figure names a test that holds it", () => {
    const comparisons = chapters.flatMap((chapter) => chapter.comparisons ?? []);
    expect(comparisons.length).toBeGreaterThan(5);
    for (const { test: held } of comparisons) {
      const [file, title] = held;
      const source = readFileSync(path.join(ROOT, "tests/published", `${file}.test.ts`), "utf8");
      expect(source.replaceAll("%%", "%")).toContain(title);
    }
  });

  test("marks become bold names, typed text and links, and nothing else becomes markup", () => {
    const text = "Press **A & B**, type `=C(1)`, see [help](../x.html) <i>";
    expect(marksOf(text)).toEqual({ names: ["A & B"], seen: ["=C(1)"], links: ["../x.html"] });
    expect(marked(text)).toBe(
      'Press <b>A &amp; B</b>, type <code>=C(1)</code>, see <a href="../x.html">help</a> &lt;i&gt;',
    );
  });
});

browserDescribe("the guide beside the program", () => {
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

  test.each(chapters.map((chapter) => [chapter.title, chapter] as const))("%s", async (_title, chapter) => {
    const walked = await walk(browser, server.address, chapter);
    expect(walked.faults).toEqual([]);
    for (const [name, png] of walked.pictures) {
      const [now, kept] = [sizeOf(png), sizeOf(picture(name))];
      for (const side of ["width", "height"] as const) {
        const apart = Math.abs(kept[side] / now[side] - 1);
        expect([name, side, apart < FONTS_DIFFER]).toEqual([name, side, true]);
      }
    }
  });

  test.each([320, 1024])(
    "its page at %d px: nothing sticks out, every picture and link is there",
    async (width) => {
      const page = await browser.newPage({ viewport: { width, height: 900 } });
      await page.goto(`${server.address}/guide/index.html`);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      const images = await page.locator("img").evaluateAll((all) =>
        Promise.all(
          all.map(async (each) => {
            const image = each as HTMLImageElement;
            image.loading = "eager";
            await image.decode();
            return image.naturalWidth;
          }),
        ),
      );
      expect(images).toHaveLength(pictures.length);
      expect(Math.min(...images)).toBeGreaterThan(0);
      const links = await page
        .locator("a")
        .evaluateAll((all) => all.map((each) => (each as HTMLAnchorElement).href));
      expect(links.length).toBeGreaterThan(chapters.length);
      for (const link of links) {
        const { pathname, hash } = new URL(link);
        expect([link, existsSync(path.join(ROOT, "dist", pathname))]).toEqual([link, true]);
        if (hash !== "") expect(await page.locator(hash).count()).toBe(1);
      }
      if (process.env.SHOTS)
        await page.screenshot({ path: `${process.env.SHOTS}/guide-${width}.png`, fullPage: true });
      await page.close();
    },
  );
});

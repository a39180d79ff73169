/**
 * The pane's drawings as a browser draws them: their texts measured, in every kind of pane.
 */
import { buildSync } from "esbuild";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { browserDescribe, launchChromium } from "../support/chromium";
import { sampleFiles, sampleJson } from "../support/samples";

const ROOT = path.resolve(__dirname, "../..");
const LEAST_TEXT_PX = 11;

/** The drawings with what makes a plan, as one script and one style sheet. */
function bundled(): { readonly script: string; readonly style: string } {
  const contents = `
    import "./src/taskpane/taskpane.css";
    import { drawings } from "./src/taskpane/drawings";
    import { planned } from "./src/taskpane/planned";
    import { Units } from "./src/taskpane/units";
    window.draw = (given, unit) => {
      const { inputs, plan } = planned(given);
      const units = new Units({ getItem: (key) => unit[key] ?? null, setItem() {} });
      document.querySelector("#pane").replaceChildren(
        ...Object.values(drawings).map((drawing) => drawing(inputs, plan, units)),
      );
    };`;
  const { outputFiles } = buildSync({
    stdin: { contents, resolveDir: ROOT },
    bundle: true,
    write: false,
    outdir: "out",
  });
  const ending = (end: string) => outputFiles.find((file) => file.path.endsWith(end))!.text;
  return { script: ending(".js"), style: ending(".css") };
}

type Unit = Readonly<Record<string, string>>;
const US: Unit = { "mousse.unit.pressure": "psi", "mousse.unit.temperature": "°F" };

browserDescribe("drawings", () => {
  let browser: Browser;
  let page: Page;
  const errors: string[] = [];
  beforeAll(async () => {
    const { script, style } = bundled();
    browser = await launchChromium();
    page = await browser.newPage();
    page.on("pageerror", (error) => errors.push(error.message));
    page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
    await page.setContent(`<!doctype html><main id="pane"></main>`);
    await page.addStyleTag({ content: `${style} #pane { padding: 12px; height: auto }` });
    await page.addScriptTag({ content: script });
  });
  afterAll(() => browser.close());

  async function draw(file: string, width: number, unit: Unit = {}) {
    await page.setViewportSize({ width, height: 700 });
    await page.evaluate(
      ([given, chosen]) => (window as unknown as { draw(a: unknown, b: unknown): void }).draw(given, chosen),
      [sampleJson(file), unit] as const,
    );
  }

  /** Texts of each picture as they stand on the screen. */
  const measured = () =>
    page.evaluate(() =>
      [...document.querySelectorAll("svg.drawing-picture")].map((picture) => {
        const { left, top, right, bottom } = picture.getBoundingClientRect();
        const scale = (right - left) / 300;
        const texts = [...picture.querySelectorAll("text")].map((text) => {
          const box = text.getBoundingClientRect();
          return {
            text: text.textContent,
            size: Number.parseFloat(getComputedStyle(text).fontSize) * scale,
            inside:
              box.left >= left - 1 &&
              box.top >= top - 1 &&
              box.right <= right + 1 &&
              box.bottom <= bottom + 1,
            // letters, without the room that a font leaves above and below them
            box: [box.left + 0.5, box.top + 2, box.right - 0.5, box.bottom - 2] as const,
          };
        });
        const over = texts.flatMap((one, at) =>
          texts
            .slice(at + 1)
            .filter(
              ({ box }) =>
                one.box[0] < box[2] && box[0] < one.box[2] && one.box[1] < box[3] && box[1] < one.box[3],
            )
            .map((other) => `${one.text} / ${other.text}`),
        );
        return { texts, over };
      }),
    );

  describe.each(sampleFiles)("%s", (file) => {
    test.each([
      [320, {}],
      [320, US],
      [600, {}],
      // a pane of 320 pixels at a zoom of 200 %
      [160, {}],
    ] as const)("%s pixels wide: letters are large enough, inside and apart", async (width, unit) => {
      await draw(file, width, unit);
      const pictures = await measured();
      expect(pictures).toHaveLength(4);
      for (const { texts, over } of pictures) {
        expect(over).toEqual([]);
        expect(texts.filter(({ inside }) => !inside)).toEqual([]);
        expect(Math.min(...texts.map(({ size }) => size))).toBeGreaterThanOrEqual(LEAST_TEXT_PX);
      }
    });

    test("the pane itself is never wider than its window", async () => {
      for (const width of [160, 320]) {
        await draw(file, width);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      }
    });
  });

  test("each is a picture with a name, told in words", async () => {
    await draw(sampleFiles[0]!, 320);
    const pressure = page.getByRole("img", { name: "Excess pressure against temperature" });
    await pressure.waitFor();
    expect(await page.getByRole("img").count()).toBe(4);
    expect(await pressure.locator("desc").textContent()).toMatch(/Cellar, 12 °C: expected \d/);
  });

  test("in forced colours nothing has a colour of ours", async () => {
    await page.emulateMedia({ forcedColors: "active" });
    await draw(sampleFiles[0]!, 320);
    const colours = await page.evaluate(() => {
      const probe = document.createElement("span");
      document.body.append(probe);
      const known = ["Canvas", "CanvasText"].map((name) => {
        probe.style.cssText = `forced-color-adjust: none; color: ${name}`;
        return getComputedStyle(probe).color;
      });
      probe.remove();
      const shapes = [...document.querySelectorAll(".drawing svg *")].filter(
        (each) => each instanceof SVGGeometryElement || each instanceof SVGTextElement,
      );
      const used = shapes.flatMap((each) => {
        const { fill, stroke } = getComputedStyle(each);
        return each.getAttribute("class") === "drawing-grid" ? [fill] : [fill, stroke];
      });
      return [...new Set(used)].filter(
        (each) => each !== "none" && !each.startsWith("url") && !known.includes(each),
      );
    });
    await page.emulateMedia({ forcedColors: null });
    // "fill" of lines that have none of their own
    expect(colours).toEqual([]);
  });

  test("lines and areas differ in more than their hue", async () => {
    await draw(sampleFiles[0]!, 320);
    const dashes = await page.evaluate(() =>
      ["line", "edge", "rating"].map(
        (name) =>
          getComputedStyle(document.querySelector(`.drawing-picture .drawing-${name}`)!).strokeDasharray,
      ),
    );
    expect(new Set(dashes).size).toBe(3);
    const fills = await page.evaluate(() =>
      [...document.querySelectorAll(".drawing-cost .drawing-picture .drawing-area")].map((area) => {
        const { fill, fillOpacity } = getComputedStyle(area);
        return `${fill} ${fillOpacity}`;
      }),
    );
    fills.forEach((fill, index) => expect(fill).not.toBe(fills[index + 1]));
    // patterns are there to be found
    const lost = await page.evaluate(() =>
      [...document.querySelectorAll("[fill^=url]")].filter(
        (area) => !document.querySelector(/url\((#.*)\)/.exec(area.getAttribute("fill")!)![1]!),
      ),
    );
    expect(lost).toEqual([]);
  });

  test("no error was raised on the page", () => expect(errors).toEqual([]));
});

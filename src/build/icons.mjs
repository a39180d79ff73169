/**
 * npm run icons: draws the PNGs of src/assets from the SVGs beside them, in the sizes that Excel asks for. Needs
 * Chromium; CHROMIUM may name its path.
 */
import { existsSync, readFileSync, readdirSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const SIZES = [16, 32, 80];
const assets = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../assets");

const places = [process.env.CHROMIUM, "/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];
const browser = await chromium.launch({
  executablePath: places.find((place) => place !== undefined && existsSync(place)) ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
const page = await browser.newPage();
for (const file of readdirSync(assets).filter((name) => name.endsWith(".svg"))) {
  const drawing = readFileSync(path.join(assets, file)).toString("base64");
  for (const size of SIZES) {
    await page.setViewportSize({ width: size, height: size });
    await page.setContent(
      `<style>body { margin: 0 } img { display: block }</style><img width="${size}" height="${size}" src="data:image/svg+xml;base64,${drawing}">`,
    );
    await page.screenshot({
      path: path.join(assets, `${path.basename(file, ".svg")}-${size}.png`),
      omitBackground: true,
    });
  }
}
await browser.close();

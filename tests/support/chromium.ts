/**
 * Chromium for the browser tests, wherever this machine has it; where it can be had without the program around the
 * page, that, as its pages open in half the time.
 */
import { existsSync } from "node:fs";
import { createServer, type Server } from "node:http";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";

const PLACES = [
  process.env.CHROMIUM,
  "/usr/bin/chromium-headless-shell",
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe",
];

export const chromiumPath = PLACES.find((place) => place !== undefined && existsSync(place));

const HOW =
  "No Chromium found: install it (Debian: apt-get install chromium-headless-shell) or set CHROMIUM to its path.";

/** Skips with one line on a machine without Chromium; in CI a missing browser is a failure. */
export function browserDescribe(name: string, tests: () => void): void {
  if (chromiumPath !== undefined || process.env.CI) {
    describe(name, tests);
    return;
  }
  console.warn(HOW);
  describe.skip(name, tests);
}

/** What a busy machine is given before a step on a page counts as failed. */
const PATIENCE_MS = 90_000;

export async function launchChromium(): Promise<Browser> {
  if (chromiumPath === undefined) throw new Error(HOW);
  const quiet = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ];
  const args = ["--no-sandbox", ...quiet];
  const browser = await chromium.launch({ executablePath: chromiumPath, headless: true, args });
  browser.on("context", (context) => context.setDefaultTimeout(PATIENCE_MS));
  return browser;
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".png": "image/png",
};

const DIST = path.resolve(__dirname, "../../dist");

/** The built pages, served on this machine only. */
export async function serveDist(): Promise<{ address: string; close(): Promise<void> }> {
  if (!existsSync(path.join(DIST, "workbench.html")))
    throw new Error("There is no build; run npm run build first.");
  const server: Server = createServer((request, response) => {
    const file = path.join(DIST, path.normalize(new URL(request.url ?? "/", "http://localhost").pathname));
    readFile(file).then(
      (content) =>
        response
          .setHeader("content-type", TYPES[path.extname(file)] ?? "application/octet-stream")
          .end(content),
      () => response.writeHead(404).end(),
    );
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const bound = server.address();
  const port = typeof bound === "object" && bound ? bound.port : 0;
  return {
    address: `http://127.0.0.1:${port}`,
    close: () => new Promise((done) => server.close(() => done())),
  };
}

/** A machine that does not reach the server of Office.js. */
export const withoutOffice = (page: Page) =>
  page.route("https://appsforoffice.microsoft.com/**", (route) => route.abort());

/** Opens the workbench and waits until a plan can be written. */
export async function openWorkbench(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/workbench.html`);
  await page.locator("button.write:enabled").waitFor();
}

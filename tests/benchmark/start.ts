/**
 * How long the pane's page takes from the start of its loading until the functions are there and the form is filled.
 */
import { createServer } from "node:http";
import path from "node:path";
import type { Browser, Page } from "playwright-core";
import { chromiumPath, launchChromium, serveDist } from "../support/chromium";
import { median } from "./clock";
import type { Report } from "./report";

const LOADS = 9;
const SLOWER = 4;
const PATIENCE_MS = 30_000;

interface Started {
  readonly registered: number;
  readonly usable: number;
}

/** Runs in the page before its own scripts; the times count from the start of the navigation. */
function watch(): void {
  let registered = 0;
  const page = globalThis as { CustomFunctions?: unknown };
  const associated = new Map<string, unknown>();
  page.CustomFunctions = {
    associated,
    associate(id: string, calculate: unknown) {
      associated.set(id, calculate);
      registered = performance.now();
    },
  };
  const look = () => {
    const filled = [...document.querySelectorAll<HTMLInputElement>("#pane input")].some(
      ({ value }) => value !== "",
    );
    if (!filled || document.querySelectorAll("#pane .figures tr").length < 5) return;
    seen.disconnect();
    // once they have been drawn
    requestAnimationFrame(() =>
      setTimeout(() => {
        const { dataset } = document.documentElement;
        dataset.registered = String(registered);
        dataset.drawn = String(performance.now());
      }),
    );
  };
  const seen = new MutationObserver(look);
  seen.observe(document, { childList: true, subtree: true });
}

/** A time that the page has written down on its root. */
async function noted(page: Page, what: string): Promise<number> {
  const root = page.locator(`html[data-${what}]`);
  await root.waitFor({ state: "attached", timeout: PATIENCE_MS });
  return Number(await root.getAttribute(`data-${what}`));
}

/** One load with nothing kept from an earlier one. */
async function load(browser: Browser, address: string, slower: number): Promise<Started> {
  const context = await browser.newContext({ viewport: { width: 350, height: 900 }, locale: "en-GB" });
  try {
    const page = await context.newPage();
    const devtools = await context.newCDPSession(page);
    await devtools.send("Network.enable");
    await devtools.send("Network.setBlockedURLs", { urls: ["*appsforoffice.microsoft.com*"] });
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: slower });
    await page.addInitScript(`var __name = (it) => it; (${watch.toString()})();`);
    await page.goto(address, { waitUntil: "commit" });
    return { usable: await noted(page, "drawn"), registered: await noted(page, "registered") };
  } finally {
    await context.close();
  }
}

/** The least there could be: a page with a few words and a script that does nothing. */
async function bareLoad(browser: Browser, address: string, slower: number): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 350, height: 900 } });
  try {
    const page = await context.newPage();
    const devtools = await context.newCDPSession(page);
    await devtools.send("Emulation.setCPUThrottlingRate", { rate: slower });
    await page.goto(address, { waitUntil: "commit" });
    return await noted(page, "drawn");
  } finally {
    await context.close();
  }
}

async function serveBare(): Promise<{ readonly address: string; close(): void }> {
  const html = `<!doctype html><p>Mousse</p><script src="bare.js"></script>`;
  const script =
    "requestAnimationFrame(() => setTimeout(() => (document.documentElement.dataset.drawn = performance.now())))";
  const server = createServer(({ url }, response) => {
    const isScript = url === "/bare.js";
    response
      .setHeader("content-type", isScript ? "text/javascript" : "text/html")
      .end(isScript ? script : html);
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const bound = server.address();
  return {
    address: `http://127.0.0.1:${typeof bound === "object" && bound ? bound.port : 0}/`,
    close: () => server.close(),
  };
}

export async function start(): Promise<Report> {
  const [server, bareServer, browser] = [await serveDist(), await serveBare(), await launchChromium()];
  try {
    const rows = [];
    for (const slower of [1, SLOWER]) {
      const [loads, bare]: [Started[], number[]] = [[], []];
      for (let round = -1; round < LOADS; round++) {
        const one = await load(browser, `${server.address}/taskpane.html`, slower);
        const none = await bareLoad(browser, bareServer.address, slower);
        // the first load is also the browser's own start
        if (round < 0) continue;
        loads.push(one);
        bare.push(none);
      }
      rows.push({
        speed: slower === 1 ? "as it is" : `processor ${slower} times slower`,
        registered: median(loads.map(({ registered }) => registered)),
        usable: median(loads.map(({ usable }) => usable)),
        slowest: Math.max(...loads.map(({ usable }) => usable)),
        bare: median(bare),
      });
    }
    return {
      title: "Start of the pane",
      notes: [
        `taskpane.html in ${path.basename(chromiumPath ?? "")} ${browser.version()} from a server on this machine, each time in a fresh profile, Office.js out of reach; milliseconds from the start of the navigation, medians of ${LOADS} loads. Registered: the last function is associated. Usable: the form is filled and the figures are drawn. The empty page has a line of text and a script of one line.`,
      ],
      tables: [
        {
          caption: "ms",
          columns: ["", "registered", "usable", "usable, slowest", "empty page drawn"],
          rows: rows.map(({ speed, registered, usable, slowest, bare }) => [
            speed,
            registered,
            usable,
            slowest,
            bare,
          ]),
        },
      ],
      judged: rows.map(({ speed, usable, bare }) => ({
        what: `Pane usable, ${speed}`,
        value: usable,
        unit: "ms",
        least: { value: bare, what: "an empty page" },
      })),
    };
  } finally {
    await browser.close();
    await server.close();
    bareServer.close();
  }
}

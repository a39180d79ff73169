/**
 * What Excel loads besides Office.js: the functions, the pane's page at its start, and what follows a second later.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { launchChromium, serveDist, withoutOffice } from "../support/chromium";
import type { Report, Table } from "./report";

const DIST = path.resolve(__dirname, "../../dist");
const FUNCTIONS_KB = 15;
const PAGE_KB = 60;
const QUIET_MS = 700;
const KB = 1000;

interface Weight {
  readonly name: string;
  readonly raw: number;
  readonly gzip: number;
}

function weigh(name: string): Weight {
  const content = readFileSync(path.join(DIST, name));
  return { name, raw: content.length, gzip: gzipSync(content, { level: 9 }).length };
}

const total = (weights: readonly Weight[], of: "raw" | "gzip") =>
  weights.reduce((sum, each) => sum + each[of], 0) / KB;

interface Page {
  release(): void;
}

/** In the page, before its own scripts: what it wants done half a second later or more waits until it is released. */
function holdBack(): void {
  const held: (() => void)[] = [];
  const { setTimeout: soon } = globalThis;
  Object.assign(globalThis, {
    setTimeout: (work: () => void, ms = 0) => (ms < 500 ? soon(work, ms) : held.push(work)),
    release: () => held.splice(0).forEach((work) => work()),
  });
}

/** The files asked for at the start, and those asked for a second later. */
async function requested(): Promise<{ readonly start: string[]; readonly later: string[] }> {
  const server = await serveDist();
  const browser = await launchChromium();
  try {
    const page = await browser.newPage({ viewport: { width: 350, height: 900 } });
    await withoutOffice(page);
    const names: string[] = [];
    page.on("response", (response) => {
      if (response.url().startsWith(server.address) && response.ok())
        names.push(new URL(response.url()).pathname.slice(1));
    });
    await page.addInitScript(`var __name = (it) => it; (${holdBack.toString()})();`);
    await page.goto(`${server.address}/taskpane.html`, { waitUntil: "load" });
    await page.locator("#pane .figures tr").first().waitFor();
    await quiet();
    const start = [...new Set(names)];
    await page.evaluate(() => (globalThis as unknown as Page).release());
    await quiet();
    return { start, later: [...new Set(names)].filter((name) => !start.includes(name)) };
  } finally {
    await browser.close();
    await server.close();
  }
}

const quiet = () => new Promise((resolve) => setTimeout(resolve, QUIET_MS));

function table(caption: string, weights: readonly Weight[]): Table {
  return {
    caption,
    columns: ["file", "kB", "kB gzip"],
    rows: [
      ...weights.map(({ name, raw, gzip }) => [name, raw / KB, gzip / KB]),
      ["together", total(weights, "raw"), total(weights, "gzip")],
    ],
  };
}

export async function page(): Promise<Report> {
  const { start, later } = await requested();
  const isPicture = (name: string) => name.startsWith("assets/");
  const atStart = start.filter((name) => !isPicture(name)).map(weigh);
  const inBackground = later.map(weigh);
  const functions = ["functions.js", "functions.json"].map(weigh);
  return {
    title: "Weight of the page",
    notes: [
      "From dist, without Office.js, which Microsoft's server sends: each file raw and by gzip at level 9; 1 kB = 1000 bytes. The page was opened in Chromium with its longer timers held back; what it asked for nevertheless is its start. Excel reads functions.json itself, once for a user; the page reads it for its list of functions.",
    ],
    tables: [
      table("Functions alone", functions),
      table("The pane's page at its start", atStart),
      table("A second later, in the background", inBackground),
    ],
    judged: [
      {
        what: "Script of the functions",
        value: functions[0]!.gzip / KB,
        unit: "kB gzip",
        atMost: FUNCTIONS_KB,
      },
      {
        what: "Functions with their metadata",
        value: total(functions, "gzip"),
        unit: "kB gzip",
        atMost: FUNCTIONS_KB,
        why: "the metadata are the help that Excel shows for each argument, its unit and range; Excel keeps them",
      },
      {
        what: "Page at its start",
        value: total(atStart, "gzip"),
        unit: "kB gzip",
        atMost: PAGE_KB,
        why: "with what writes to Excel and the drawings, asked for while Office.js is on its way; the form does not wait for them",
      },
      {
        what: "Of it what the form waits for (page, style, functions, pane)",
        value: total(
          atStart.filter(({ name }) => /^(taskpane|functions)\./.test(name)),
          "gzip",
        ),
        unit: "kB gzip",
        atMost: PAGE_KB,
      },
    ],
  };
}

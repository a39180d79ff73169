/**
 * A page with one of the sections alone, bundled from its sources: the pane that will mount it is not needed.
 */
import path from "node:path";
import { build } from "esbuild";
import type { Browser, Page } from "playwright-core";
import type { BatchInputs } from "../../../src/cellar/batch/fields";

const ROOT = path.resolve(__dirname, "../../..");

export interface SectionWindow {
  section: { element: HTMLElement; follow(inputs: BatchInputs | null): void };
  /** What was taken, in order. */
  taken: unknown[][];
  choose(quantity: string, name: string): void;
}

const entry = (folder: string, section: string) => `
  import "./src/taskpane/taskpane.css";
  import { ${section} } from "./src/taskpane/${folder}";
  import { Units } from "./src/taskpane/units";
  const kept = new Map();
  const units = new Units({ getItem: (key) => kept.get(key) ?? null, setItem: (key, value) => kept.set(key, value) });
  window.taken = [];
  window.choose = (quantity, name) => units.choose(quantity, name);
  window.section = ${section}(units, (...given) => window.taken.push(given));
  document.getElementById("scroll").append(window.section.element);
`;

export interface Bundle {
  readonly js: string;
  readonly css: string;
  /** The sources that it is made of. */
  readonly sources: readonly string[];
}

/** Script and style of a section. */
export async function bundled(folder: string, section: string): Promise<Bundle> {
  const { outputFiles, metafile } = await build({
    stdin: { contents: entry(folder, section), resolveDir: ROOT, loader: "ts" },
    bundle: true,
    write: false,
    metafile: true,
    absWorkingDir: ROOT,
    outdir: ROOT,
    format: "iife",
    logLevel: "silent",
  });
  const of = (extension: string) => outputFiles.find((file) => file.path.endsWith(extension))!.text;
  return { js: of(".js"), css: of(".css"), sources: Object.keys(metafile.inputs) };
}

export async function opened(
  browser: Browser,
  { js, css }: Bundle,
  width: number,
  locale = "en-GB",
): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, locale });
  // the box scrolls as the pane's own middle does
  await page.setContent(
    '<!doctype html><html lang="en"><title>Section</title><body><div id="pane"><div id="scroll"></div></div></body></html>',
  );
  await page.addStyleTag({ content: `${css} #scroll { flex: 1; overflow: hidden auto; padding: 0 12px; }` });
  await page.addScriptTag({ content: js });
  return page;
}

/** Gives the section a form; waits for the frame in which it is shown. */
export const follow = (page: Page, inputs: BatchInputs | null) =>
  page.evaluate(async (given) => {
    (window as unknown as SectionWindow).section.follow(given);
    await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
  }, inputs);

export const frame = (page: Page) =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

export const taken = (page: Page) => page.evaluate(() => (window as unknown as SectionWindow).taken);

/** px by which anything sticks out of the page at its sides. */
export const overhang = (page: Page) =>
  page.evaluate(() => {
    const box = document.getElementById("scroll")!;
    return box.scrollWidth - box.clientWidth;
  });

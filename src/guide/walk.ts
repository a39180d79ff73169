/**
 * Does what the chapters say, in the running workbench: takes the pictures, and finds what the texts name that is not
 * there.
 */
import type { Browser } from "playwright-core";
import { Bench, VIEWPORT, type Seen } from "./bench";
import type { Chapter, Step } from "./chapter";
import { marksOf } from "./marks";

export interface Walked {
  /** PNG files by the names of their pictures. */
  readonly pictures: ReadonlyMap<string, Buffer>;
  readonly faults: readonly string[];
}

/** A chapter begins in a workbench just opened. */
export async function walk(browser: Browser, address: string, chapter: Chapter): Promise<Walked> {
  const context = await browser.newContext({
    viewport: VIEWPORT,
    deviceScaleFactor: 1,
    locale: "en-US",
    timezoneId: "UTC",
    acceptDownloads: true,
  });
  const pictures = new Map<string, Buffer>();
  const faults: string[] = [];
  try {
    const bench = await Bench.open(context, address);
    for (const [index, step] of chapter.steps.entries()) {
      try {
        const text = index === 0 ? `${chapter.about} ${step.text}` : step.text;
        await take(bench, { ...step, text }, pictures, faults);
      } catch (error) {
        const what = error instanceof Error ? error.message : String(error);
        throw new Error(`${chapter.title}, step ${index + 1}: ${what}`, { cause: error });
      }
    }
  } finally {
    await context.close();
  }
  return { pictures, faults: faults.map((fault) => `${chapter.title}: ${fault}`) };
}

async function take(
  bench: Bench,
  { text, does, picture }: Step,
  pictures: Map<string, Buffer>,
  faults: string[],
): Promise<void> {
  const before = await bench.seen();
  await does?.(bench);
  const after = does ? await bench.seen() : before;
  faults.push(...missing(text, [before, after]), ...wrongFigures(picture?.alt ?? "", after));
  if (!picture) return;
  const clip = await picture.of(bench);
  const png = await bench.view.screenshot({ clip, animations: "disabled", scale: "css" });
  pictures.set(picture.name, png);
  await bench.stretch(0);
}

function missing(text: string, pages: readonly Seen[]): string[] {
  const { names, seen } = marksOf(text);
  return [
    ...names.filter((name) => !pages.some((page) => page.names.has(name))).map((name) => `no “${name}”`),
    ...seen
      .filter((said) => !pages.some((page) => page.text.includes(said)))
      .map((said) => `nowhere is “${said}”`),
  ];
}

const FIGURE = /\d+(?:[.,]\d+)*/gu;

/** Figures that a picture is said to show and that the page does not. */
const wrongFigures = (alt: string, { text }: Seen) =>
  (alt.match(FIGURE) ?? [])
    .filter((figure) => !text.includes(figure))
    .map((figure) => `“${alt}” but no ${figure} on the page`);

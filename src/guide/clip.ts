/**
 * Which part of the page is pictured. What does not stand there in full is an error: no picture cuts through a line.
 */
import type { Locator } from "playwright-core";
import type { Bench } from "./bench";
import { gridRoom, rectOfCells, shownCells } from "./grid";

export interface Clip {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** White round what is pictured. */
const AROUND = 4;

function union(all: readonly Clip[]): Clip {
  const x = Math.min(...all.map((each) => each.x));
  const y = Math.min(...all.map((each) => each.y));
  return {
    x,
    y,
    width: Math.max(...all.map((each) => each.x + each.width)) - x,
    height: Math.max(...all.map((each) => each.y + each.height)) - y,
  };
}

/** On whole pixels. */
function whole({ x, y, width, height }: Clip): Clip {
  const [left, top] = [Math.floor(x), Math.floor(y)];
  return { x: left, y: top, width: Math.ceil(x + width) - left, height: Math.ceil(y + height) - top };
}

const isWithin = (inner: Clip, outer: Clip) =>
  inner.x >= outer.x - 1 &&
  inner.y >= outer.y - 1 &&
  inner.x + inner.width <= outer.x + outer.width + 1 &&
  inner.y + inner.height <= outer.y + outer.height + 1;

async function boxOf(locator: Locator): Promise<Clip> {
  const box = await locator.boundingBox();
  if (box === null) throw new Error(`nothing is there to picture: ${String(locator)}`);
  return box;
}

/** From the first to the last of these parts of the pane, as wide as the pane. */
export async function ofPane(bench: Bench, ...parts: readonly Locator[]): Promise<Clip> {
  await parts[0]!.evaluate((element: HTMLElement, margin) => {
    element.style.scrollMargin = `${margin}px`;
    element.scrollIntoView({ block: "start" });
  }, 2 * AROUND);
  await parts.at(-1)!.evaluate((element) => element.scrollIntoView({ block: "nearest" }));
  const pane = await boxOf(bench.pane);
  const boxes = await Promise.all(parts.map(boxOf));
  const { y, height } = union(boxes);
  const inFooter = await parts[0]!.evaluate((element) => element.closest("footer, header") !== null);
  const room = inFooter ? pane : await boxOf(bench.pane.locator(".sections"));
  const clip = { x: pane.x, y: y - AROUND, width: pane.width, height: height + 2 * AROUND };
  const seen = { x: pane.x, y, width: pane.width, height };
  if (!isWithin(seen, { ...room, x: pane.x, width: pane.width }))
    throw new Error(`the pane is not high enough to picture ${parts.map(String).join(" to ")}`);
  return whole(clip);
}

/** Parts of any page, one round all of them. */
export async function ofParts(bench: Bench, ...parts: readonly Locator[]): Promise<Clip> {
  const { x, y, width, height } = union(await Promise.all(parts.map(boxOf)));
  const clip = { x: x - AROUND, y: y - AROUND, width: width + 2 * AROUND, height: height + 2 * AROUND };
  const size = bench.view.viewportSize();
  const page = { x: 0, y: 0, width: size?.width ?? 0, height: size?.height ?? 0 };
  if (!isWithin({ x, y, width, height }, page))
    throw new Error("the page is not high enough for the picture");
  return whole({ ...clip, x: Math.max(0, clip.x), y: Math.max(0, clip.y) });
}

/** Rows of the sheet in view, from the one that begins with a text, in column A, to the one that begins with another. */
export async function ofRows(bench: Bench, from: string, to: string, lastColumn: string): Promise<Clip> {
  const cells = await shownCells(bench.page);
  const first = cells.findIndex(([text]) => text === from);
  const last = cells.findIndex(([text], row) => row >= first && text === to);
  if (first < 0 || last < 0) throw new Error(`the sheet in view has no rows from “${from}” to “${to}”`);
  return cellsFrom(bench, first, last, lastColumn);
}

/** So many rows from the one that begins with a text. */
export async function ofRowsFrom(bench: Bench, from: string, count: number, column: string): Promise<Clip> {
  const first = (await shownCells(bench.page)).findIndex(([text]) => text === from);
  if (first < 0) throw new Error(`the sheet in view has no row “${from}”`);
  return cellsFrom(bench, first, first + count - 1, column);
}

/** Below the cells there is still a sheet's tab. */
const BELOW = 120;
const [TICK_MS, PATIENCE_MS] = [100, 10_000];

async function cellsFrom(bench: Bench, first: number, last: number, column: string): Promise<Clip> {
  const clip = await rectOfCells(bench.page, first, last, column.charCodeAt(0) - "A".charCodeAt(0));
  await bench.stretch(clip.y + clip.height + BELOW);
  // the spreadsheet takes the page's new height when its own script gets to it
  for (let waited_ms = 0; !isWithin(clip, await gridRoom(bench.page)); waited_ms += TICK_MS) {
    if (waited_ms > PATIENCE_MS) throw new Error("the spreadsheet is not large enough for the picture");
    await bench.page.waitForTimeout(TICK_MS);
  }
  return whole(clip);
}

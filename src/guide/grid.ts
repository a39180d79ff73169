/**
 * What the guide asks of the workbench's spreadsheet, in the page itself.
 */
import type { Page } from "playwright-core";

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
interface Cells {
  getCellRect(): Rect;
  getFormulas(): string[][];
  getDisplayValues(): (string | null)[][];
}
interface Sheet {
  getSheetName(): string;
  getRange(address: string): Cells;
  getRange(row: number, column: number): Cells;
  getActiveRange(): { getA1Notation(): string } | null;
  getDataRange(): Cells;
  scrollToCell(row: number, column: number): unknown;
}
interface GridWindow {
  readonly grid: {
    getActiveWorkbook(): {
      getActiveSheet(): Sheet;
      getSheetByName(name: string): Sheet | null;
      getSheets(): Sheet[];
      setActiveSheet(sheet: Sheet | null): void;
      getDefinedNames(): { getName(): string; getFormulaOrRefString(): string }[];
    };
  };
}

export const sheetNames = (page: Page): Promise<string[]> =>
  page.evaluate(() =>
    (window as unknown as GridWindow).grid
      .getActiveWorkbook()
      .getSheets()
      .map((sheet) => sheet.getSheetName()),
  );

export const activate = (page: Page, name: string): Promise<void> =>
  page.evaluate((wanted) => {
    const book = (window as unknown as GridWindow).grid.getActiveWorkbook();
    book.setActiveSheet(book.getSheetByName(wanted));
  }, name);

/** Every cell of the sheet in view, as it is shown. */
export const shownCells = async (page: Page): Promise<string[][]> => {
  const rows = await page.evaluate(() =>
    (window as unknown as GridWindow).grid
      .getActiveWorkbook()
      .getActiveSheet()
      .getDataRange()
      .getDisplayValues(),
  );
  return rows.map((row) => row.map((value) => value ?? ""));
};

/** "B57", the place of a name on the sheet in view. */
export async function placeOf(page: Page, name: string): Promise<string> {
  const place = await page.evaluate((wanted) => {
    const book = (window as unknown as GridWindow).grid.getActiveWorkbook();
    const sheet = book.getActiveSheet().getSheetName();
    return book
      .getDefinedNames()
      .filter((each) => each.getName() === wanted)
      .map((each) => each.getFormulaOrRefString())
      .find((reference) => reference.startsWith(`'${sheet}'!`) || reference.startsWith(`${sheet}!`));
  }, name);
  if (place === undefined) throw new Error(`the sheet in view has no cell named ${name}`);
  return place.slice(place.lastIndexOf("!") + 1).replaceAll("$", "");
}

/** Whether a cell shows anything; to be called in the page. */
export const holds = (address: string): boolean => {
  const range = (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet().getRange(address);
  return (range.getDisplayValues()[0]?.[0] ?? "") !== "";
};

/** Whether this cell is selected and keys go to it; to be called in the page. */
const takesKeys = (address: string): boolean => {
  const range = (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet().getActiveRange();
  return range?.getA1Notation() === address && (document.activeElement as HTMLElement).isContentEditable;
};

/** How often a cell is gone to, and how long each time may take. */
const TRIES = 5;
const ARRIVED_MS = 3000;

/**
 * Goes to a cell as a person does: its address typed into the name box. A selection that comes late, as after an
 * entry in a sheet that calculates, takes the box's text away; a person would see it and type again.
 */
export async function goToCell(page: Page, address: string): Promise<void> {
  const nameBox = page.locator("#grid input").first();
  for (let tried = 1; ; tried += 1) {
    await nameBox.click();
    await nameBox.fill(address);
    await nameBox.press("Enter");
    try {
      await page.waitForFunction(takesKeys, address, { timeout: ARRIVED_MS });
      return;
    } catch (error) {
      if (tried === TRIES) throw error;
    }
  }
}

/** From key to key: the sheet's editor opens at the first one. */
const KEY_MS = 20;

/** Types into a cell, and waits until the cell is left. */
export async function typeIntoCell(page: Page, address: string, typed: string): Promise<void> {
  await goToCell(page, address);
  await page.keyboard.type(typed, { delay: KEY_MS });
  await page.keyboard.press("Enter");
  await page.waitForFunction(isLeft, address);
}

/** Whether another cell is selected; to be called in the page. */
const isLeft = (address: string): boolean =>
  (window as unknown as GridWindow).grid
    .getActiveWorkbook()
    .getActiveSheet()
    .getActiveRange()
    ?.getA1Notation() !== address;

/** Formulas of the sheet in view. */
export const formulas = async (page: Page): Promise<string[]> => {
  const rows = await page.evaluate(() =>
    (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet().getDataRange().getFormulas(),
  );
  return rows.flat().filter((formula) => formula !== "");
};

const canvasOf = (page: Page) => page.locator("#grid canvas[id^='univer-sheet-main-canvas']");

/**
 * Where cells are on the page, without the sheet's row numbers; rows and columns from 0. The sheet stands at its
 * beginning: how far it was scrolled is not known to the pixel.
 */
export async function rectOfCells(page: Page, first: number, last: number, column: number): Promise<Rect> {
  const { from, to } = await page.evaluate(
    ([top, bottom, right]) => {
      const sheet = (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet();
      sheet.scrollToCell(0, 0);
      return {
        from: sheet.getRange(top!, 0).getCellRect(),
        to: sheet.getRange(bottom!, right!).getCellRect(),
      };
    },
    [first, last, column],
  );
  const { x, y } = await gridRoom(page);
  return {
    x: x + from.x,
    y: y + from.y,
    width: to.x + to.width - from.x,
    height: to.y + to.height - from.y,
  };
}

/** The room in which cells are seen. */
export async function gridRoom(page: Page): Promise<Rect> {
  const canvas = await canvasOf(page).boundingBox();
  if (canvas === null) throw new Error("the page shows no spreadsheet");
  return canvas;
}

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

/** Whether keys go to the sheet, and no longer to a box such as the one for addresses; to be called in the page. */
export const leftBoxes = (): boolean => document.activeElement?.tagName !== "INPUT";

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

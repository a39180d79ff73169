/**
 * Charts in the workbench, in a real browser: over their cells, following them, gone and back with their sheet.
 */
import type { Browser, Page } from "playwright-core";
import type { SheetData, Validation, WorkbookData } from "../../src/workbook/data";
import { browserDescribe, launchChromium, openWorkbench, serveDist } from "../support/chromium";
import { eventually } from "../support/eventually";
import { chartSheet, column, lines, place } from "../support/charts";

interface GridCell {
  getCellRect(): { x: number; y: number; width: number; height: number };
  setValue(value: unknown): void;
}
interface GridSheet {
  getSheetName(): string;
  getRange(row: number, column: number): GridCell;
  setColumnWidth(column: number, width: number): void;
  zoom(ratio: number): void;
}
interface GridWindow {
  readonly grid: {
    getActiveWorkbook(): {
      getActiveSheet(): GridSheet;
      setActiveSheet(id: string): void;
    };
    undo(): Promise<boolean>;
    redo(): Promise<boolean>;
  };
  readonly mousseHost: Promise<{ write(book: WorkbookData): Promise<void> }>;
}

const list: Validation = {
  row: 22,
  column: 0,
  title: "Part",
  message: "One of the parts.",
  allowBlank: true,
  kind: "list",
  options: [],
  from: column(0, 9, 12),
};
const [pressure, cost, stages] = chartSheet.charts;
/** Near one another, so that all are in view. */
const sheet: SheetData = {
  ...chartSheet,
  cells: [...chartSheet.cells, { row: 22, column: 0, value: null, style: "input" }],
  charts: [
    { ...pressure!, place: place(0, 12, 5, 7) },
    { ...cost!, place: place(0, 12, 8, 9) },
    { ...stages!, place: place(13, 26, 5, 8) },
  ],
  validations: [list],
};

browserDescribe("charts in the workbench", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  const errors: string[] = [];

  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
    page = await browser.newPage({ viewport: { width: 1500, height: 900 } });
    page.on("pageerror", (error) => errors.push(error.message));
    page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
    await openWorkbench(page, server.address);
    await page.evaluate(async (data) => {
      const host = await (window as unknown as GridWindow).mousseHost;
      // a map does not come through to the page
      await host.write({ sheets: [{ ...data, rowHeights: new Map() }] });
    }, sheet);
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  const chart = (title: string) => page.getByRole("img", { name: new RegExp(`^${title}`) });
  const charts = () => page.locator("#grid svg[role=img]");
  const countIs = (count: number) =>
    page.waitForFunction(
      (wanted) => document.querySelectorAll("#grid svg[role=img]").length === wanted,
      count,
    );
  const cell = (row: number, at: number) =>
    page.evaluate(
      ([r, c]) => {
        const { x, y, width, height } = (window as unknown as GridWindow).grid
          .getActiveWorkbook()
          .getActiveSheet()
          .getRange(r!, c!)
          .getCellRect();
        // told from the corner of the grid's canvas
        const { left, top } = document
          .querySelector("canvas[id^='univer-sheet-main']")!
          .getBoundingClientRect();
        return { left: left + x, top: top + y, right: left + x + width, bottom: top + y + height };
      },
      [row, at],
    );

  /** How far a chart's edges are from those of its place, at most. */
  async function offPlace(title: string, { row, column: at, lastRow, lastColumn } = sheet.charts[0]!.place) {
    const box = (await chart(title).boundingBox())!;
    const [first, last] = [await cell(row, at), await cell(lastRow, lastColumn)];
    return Math.max(
      Math.abs(box.x - first.left),
      Math.abs(box.y - first.top),
      Math.abs(box.x + box.width - last.right),
      Math.abs(box.y + box.height - last.bottom),
    );
  }

  test("each is a picture with a name for those who cannot see it, over the cells of its place", async () => {
    await countIs(3);
    await chart(lines.title).waitFor();
    expect(await chart(lines.title).getAttribute("aria-label")).toContain(lines.description);
    expect(await offPlace(lines.title)).toBeLessThan(6);
    expect(await offPlace("Stages", sheet.charts[2]!.place)).toBeLessThan(6);
  });

  test("what is written in it is text", async () => {
    const texts = await chart(lines.title).locator("text").allTextContents();
    expect(texts).toEqual(expect.arrayContaining(["Half <dose>", "Temperature, °C", "10.0"]));
    expect(await page.locator("#grid dose").count()).toBe(0);
  });

  test("it follows its cells", async () => {
    const line = chart(lines.title).locator("polyline").first();
    const height = async () => Number((await line.getAttribute("points"))!.split(" ").at(-1)!.split(",")[1]);
    const before = await height();
    await page.evaluate(() =>
      (window as unknown as GridWindow).grid
        .getActiveWorkbook()
        .getActiveSheet()
        .getRange(5, 1)
        .setValue({ f: "=B5+5" }),
    );
    await page.waitForFunction(
      ([title, was]) => {
        const drawn = document.querySelector(`#grid svg[aria-label^="${String(title)}"] polyline`);
        const last = drawn?.getAttribute("points")?.split(" ").at(-1)?.split(",")[1];
        return last !== undefined && Number(last) !== was;
      },
      [lines.title, before] as const,
    );
    // 12 bar is the top of the axis, and B5 + 5 makes 12
    expect(await height()).toBeCloseTo(0, 1);
  });

  test("it moves and grows with its cells", async () => {
    await page.evaluate(() => {
      const active = (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet();
      active.setColumnWidth(0, 60);
      active.setColumnWidth(5, 150);
    });
    await eventually(async () => expect(await offPlace(lines.title)).toBeLessThan(6));
  });

  test("a list rule offers what its cells hold", async () => {
    const at = await cell(22, 0);
    await page.mouse.click(at.right - 10, (at.top + at.bottom) / 2);
    await page.getByText("Closure and wire", { exact: true }).first().click();
    await page.waitForFunction(
      () =>
        (
          window as unknown as {
            grid: {
              getActiveWorkbook(): { getActiveSheet(): { getRange(a: string): { getValue(): unknown } } };
            };
          }
        ).grid
          .getActiveWorkbook()
          .getActiveSheet()
          .getRange("A23")
          .getValue() === "Closure and wire",
    );
  });

  test("gone with another sheet in view, and back", async () => {
    const show = (id: string) =>
      page.evaluate(
        (to) => (window as unknown as GridWindow).grid.getActiveWorkbook().setActiveSheet(to),
        id,
      );
    await show("notes");
    await countIs(0);
    await show("sheet-1");
    await countIs(3);
  });

  test("gone when the sheet is undone, and back when it is done again", async () => {
    const name = () =>
      page.evaluate(() =>
        (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet().getSheetName(),
      );
    let undone = 0;
    while ((await name()) === sheet.name && undone < 12) {
      await page.evaluate(() => (window as unknown as GridWindow).grid.undo());
      await page.waitForTimeout(200);
      undone++;
    }
    expect(await name()).toBe("Scratch");
    await countIs(0);
    await page.evaluate(() => (window as unknown as GridWindow).grid.redo());
    await page.evaluate(() =>
      (window as unknown as GridWindow).grid.getActiveWorkbook().setActiveSheet("sheet-1"),
    );
    await countIs(3);
    expect(await charts().first().locator("polyline, rect").count()).toBeGreaterThan(1);
  });

  test("no error was raised on the page", () => {
    expect(errors).toEqual([]);
  });
});

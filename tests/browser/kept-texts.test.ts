/**
 * Texts that look like something else, entered again in the workbench: F2 and Enter leave them the texts that they are.
 */
import type { Browser, Page } from "playwright-core";
import { goToCell } from "../../src/guide/grid";
import type { CellChange, Host } from "../../src/hosts/host";
import { browserDescribe, launchChromium, openWorkbench, serveDist } from "../support/chromium";
import { eventually } from "../support/eventually";

interface GridWindow {
  readonly mousseHost: Promise<Host>;
  readonly grid: {
    getActiveWorkbook(): {
      isCellEditing(): boolean;
      getActiveSheet(): {
        getRange(address: string): { getFormula(): string; getRawValue(): unknown };
        getActiveRange(): { getA1Notation(): string } | null;
      };
    };
  };
}

browserDescribe("texts entered again", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await openWorkbench(page, server.address);
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  const contentOf = (address: string) =>
    page.evaluate((at) => {
      const cell = (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet().getRange(at);
      return [cell.getFormula(), cell.getRawValue()];
    }, address);
  const current = () =>
    page.evaluate(() =>
      (window as unknown as GridWindow).grid
        .getActiveWorkbook()
        .getActiveSheet()
        .getActiveRange()!
        .getA1Notation(),
    );
  async function enteredAgain(address: string, below: string): Promise<void> {
    await goToCell(page, address);
    await page.keyboard.press("F2");
    await page.waitForFunction(() =>
      (window as unknown as GridWindow).grid.getActiveWorkbook().isCellEditing(),
    );
    await page.keyboard.press("Enter");
    await eventually(async () => expect(await current()).toBe(below));
  }

  test.each([
    "=1+1",
    '=HYPERLINK("http://127.0.0.1/","x")',
    "+1+1",
    "-1",
    "@SUM(1,1)",
    "'=1+1",
    "''",
    "007",
    "1e5",
    "50%",
    "2026-01-02",
    "Mar 2026",
    "Mon 3 Mar",
    "TRUE",
    "Oxlip Hill 2025",
  ])("%j put into a cell", async (text) => {
    const change: CellChange = { sheet: "Scratch", row: 4, column: 1, value: text };
    await page.evaluate(
      async (each) => (await (window as unknown as GridWindow).mousseHost).change([each]),
      change,
    );
    expect(await contentOf("B5")).toEqual(["", text]);
    await enteredAgain("B5", "B6");
    expect(await contentOf("B5")).toEqual(["", text]);
  });

  test("a lot like a formula, written with its plan and read back", async () => {
    await page.locator('[id="batch.lot"]').fill("=1+1");
    await page.getByRole("button", { name: "Write the plan", exact: true }).click();
    await page.locator("#pane .status", { hasText: "Written to this workbook" }).waitFor();
    await enteredAgain("B16", "B17");
    expect(await contentOf("B16")).toEqual(["", "=1+1"]);
  });
});

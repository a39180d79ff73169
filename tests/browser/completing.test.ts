/**
 * Functions typed into a cell of the workbench by a quick hand: the list under the cell is older than what is typed.
 */
import type { Browser, Page } from "playwright-core";
import { goToCell } from "../../src/guide/grid";
import { browserDescribe, launchChromium, serveDist } from "../support/chromium";
import { eventually } from "../support/eventually";

jest.setTimeout(120_000);

interface GridWindow {
  readonly grid: {
    getActiveWorkbook(): {
      insertDefinedName(name: string, place: string): unknown;
      getActiveSheet(): { getRange(address: string): { getFormula(): string } };
    };
  };
}

browserDescribe("a formula typed while the list of functions is open", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  const errors: string[] = [];
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on("pageerror", (error) => errors.push(error.message));
    await page.goto(`${server.address}/workbench.html`);
    await page.locator("button.write:enabled").waitFor();
    await page.evaluate(() => {
      const book = (window as unknown as GridWindow).grid.getActiveWorkbook();
      book.insertDefinedName("wineSugar", "Scratch!$A$1");
      book.insertDefinedName("wineSugarLeft", "Scratch!$A$2");
    });
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
    expect(errors).toEqual([]);
  });

  const KEY_MS = 40;
  const list = () => page.locator("ul[data-u-comp='sheets-formula-editor']");
  const formulaOf = (address: string) =>
    page.evaluate(
      (at) =>
        (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet().getRange(at).getFormula(),
      address,
    );
  /** Types until the list is there, then all the rest without a pause. */
  async function typeOn(begun: string, listed: string, rest: readonly string[]): Promise<void> {
    await page.keyboard.type(begun, { delay: KEY_MS });
    await list().getByText(listed, { exact: true }).first().waitFor();
    for (const each of rest)
      if (each.startsWith("<")) await page.keyboard.press(each.slice(1, -1));
      else await page.keyboard.type(each, { delay: KEY_MS });
  }
  const becomes = (address: string, formula: string) =>
    page.waitForFunction(
      ([at, wanted]) =>
        (window as unknown as GridWindow).grid
          .getActiveWorkbook()
          .getActiveSheet()
          .getRange(at!)
          .getFormula() === wanted,
      [address, formula],
    );

  const typed: [string, string, string, string[], string][] = [
    [
      "typed in full",
      "=mousse.tirage.",
      "MOUSSE.TIRAGE.PRESSURE",
      ["sugar(50, 24)", "<Enter>"],
      "=MOUSSE.TIRAGE.SUGAR(50, 24)",
    ],
    [
      "begun further",
      "=mousse.tirage.",
      "MOUSSE.TIRAGE.PRESSURE",
      ["sug", "<Tab>", "50, 24)", "<Enter>"],
      "=MOUSSE.TIRAGE.SUGAR(50, 24)",
    ],
    ["of the engine's own", "=su", "SUBTOTAL", ["m(1,2)", "<Tab>"], "=SUM(1,2)"],
    [
      "inside a formula",
      "=1+mousse.tirage.",
      "MOUSSE.TIRAGE.PRESSURE",
      ["sug", "<Enter>", "50, 24)*2", "<Enter>"],
      "=1+MOUSSE.TIRAGE.SUGAR(50, 24)*2",
    ],
    [
      "not among those listed",
      "=mousse.",
      "MOUSSE.AGEING.EARLIEST",
      ["tirage.sug", "<Tab>", "50, 24)", "<Enter>"],
      "=MOUSSE.TIRAGE.SUGAR(50, 24)",
    ],
    ["picked with the arrow", "=su", "SUBTOTAL", ["<ArrowDown>", "<Tab>", "1,2)", "<Enter>"], "=SUM(1,2)"],
    ["that a cell has for a name", "=wineSug", "wineSugar", ["ar", "<Enter>"], "=wineSugar"],
    ["of a cell, begun only", "=wineSug", "wineSugarLeft", ["arL", "<Tab>", "<Enter>"], "=wineSugarLeft"],
  ];
  test.each(typed.map((each, index) => [...each, `D${index + 2}`] as const))(
    "is the one typed: a name %s",
    async (_, begun, listed, rest, formula, address) => {
      await goToCell(page, address);
      await typeOn(begun, listed, rest);
      await becomes(address, formula);
      expect(await list().count()).toBe(0);
    },
  );

  test("is completed in the bar above the sheet too", async () => {
    await goToCell(page, "F2");
    // the bar takes the keys a while after the cell was gone to
    await eventually(async () => {
      await page
        .locator("[data-u-comp='formula-bar'] canvas")
        .first()
        .click({ delay: 2 * KEY_MS });
      expect(await page.evaluate(() => document.activeElement?.id)).toContain("FORMULA_BAR");
    });
    await typeOn("=mousse.tirage.", "MOUSSE.TIRAGE.PRESSURE", ["sug", "<Tab>", "50, 24)", "<Enter>"]);
    await becomes("F2", "=MOUSSE.TIRAGE.SUGAR(50, 24)");
  });

  test("is given up with Esc", async () => {
    await goToCell(page, "F3");
    await typeOn("=mousse.tirage.", "MOUSSE.TIRAGE.PRESSURE", []);
    // a list that was still to come comes after the first one is closed
    await eventually(async () => {
      await page.keyboard.press("Escape");
      expect(await list().count()).toBe(0);
    });
    await page.keyboard.press("Escape");
    expect(await formulaOf("F3")).toBe("");
  });
});

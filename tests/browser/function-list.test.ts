/**
 * The functions' section in a browser, with a spreadsheet that only notes what is asked of it, with none, and in the
 * workbench.
 */
import type { Browser, Page } from "playwright-core";
import { goToCell } from "../../src/guide/grid";
import { AHEAD_MS } from "../../src/taskpane/ahead";
import {
  browserDescribe,
  launchChromium,
  openWorkbench,
  serveDist,
  withoutOffice,
} from "../support/chromium";
import { eventually } from "../support/eventually";
import { holdBackTimers } from "../support/timers";

interface Sheet {
  cell: { sheet: string; address: string; content: string };
  readonly typed: [string, string][];
  refusal: string;
}
interface PageWindow {
  sheet: Sheet;
  mousseHost: Promise<unknown>;
  grid: {
    getActiveWorkbook(): {
      getActiveSheet(): { getRange(address: string): { getRawValue(): unknown; getFormula(): string } };
    };
  };
}

/** A workbook with one cell selected. */
function noteSheet(): void {
  const page = window as unknown as PageWindow;
  page.sheet = { cell: { sheet: "Sheet1", address: "B7", content: "" }, typed: [], refusal: "" };
  page.mousseHost = Promise.resolve({
    name: "this workbook",
    sheetNames: () => Promise.resolve(["Sheet1", "Plan · Brut"]),
    sheetsNaming: () => Promise.resolve([]),
    recall: () => Promise.resolve(undefined),
    keep: () => Promise.resolve(),
    selectedCell: () => Promise.resolve({ ...page.sheet.cell }),
    typeFormula: (cell: Sheet["cell"], formula: string) => {
      if (page.sheet.refusal !== "") return Promise.reject(new Error(page.sheet.refusal));
      page.sheet.typed.push([`${cell.sheet}!${cell.address}`, formula]);
      return Promise.resolve();
    },
  });
}

browserDescribe("the functions in the pane", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  const errors: string[] = [];
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });
  afterEach(async () => {
    await page.close();
    expect(errors.splice(0)).toEqual([]);
  });

  /** What the pane loads ahead is not, where `ahead` is false: on a slow machine it could come at any time. */
  async function opened(withSheet: boolean, { ahead = true } = {}): Promise<void> {
    page = await browser.newPage({ viewport: { width: 320, height: 720 } });
    if (!ahead) await holdBackTimers(page, AHEAD_MS, AHEAD_MS);
    page.on("pageerror", (error) => errors.push(error.message));
    await withoutOffice(page);
    if (withSheet) await page.addInitScript(noteSheet);
    await page.goto(`${server.address}/taskpane.html`);
  }
  const summary = () => page.locator("details.functions > summary");
  const search = () => page.getByRole("searchbox", { name: "Search for a function" });
  const field = (name: string) => page.locator(`#argument-${name}-input`);
  const problem = (name: string) => page.locator(`#argument-${name}-problem`);
  const put = () => page.getByRole("button", { name: "Put into the selected cell" });
  const said = (text: string) => page.locator(".functions .said", { hasText: text }).waitFor();
  const typed = () => page.evaluate(() => (window as unknown as PageWindow).sheet.typed);
  const select = (content: string, address = "B7", sheet = "Sheet1") =>
    page.evaluate((cell) => void ((window as unknown as PageWindow).sheet.cell = cell), {
      content,
      address,
      sheet,
    });
  const focused = () => page.evaluate(() => document.activeElement?.textContent);
  async function choose(id: string): Promise<void> {
    await summary().click();
    await search().fill(id);
    await page.getByRole("button", { name: new RegExp(`^${id} `) }).click();
  }

  test("nothing of it is loaded before it is opened; then every function is there under its family", async () => {
    const asked: string[] = [];
    await opened(true, { ahead: false });
    page.on("request", (request) => asked.push(new URL(request.url()).pathname));
    await page.waitForTimeout(300);
    expect(asked.filter((path) => !path.startsWith("/assets/"))).toEqual([]);
    await summary().click();
    await search().waitFor();
    expect(asked.filter((path) => path === "/functions.json")).toHaveLength(1);
    expect(await page.locator(".family > summary").allTextContents()).toEqual(
      "Tirage Pressure Ageing Riddling Disgorging Dosage Sweetness Sugar Label Cost".split(" "),
    );
    expect(await page.locator(".functions li button").count()).toBe(52);
    // the batch comes back as it was
    await summary().click();
    expect(await page.locator("form.batch").isVisible()).toBe(true);
    expect(await page.locator("button.write").isVisible()).toBe(true);
  });

  test("by keyboard alone: opened, searched, chosen, filled in, put into the cell", async () => {
    await opened(true);
    await summary().focus();
    await page.keyboard.press("Enter");
    await search().waitFor();
    await page.keyboard.press("Tab");
    await page.keyboard.type("sugar weigh tank");
    expect(await page.locator("#function-count").textContent()).toBe(
      "None of 52 functions; try fewer or other words.",
    );
    await search().fill("");
    await page.keyboard.type("weigh dissolve");
    expect(await page.locator("#function-count").textContent()).toBe("1 of 52 functions");
    await page.keyboard.press("Enter");
    expect(await focused()).toBe("MOUSSE.TIRAGE.SUGAR");
    await page.keyboard.press("Tab");
    await page.keyboard.type("50,5");
    await page.keyboard.press("Tab");
    await page.keyboard.type("plan · brut!c4");
    await page.keyboard.press("Enter");
    await said("Put into Sheet1!B7.");
    expect(await typed()).toEqual([["Sheet1!B7", "=MOUSSE.TIRAGE.SUGAR(50.5, 'plan · brut'!C4)"]]);
    // and back to where it was chosen
    await page.getByRole("button", { name: "All functions" }).press("Enter");
    expect(await focused()).toContain("TIRAGE.SUGAR");
    expect(await search().inputValue()).toBe("weigh dissolve");
  });

  test("Enter goes to the first of several that were found", async () => {
    await opened(true);
    await summary().click();
    await search().fill("remuage");
    await search().press("Enter");
    expect(await focused()).toContain("RIDDLING.SCHEDULE");
  });

  test("a field says its name, unit, what it is and what blank means", async () => {
    await opened(true);
    await choose("TIRAGE.PRESSURE");
    const described = async (name: string) => {
      const ids = (await field(name).getAttribute("aria-describedby"))!.split(" ");
      return Promise.all(ids.map((id) => page.locator(`[id="${id}"]`).textContent()));
    };
    await page.getByRole("textbox", { name: "dose_gL", exact: true }).waitFor();
    expect(await described("dose_gL")).toEqual([
      "g/L as sucrose",
      "Fermentable sugar in the filled bottle (0 to 60).",
      "",
    ]);
    await page.getByRole("textbox", { name: "yield_share optional", exact: true }).waitFor();
    expect((await described("yield_share"))[1]).toContain("blank = 0.95");
    expect(await field("yield_share").getAttribute("placeholder")).toBe("blank = 0.95");
    expect(await field("dose_gL").getAttribute("aria-required")).toBe("true");
    expect(await field("yield_share").getAttribute("aria-required")).toBeNull();
  });

  test("what is missing or wrong is told at its field, and nothing is put anywhere", async () => {
    await opened(true);
    await choose("TIRAGE.VOLUME");
    await field("dose_gL").fill("ten");
    await put().click();
    expect(await problem("volume_hL").textContent()).toBe(
      "volume_hL is blank; give a number or a cell such as B7",
    );
    expect(await problem("dose_gL").textContent()).toBe(
      'dose_gL is "ten"; give a number or a cell such as B7',
    );
    expect(await problem("liqueur_gL").isVisible()).toBe(false);
    await said("2 arguments to mend.");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("argument-volume_hL-input");
    await page.keyboard.type("B7");
    expect(await problem("volume_hL").isVisible()).toBe(false);
    await field("dose_gL").fill("Season!B2");
    await put().click();
    // a cell is looked at only when it is known which one is selected
    await problem("volume_hL").waitFor();
    expect(await problem("volume_hL").textContent()).toMatch(/^B7 is the cell that the call goes into; /u);
    expect(await problem("dose_gL").textContent()).toMatch(/^there is no sheet “Season”; /u);
    expect(await typed()).toEqual([]);
    await field("volume_hL").fill("50");
    await field("dose_gL").fill("24");
    await field("starter_L").fill("100");
    await put().click();
    await said("Put into Sheet1!B7.");
    expect(await typed()).toEqual([["Sheet1!B7", "=MOUSSE.TIRAGE.VOLUME(50, 24, , , 100)"]]);
  });

  test("a cell that is not blank is left, or replaced, as the user says", async () => {
    await opened(true);
    await choose("LABEL.ALCOHOL");
    await field("alcohol_vol").fill("11.84");
    await select("=A1+2", "C3", "Plan · Brut");
    await field("alcohol_vol").press("Enter");
    await said("'Plan · Brut'!C3 is not blank. It holds: =A1+2");
    expect(await focused()).toBe("Leave it");
    await page.keyboard.press("Enter");
    await said("'Plan · Brut'!C3 was left as it is.");
    expect(await focused()).toBe("Put into the selected cell");
    expect(await typed()).toEqual([]);
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Replace it" }).click();
    await said("Put into 'Plan · Brut'!C3.");
    expect(await typed()).toEqual([["Plan · Brut!C3", "=MOUSSE.LABEL.ALCOHOL(11.84)"]]);
  });

  test("a double click puts it in once", async () => {
    await opened(true);
    await choose("AGEING.DESIGNATIONS");
    await put().dblclick();
    await page.waitForTimeout(200);
    expect(await typed()).toHaveLength(1);
  });

  test("what the spreadsheet refuses is said in its words, and the field is as it was", async () => {
    await opened(true);
    await choose("LABEL.FILL");
    await field("bottle_mL").fill("750");
    await page.evaluate(() => {
      (window as unknown as PageWindow).sheet.refusal = "The sheet is protected.";
    });
    await put().click();
    await said("Not put into the cell. The sheet is protected.");
    expect(await field("bottle_mL").inputValue()).toBe("750");
  });

  test.each([
    ["TIRAGE.PRESSURE", "5.25", "=MOUSSE.TIRAGE.PRESSURE(24, 10, 10.5)"],
    [
      "AGEING.EARLIEST",
      "DATE(2025, 2, 28)",
      '=MOUSSE.AGEING.EARLIEST(DATE(2024, 5, 31), "EU traditional method")',
    ],
    ["DOSAGE.TRIAL", '8, 10, 1.333, "brut"', "=MOUSSE.DOSAGE.TRIAL(750, 0, 600, {8})"],
    ["AGEING.DESIGNATIONS", '"EU traditional method"', "=MOUSSE.AGEING.DESIGNATIONS()"],
  ])("the example of %s gives %s", async (id, gives, formula) => {
    await opened(true);
    await choose(id);
    await page.getByRole("button", { name: "Example" }).click();
    await said(`The example is filled in; it gives ${gives}.`);
    await put().click();
    await said("Put into Sheet1!B7.");
    expect(await typed()).toEqual([["Sheet1!B7", formula]]);
    expect(await page.getByRole("link", { name: "Help page" }).getAttribute("href")).toBe(
      `help/${id.toLowerCase()}.html`,
    );
  });

  test("without a spreadsheet the formula is there to be copied", async () => {
    await opened(false);
    await choose("TIRAGE.SUGAR");
    await field("volume_hL").fill("50");
    await field("dose_gL").fill("24");
    await page.getByRole("button", { name: "Show the formula" }).click();
    const formula = page.getByRole("textbox", { name: "Formula to copy" });
    expect(await formula.inputValue()).toBe("=MOUSSE.TIRAGE.SUGAR(50, 24)");
    expect(await page.evaluate(() => window.getSelection()?.toString())).toBe("=MOUSSE.TIRAGE.SUGAR(50, 24)");
  });

  test("a list that does not load says why, and can be asked for again", async () => {
    await opened(true, { ahead: false });
    await page.route("**/functions.json", (route) => route.fulfill({ status: 503 }));
    await summary().click();
    await page
      .getByText("The functions were not loaded. The server answers 503 for functions.json.")
      .waitFor();
    await page.unroute("**/functions.json");
    await page.getByRole("button", { name: "Try again" }).click();
    await search().waitFor();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("function-search");
  });

  test("nothing is cut off at 320 px: the list, each function, and the batch beside the closed list", async () => {
    await opened(true);
    const overflowing = () =>
      page.evaluate(() =>
        [...document.querySelectorAll("#pane *")]
          .filter((each) => each.getBoundingClientRect().right > 320.5 && !each.closest(".visually-hidden"))
          .map((each) => each.outerHTML.slice(0, 80)),
      );
    const openAll = (which: string) =>
      page.evaluate(
        (found) => document.querySelectorAll<HTMLDetailsElement>(found).forEach((each) => (each.open = true)),
        which,
      );
    await openAll("#pane details:not(.functions)");
    expect(await page.locator("form.batch").isVisible()).toBe(true);
    expect(await overflowing()).toEqual([]);
    await summary().click();
    await search().waitFor();
    await openAll(".family");
    expect(await overflowing()).toEqual([]);
    const entries = await page.locator(".functions li button").all();
    for (const entry of entries) {
      await entry.click();
      await page.locator(".functions form").evaluate((form: HTMLFormElement) => form.requestSubmit());
      expect([await page.locator(".functions h2").textContent(), await overflowing()]).toEqual([
        await page.locator(".functions h2").textContent(),
        [],
      ]);
      await page.getByRole("button", { name: "All functions" }).click();
    }
    expect(entries).toHaveLength(52);
  });

  test("in the workbench the call lands in the selected cell and calculates", async () => {
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on("pageerror", (error) => errors.push(error.message));
    await openWorkbench(page, server.address);
    await goToCell(page, "C4");
    await choose("TIRAGE.SUGAR");
    await page.getByRole("button", { name: "Example" }).click();
    await said("it gives 121.83.");
    await put().click();
    await said("Put into Scratch!C4.");
    const value = () =>
      page.evaluate(() =>
        (window as unknown as PageWindow).grid
          .getActiveWorkbook()
          .getActiveSheet()
          .getRange("C4")
          .getRawValue(),
      );
    await eventually(async () => expect(Number(await value()).toFixed(2)).toBe("121.83"));
    await put().click();
    await said("Scratch!C4 is not blank. It holds: =MOUSSE.TIRAGE.SUGAR(50, 24)");
  });
});

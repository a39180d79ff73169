/**
 * The main job in a real browser, with a real keyboard and mouse: form, sheet, an input changed, the number that
 * follows, the file saved and read back.
 */
import { readFileSync } from "node:fs";
import * as XLSX from "@e965/xlsx";
import type { Browser, Page } from "playwright-core";
import { planBatch } from "../../src/cellar/batch/plan";
import { goToCell, typeIntoCell } from "../../src/guide/grid";
import { browserDescribe, launchChromium, openWorkbench, serveDist } from "../support/chromium";
import { eventually } from "../support/eventually";
import { sampleInputs, samplePath } from "../support/samples";

interface GridCell {
  getCellRect(): { x: number; y: number; width: number; height: number };
  getRawValue(): unknown;
  getFormula(): string;
}
interface GridSheet {
  getSheetName(): string;
  getRange(address: string): GridCell;
  getRange(row: number, column: number): GridCell;
}
interface GridWindow {
  readonly grid: {
    getActiveWorkbook(): {
      getActiveSheet(): GridSheet;
      getSheets(): unknown[];
      getDefinedNames(): { getName(): string; getFormulaOrRefString(): string }[];
    };
  };
}

browserDescribe("the workbench", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  const errors: string[] = [];

  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 }, acceptDownloads: true });
    page.on("pageerror", (error) => errors.push(error.message));
    page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  const status = () => page.locator("#pane .status:not(.replaced)");
  const box = (dotted: string) => page.locator(`[id="${dotted}"]`);
  const figure = (label: string) =>
    page.locator("#pane .figures tr", { hasText: label }).locator("td").first();

  /** The address of a named cell of the sheet in view. */
  const addressOf = (name: string) =>
    page.evaluate((wanted) => {
      const { grid } = window as unknown as GridWindow;
      const found = grid
        .getActiveWorkbook()
        .getDefinedNames()
        .find((each) => each.getName() === wanted);
      return found?.getFormulaOrRefString().split("!").pop()?.replaceAll("$", "") ?? "";
    }, name);
  const rawValue = (address: string) =>
    page.evaluate(
      (at) =>
        (window as unknown as GridWindow).grid
          .getActiveWorkbook()
          .getActiveSheet()
          .getRange(at)
          .getRawValue(),
      address,
    );

  test("opens with the example filled in and its figures shown", async () => {
    const started = Date.now();
    await openWorkbench(page, server.address);
    console.log(`the workbench was ready ${Date.now() - started} ms after its address was entered`);
    await expect(box("batch.name").inputValue()).resolves.toBe("Oxlip Hill Brut 2025");
    const { tirage } = planBatch(sampleInputs("oxlip-hill-brut.json"));
    expect(await figure("Sugar to weigh").textContent()).toBe(tirage.sugarKg.toFixed(2));
  });

  test("a field out of range is refused at the field, and nothing can be written", async () => {
    await box("baseWine.alcohol_vol").fill("85");
    const message = page.locator('[id="baseWine.alcohol_vol-message"]');
    expect(await message.textContent()).toBe("Alcohol is 85; give 5 to 16 % vol");
    expect(await page.locator("button.write").isDisabled()).toBe(true);
    await box("baseWine.alcohol_vol").fill("10,6");
    expect(await message.isVisible()).toBe(false);
  });

  test("the form becomes a sheet with live numbers", async () => {
    await box("batch.name").fill("Evening run");
    await box("baseWine.volume_hL").fill("40");
    await page.locator("button.write").click();
    await page.locator("#pane .status", { hasText: "Written" }).waitFor();
    expect(await status().textContent()).toContain("Plan · Evening run");
    // only an invented batch can be thrown away
    expect(await page.getByRole("button", { name: "Throw the example away" }).count()).toBe(0);
    const inputs = sampleInputs("oxlip-hill-brut.json");
    const { tirage } = planBatch({ ...inputs, baseWine: { ...inputs.baseWine, volume_hL: 40 } });
    const sugar = await addressOf("plan_tirageSugar_kg");
    expect(Number(await rawValue(sugar)) / tirage.sugarKg).toBeCloseTo(1, 9);
  });

  test("an input changed by keyboard carries through", async () => {
    const volume = await addressOf("baseWine_volume_hL");
    await typeIntoCell(page, volume, "55");
    const inputs = sampleInputs("oxlip-hill-brut.json");
    const { tirage, costs } = planBatch({ ...inputs, baseWine: { ...inputs.baseWine, volume_hL: 55 } });
    const sugar = await addressOf("plan_tirageSugar_kg");
    await page.waitForFunction(
      ([at, wanted]) => {
        const value = Number(
          (window as unknown as GridWindow).grid
            .getActiveWorkbook()
            .getActiveSheet()
            .getRange(String(at))
            .getRawValue(),
        );
        return Math.abs(value / Number(wanted) - 1) < 1e-9;
      },
      [sugar, tirage.sugarKg] as const,
    );
    expect(Number(await rawValue(await addressOf("plan_perBottle"))) / costs.perBottle).toBeCloseTo(1, 9);
  });

  test("a function typed into a cell is completed and calculated", async () => {
    await goToCell(page, "D3");
    await page.keyboard.type("=mousse.tirage.sug", { delay: 30 });
    await page.getByText("Kilograms of sucrose to weigh").first().waitFor();
    await page.keyboard.press("Tab");
    await page.getByText("dose_gL").first().waitFor();
    await page.keyboard.type("50, 24)", { delay: 30 });
    await page.keyboard.press("Enter");
    await page.waitForFunction(
      () =>
        Math.abs(
          Number(
            (window as unknown as GridWindow).grid
              .getActiveWorkbook()
              .getActiveSheet()
              .getRange("D3")
              .getRawValue(),
          ) - 121.83,
        ) < 0.005,
    );
  });

  test("what is saved holds the numbers as they stand, and formulas that the add-in brings to life", async () => {
    const volume = await addressOf("baseWine_volume_hL");
    const sugar = await addressOf("plan_tirageSugar_kg");
    const shown = Number(await rawValue(sugar));
    const [download] = await Promise.all([page.waitForEvent("download"), page.locator("#save").click()]);
    expect(download.suggestedFilename()).toMatch(/\.xlsx$/);
    const book = XLSX.read(readFileSync(await download.path()), { cellFormula: true });
    const sheet = book.Sheets["Plan · Evening run"]!;
    expect((sheet[volume] as XLSX.CellObject).v).toBe(55);
    expect((sheet[sugar] as XLSX.CellObject).v).toBe(shown);
    expect((sheet[sugar] as XLSX.CellObject).f).toContain("_xldudf_MOUSSE_TIRAGE_SUGAR(");
    expect((sheet.D3 as XLSX.CellObject).f).toContain("_xldudf_MOUSSE_TIRAGE_SUGAR(50");
  });

  test("the same name again gets a numbered sheet; nothing is overwritten", async () => {
    await page.locator("button.write").click();
    await page.locator("#pane .status", { hasText: "Evening run (2)" }).waitFor();
  });

  test("a batch file is opened, and what has no place is named", async () => {
    await page.locator("#batch-file").setInputFiles({
      name: "small.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify({ batch: { name: "=1+1", colour: "pink" } })),
    });
    await page.locator("#pane .status", { hasText: "batch.colour" }).waitFor();
    expect(await box("batch.name").inputValue()).toBe("=1+1");
    await page
      .locator("#batch-file")
      .setInputFiles({ name: "not.json", mimeType: "application/json", buffer: Buffer.from("{") });
    await page.locator("#pane .status", { hasText: "not a batch file" }).waitFor();
    expect(await box("batch.name").inputValue()).toBe("=1+1");
  });

  test("a choice that is not known is kept and refused, not changed for another", async () => {
    await page.locator("#batch-file").setInputFiles({
      name: "odd.json",
      mimeType: "application/json",
      buffer: Buffer.from(
        JSON.stringify({ batch: { name: "Odd", designation: "Hilltop" }, dosage: { kind: "grape must" } }),
      ),
    });
    await page.locator("#pane .status", { hasText: "Opened odd.json" }).waitFor();
    expect(await box("batch.designation").inputValue()).toBe("Hilltop");
    expect(await page.locator('[id="batch.designation-message"]').textContent()).toContain(
      'Designation is "Hilltop"; give one of',
    );
    expect(await page.locator("button.write").isDisabled()).toBe(true);
    for (const content of ["[]", "5", "null", '{"name":"x"}']) {
      await page
        .locator("#batch-file")
        .setInputFiles({ name: "other.json", mimeType: "application/json", buffer: Buffer.from(content) });
      await page.locator("#pane .status", { hasText: "not a batch file" }).waitFor();
      expect(await box("batch.name").inputValue()).toBe("Odd");
    }
  });

  test("the form is kept as a file, emptied, and brought back", async () => {
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "Keep as a file" }).click(),
    ]);
    const kept = JSON.parse(readFileSync(await download.path(), "utf8")) as { batch: { name: string } };
    expect(kept.batch.name).toBe("Odd");
    await page.getByRole("button", { name: "Empty", exact: true }).click();
    expect(await box("batch.name").inputValue()).toBe("");
    await page.getByRole("button", { name: "Bring the form back" }).click();
    expect(await box("batch.name").inputValue()).toBe("Odd");
    expect(await box("batch.designation").inputValue()).toBe("Hilltop");
  });

  test("a refusing cell says why while it is selected", async () => {
    await typeIntoCell(page, "D2", "=MOUSSE.TIRAGE.PRESSURE(24, 85, 10.5)");
    await goToCell(page, "D2");
    const working = page.locator("#pane .working");
    await working.locator("summary", { hasText: "Why D2 refuses" }).waitFor();
    expect(await working.textContent()).toContain("temperature_C is 85; give -5 to 45 °C");
  });

  test("a formula that needs its own result is an error, and the pane says why", async () => {
    await typeIntoCell(page, "D4", "=D4+1");
    await eventually(async () => expect(await rawValue("D4")).toBe("#CYCLE!"));
    await goToCell(page, "D4");
    const working = page.locator("#pane .working");
    await working.locator("summary", { hasText: "Why D4 refuses" }).waitFor();
    expect(await working.textContent()).toContain("needs its own result");
  });

  test("a selected cell shows its working, with the sheet's own numbers put in", async () => {
    const sugar = await addressOf("plan_tirageSugar_kg");
    await goToCell(page, sugar);
    const working = page.locator("#pane .working");
    await working.locator("summary", { hasText: `Working of ${sugar}` }).waitFor();
    // opened by the refusal before, it stays open
    await working.locator("li", { hasText: "(1000 − s·d)" }).first().waitFor();
    // the sheet in view was written from the form: 40 hL, and 4000·1.5/(60 − 1.5) = 102.56 L of starter
    expect(await working.textContent()).toContain("MOUSSE.TIRAGE.SUGAR(41.0256");
  });

  test("a double click writes one plan", async () => {
    await page.locator("#batch-file").setInputFiles(samplePath("oxlip-hill-rose.json"));
    await page.locator("#pane .status", { hasText: "Opened oxlip-hill-rose.json" }).waitFor();
    const sheets = () =>
      page.evaluate(() => (window as unknown as GridWindow).grid.getActiveWorkbook().getSheets().length);
    const before = await sheets();
    await page.locator("button.write").dblclick();
    await page.locator("#pane .status", { hasText: "Written" }).waitFor();
    await page.waitForTimeout(500);
    // Plan, What-if and Register, once
    expect(await sheets()).toBe(before + 3);
  });

  test("no error was raised on the page", () => {
    expect(errors).toEqual([]);
  });
});

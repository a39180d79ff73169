/**
 * Three errands from start to end in a real browser, as the people do them: a winemaker decides a dose and brings a
 * plan up to date, an estate manager gathers the season, a bookkeeper reads costs, orders and the register in the
 * saved file.
 */
import { readFileSync } from "node:fs";
import * as XLSX from "@e965/xlsx";
import type { Browser, Page } from "playwright-core";
import { planBatch } from "../../src/cellar/batch/plan";
import { orderLines, orderOf } from "../../src/cellar/season/orders";
import { seasonTotals } from "../../src/cellar/season/season";
import { expectedPressure } from "../../src/cellar/carbonation";
import { sucroseGL } from "../../src/cellar/units";
import { activate, typeIntoCell } from "../../src/guide/grid";
import { browserDescribe, launchChromium, openWorkbench, serveDist } from "../support/chromium";
import { eventually } from "../support/eventually";
import { expectRelative } from "../support/relative";
import { sampleInputs } from "../support/samples";

interface NamedCell {
  readonly sheet: string;
  readonly address: string;
}
interface Range {
  getRawValue(): unknown;
}
interface GridWindow {
  readonly grid: {
    getActiveWorkbook(): {
      getActiveSheet(): { getSheetName(): string };
      getSheetByName(name: string): { getRange(address: string): Range } | null;
      getDefinedNames(): { getName(): string; getFormulaOrRefString(): string }[];
      setActiveSheet(sheet: unknown): void;
    };
  };
}

const FILES = ["oxlip-hill-brut.json", "oxlip-hill-rose.json", "oxlip-hill-magnum-zero.json"];
const BRUT = "Plan · Oxlip Hill Brut 2025";

browserDescribe("errands", () => {
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
    await openWorkbench(page, server.address);
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  const box = (dotted: string) => page.locator(`[id="${dotted}"]`);

  /** Where a name leads on a sheet whose name begins so. */
  const find = (sheet: string, name: string): Promise<NamedCell> =>
    page.evaluate(
      ([wantedSheet, wanted]) => {
        const { grid } = window as unknown as GridWindow;
        for (const each of grid.getActiveWorkbook().getDefinedNames()) {
          const [, quoted = "", address = ""] = /^'(.*)'!(.*)$/.exec(each.getFormulaOrRefString()) ?? [];
          if (each.getName() === wanted && quoted.startsWith(wantedSheet!)) {
            return { sheet: quoted, address: address.replaceAll("$", "") };
          }
        }
        throw new Error(`no name ${wanted} on ${wantedSheet}`);
      },
      [sheet, name],
    );
  async function value(sheet: string, name: string): Promise<unknown> {
    const place = await find(sheet, name);
    return page.evaluate(
      (at) =>
        (window as unknown as GridWindow).grid
          .getActiveWorkbook()
          .getSheetByName(at.sheet)!
          .getRange(at.address)
          .getRawValue(),
      place,
    );
  }
  const number = async (sheet: string, name: string) => Number(await value(sheet, name));

  test("each example is written by one click, and the season by one more", async () => {
    for (const [index] of FILES.entries()) {
      await page.locator("select.examples").selectOption(String(index));
      await page.locator("button.write:enabled").click();
      await page.locator("#pane .status", { hasText: "Written" }).waitFor();
    }
    await page.locator("details.plans summary").click();
    await page.getByRole("button", { name: "Write the season" }).click();
    await page.locator("#pane .status", { hasText: "“Season”, from 3 plans" }).waitFor();
  });

  test("winemaker: what does another gram of sugar do, then the plan is brought up to date", async () => {
    const { inputs, plan } = { inputs: sampleInputs(FILES[0]!), plan: planBatch(sampleInputs(FILES[0]!)) };
    // the what-if sheet says what a gram more makes of the bottle on the hottest day
    const dose = sucroseGL(plan.tirage.dose + 1);
    const fill = {
      dose,
      baseAlcoholVol: inputs.baseWine.alcohol_vol,
      yieldShare: inputs.tirage.yield,
      headspacePct: inputs.tirage.headspace_pct,
      dissolvedCo2GL: inputs.baseWine.dissolvedCO2_gL,
    };
    await eventually(async () => {
      const shown = await number("What-if · Oxlip Hill Brut", "whatif_pressure_6_8_bar");
      expectRelative(shown, expectedPressure(fill, inputs.tirage.hottest_C), 1e-9);
    });

    await page.locator("select#plans").selectOption(BRUT);
    await page.getByRole("button", { name: "Read into the form" }).click();
    await page.locator("#pane .status", { hasText: "Read from" }).waitFor();
    expect(await box("tirage.pressure_bar").inputValue()).toBe("5.2");
    await box("tirage.pressure_bar").fill("5.45");
    await page.getByRole("button", { name: `Update “${BRUT}”` }).click();
    await page.locator("#pane .changes li").waitFor();
    expect(await page.locator("#pane .changes li").allTextContents()).toEqual([
      "Tirage: Excess pressure wanted: 5.2 → 5.45 bar",
    ]);
    await page.getByRole("button", { name: "Change 1 input" }).click();
    await page.locator("#pane .status", { hasText: "Changed 1 input" }).waitFor();
    const { sugarKg } = planBatch({ ...inputs, tirage: { ...inputs.tirage, pressure_bar: 5.45 } }).tirage;
    await eventually(async () => {
      expectRelative(await number(BRUT, "plan_tirageSugar_kg"), sugarKg, 1e-9);
      // and everything that reads the plan has followed
      expectRelative(await number("Season", "season_1_sugar_kg"), sugarKg, 1e-9);
      expectRelative(await number("Register · Oxlip Hill Brut", "register_tirageSugar_in"), sugarKg, 1e-9);
    });
  });

  test("winemaker: a gauge reading says how far the fermentation has got", async () => {
    await activate(page, BRUT);
    for (const [name, typed] of [
      ["readings_r1_date", "2026-06-01"],
      ["readings_r1_pressure_bar", "3.1"],
      ["readings_r1_at_C", "12"],
    ] as const) {
      await typeIntoCell(page, (await find(BRUT, name)).address, typed);
    }
    await eventually(async () => {
      expect(await value(BRUT, "plan_reading_r1_state")).toBe("still working");
      const share = await number(BRUT, "plan_reading_r1_share");
      expect(share).toBeGreaterThan(0.4);
      expect(share).toBeLessThan(0.8);
    });
  });

  test("estate manager: what must be ordered, what is out of bounds, and when", async () => {
    const batches = [{ pressure_bar: 5.45 }, {}, {}].map((change, index) => {
      const inputs = sampleInputs(FILES[index]!);
      const changed = { ...inputs, tirage: { ...inputs.tirage, ...change } };
      return { inputs: changed, plan: planBatch(changed) };
    });
    const totals = seasonTotals(batches);
    await eventually(async () => {
      expect(await value("Season", "season_total_worst")).toBe(totals.worst);
      expectRelative(await number("Season", "season_total_cost"), totals.cost!, 1e-9);
    });
    for (const line of orderLines(batches.map(({ inputs }) => inputs.batch.bottle_mL))) {
      const name = [
        "season_order",
        line.material,
        ...(line.sizeMl === null ? [] : [line.sizeMl]),
        "packs",
      ].join("_");
      expect([name, await number("Season", name)]).toEqual([name, orderOf(line, batches).packs]);
    }
    await activate(page, "Season");
  });

  test("bookkeeper: actual figures typed in, the file saved, and all of it there for another reader", async () => {
    await activate(page, BRUT);
    await typeIntoCell(page, (await find(BRUT, "actual_cost")).address, "38000");
    await typeIntoCell(page, (await find(BRUT, "actual_bottlesFinished")).address, "8100");
    await eventually(async () =>
      expectRelative(await number(BRUT, "plan_actual_perBottle"), 38_000 / 8100, 1e-9),
    );

    const download = page.waitForEvent("download");
    await page.locator("#save").click();
    const book = XLSX.read(readFileSync(await (await download).path()), { cellFormula: true });
    expect(book.SheetNames[0]).toBe("Season");
    const read = (sheet: string, address: string) =>
      book.Sheets[sheet]?.[address] as XLSX.CellObject | undefined;
    const register = await find("Register · Oxlip Hill Brut", "register_finished_actual");
    expect(read(register.sheet, register.address)).toMatchObject({ v: 8100 });
    const cost = await find("Season", "season_total_cost");
    expectRelative(
      Number(read(cost.sheet, cost.address)?.v),
      await number("Season", "season_total_cost"),
      1e-12,
    );
    expect(read(cost.sheet, cost.address)?.f).toContain("SUM(");
  });

  test("a plan for someone without the add-in: formulas for any program, saved, opened again from the file", async () => {
    await page.locator("select.examples").selectOption("1");
    await box("batch.name").fill("To send");
    await page.locator("#formulas").selectOption("portable");
    await page.locator("button.write:enabled").click();
    await page.locator("#pane .status", { hasText: "“Plan · To send”" }).waitFor();
    const module = planBatch(sampleInputs(FILES[1]!));
    await eventually(async () => {
      expectRelative(await number("Plan · To send", "plan_tirageSugar_kg"), module.tirage.sugarKg, 1e-9);
      expect(await value("Plan · To send", "plan_worst")).toBe(module.worst);
    });

    const download = page.waitForEvent("download");
    await page.locator("#save").click();
    const saved = await (await download).path();
    const formulas = Object.values(
      XLSX.read(readFileSync(saved), { cellFormula: true }).Sheets["Plan · To send"]!,
    ).flatMap((cell) => (cell as XLSX.CellObject).f ?? []);
    expect(formulas.length).toBeGreaterThan(300);
    expect(formulas.filter((formula) => /mousse/i.test(formula))).toEqual([]);

    await page.locator("#batch-file").setInputFiles({
      name: "from-the-bookkeeper.xlsx",
      mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
      buffer: readFileSync(saved),
    });
    await page.locator("#pane .status", { hasText: "holds 4 plans" }).waitFor();
    await page.locator("#pane .status").getByRole("button", { name: "Plan · To send" }).click();
    expect(await box("batch.name").inputValue()).toBe("To send");
  });

  test("values only: the saved file has no formulas, each stands as a note, and an error is one", async () => {
    await activate(page, "Scratch");
    await typeIntoCell(page, "H20", "=MOUSSE.TIRAGE.SUGAR(-1, 24)");
    await typeIntoCell(page, "H21", "=1/0");
    await typeIntoCell(page, "H22", "=NA()");
    await page.locator("#values").check();
    const download = page.waitForEvent("download");
    await page.locator("#save").click();
    const book = XLSX.read(readFileSync(await (await download).path()), { cellFormula: true });
    const cells = Object.values(book.Sheets[BRUT]!) as XLSX.CellObject[];
    expect(cells.filter(({ f }) => f !== undefined)).toEqual([]);
    const notes = cells.flatMap(({ c }) => (c ?? []).map(({ t }) => String(t)));
    expect(notes.some((note) => note.includes("=MOUSSE.TIRAGE.PRESSURE("))).toBe(true);
    const errorsAt = (address: string) => {
      const { t, w } = book.Sheets["Scratch"]![address] as XLSX.CellObject;
      return [t, w];
    };
    expect(["H20", "H21", "H22"].map(errorsAt)).toEqual([
      ["e", "#VALUE!"],
      ["e", "#DIV/0!"],
      ["e", "#N/A"],
    ]);
  });

  test("nothing went wrong in the page meanwhile", () => expect(errors).toEqual([]));
});

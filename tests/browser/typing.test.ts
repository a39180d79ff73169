/**
 * Typed into the workbench's cells by a quick hand: functions while the list under the cell is older than what is
 * typed, and numbers while the sheet still calculates.
 */
import type { Browser, Page } from "playwright-core";
import { planBatch } from "../../src/cellar/batch/plan";
import { goToCell, placeOf } from "../../src/guide/grid";
import { browserDescribe, launchChromium, openWorkbench, serveDist } from "../support/chromium";
import { eventually } from "../support/eventually";
import { sampleInputs } from "../support/samples";

interface GridWindow {
  readonly grid: {
    getActiveWorkbook(): {
      insertDefinedName(name: string, place: string): unknown;
      getActiveSheet(): {
        getRange(address: string): { getFormula(): string; getRawValue(): string | number | null };
        getActiveRange(): { getA1Notation(): string } | null;
      };
    };
  };
}

browserDescribe("a quick hand in the workbench", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  const errors: string[] = [];
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on("pageerror", (error) => errors.push(error.message));
    await openWorkbench(page, server.address);
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
  const contentOf = (address: string) =>
    page.evaluate((at) => {
      const cell = (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet().getRange(at);
      return cell.getFormula() || String(cell.getRawValue() ?? "");
    }, address);
  const valueOf = (address: string) =>
    page.evaluate(
      (at) =>
        Number(
          (window as unknown as GridWindow).grid
            .getActiveWorkbook()
            .getActiveSheet()
            .getRange(at)
            .getRawValue(),
        ),
      address,
    );
  async function press(keys: readonly string[]): Promise<void> {
    for (const each of keys)
      if (each.startsWith("<")) await page.keyboard.press(each.slice(1, -1));
      else await page.keyboard.type(each, { delay: KEY_MS });
  }
  /** Types until the list is there, then all the rest without a pause. */
  async function typeOn(begun: readonly string[], listed: string, rest: readonly string[]): Promise<void> {
    await press(begun);
    await list().getByText(listed, { exact: true }).first().waitFor();
    await press(rest);
  }
  /** What was typed is in the cell, and the next one is selected. */
  const becomes = (address: string, content: string, next: string) =>
    page.waitForFunction(
      ([at, wanted, selected]) => {
        const sheet = (window as unknown as GridWindow).grid.getActiveWorkbook().getActiveSheet();
        const cell = sheet.getRange(at!);
        const held = cell.getFormula() || String(cell.getRawValue());
        return (
          held.toUpperCase() === wanted!.toUpperCase() && sheet.getActiveRange()?.getA1Notation() === selected
        );
      },
      [address, content, next],
    );

  const typed: [string, string[], string, string[], string][] = [
    [
      "a name in full",
      ["=mousse.tirage."],
      "MOUSSE.TIRAGE.PRESSURE",
      ["sugar(50, 24)", "<Enter>"],
      "=MOUSSE.TIRAGE.SUGAR(50, 24)",
    ],
    [
      "a name further begun",
      ["=mousse.tirage."],
      "MOUSSE.TIRAGE.PRESSURE",
      ["sug", "<Tab>", "50, 24)", "<Enter>"],
      "=MOUSSE.TIRAGE.SUGAR(50, 24)",
    ],
    [
      "a name inside a formula",
      ["=1+mousse.tirage."],
      "MOUSSE.TIRAGE.PRESSURE",
      ["sug", "<Enter>", "50, 24)*2", "<Enter>"],
      "=1+MOUSSE.TIRAGE.SUGAR(50, 24)*2",
    ],
    [
      "a name that was not listed",
      ["=mousse."],
      "MOUSSE.AGEING.EARLIEST",
      ["tirage.sug", "<Tab>", "50, 24)", "<Enter>"],
      "=MOUSSE.TIRAGE.SUGAR(50, 24)",
    ],
    ["a function of the engine", ["=su"], "SUBTOTAL", ["m(1,2)", "<Enter>"], "=SUM(1,2)"],
    ["the name of a cell", ["=wineSug"], "wineSugar", ["ar", "<Enter>"], "=wineSugar"],
    [
      "the begun name of a cell",
      ["=wineSug"],
      "wineSugarLeft",
      ["arL", "<Tab>", "<Enter>"],
      "=wineSugarLeft",
    ],
    ["a value that is a function too", ["=tr"], "TREND", ["ue", "<Enter>"], "=TRUE"],
    [
      "a name with the cursor inside",
      ["<F2>", "=su"],
      "SUBTOTAL",
      ["<ArrowLeft>", "<Tab>", "9,1)", "<Enter>"],
      "=SUBTOTAL(9,1)",
    ],
    [
      "a name mended before its bracket",
      ["<F2>", "=sum(1,2)", ...Array<string>(6).fill("<ArrowLeft>"), "<Backspace>", "u"],
      "SUM",
      ["<Enter>"],
      "=SUM(1,2)",
    ],
    ["a cell's address", ["=lo"], "LOG10", ["g1", "<Enter>"], "=LOG1"],
    ["whole columns", ["=su"], "SUBTOTAL", ["m(a:a", "<Enter>"], "=SUM(A:A)"],
    ["another sheet's columns", ["=su"], "SUBTOTAL", ["m(Scratch!b:b", "<Enter>"], "=SUM(Scratch!B:B)"],
    ["fixed columns", ["=su"], "SUBTOTAL", ["m($b:$b", "<Enter>"], "=SUM($B:$B)"],
    ["a text in a formula", ["=le"], "LEFT", ['n("su', "<Enter>"], '=LEN("su)'],
    [
      "a text in place of a formula",
      ["=su"],
      "SUBTOTAL",
      ["<Backspace>", "<Backspace>", "<Backspace>", "su", "<Enter>"],
      "su",
    ],
    ["a word that begins no name", ["=su"], "SUBTOTAL", ["zz", "<Enter>"], "=suzz"],
    ["a selected end", ["<F2>", "=su"], "SUBTOTAL", ["m(1,2)", "<Shift+ArrowLeft>", "<Enter>"], "=SUM(1,2)"],
    // last: the same line stands out in the next list too
    [
      "a name picked with the arrow",
      ["=sum"],
      "SUMIF",
      ["<ArrowDown>", "<Tab>", "A1:A3,1)", "<Enter>"],
      "=SUMIF(A1:A3,1)",
    ],
  ];
  test.each(typed.map((each, index) => [...each, index + 2] as const))(
    "while functions are listed, types %s",
    async (_, begun, listed, rest, content, row) => {
      await goToCell(page, `D${row}`);
      await typeOn(begun, listed, rest);
      await becomes(`D${row}`, content, `D${row + 1}`);
      expect(await list().count()).toBe(0);
    },
  );

  test("completes a name in the bar above the sheet too", async () => {
    await goToCell(page, "F2");
    // the bar takes the keys a while after the cell was gone to
    await eventually(async () => {
      await page
        .locator("[data-u-comp='formula-bar'] canvas")
        .first()
        .click({ delay: 2 * KEY_MS });
      expect(await page.evaluate(() => document.activeElement?.id)).toContain("FORMULA_BAR");
    });
    await typeOn(["=mousse.tirage."], "MOUSSE.TIRAGE.PRESSURE", ["sug", "<Tab>", "50, 24)", "<Enter>"]);
    await becomes("F2", "=MOUSSE.TIRAGE.SUGAR(50, 24)", "F3");
  });

  test("gives a formula up with Esc", async () => {
    await goToCell(page, "F3");
    await typeOn(["=mousse.tirage."], "MOUSSE.TIRAGE.PRESSURE", []);
    // a list that was still to come comes after the first one is closed
    await eventually(async () => {
      await page.keyboard.press("Escape");
      expect(await list().count()).toBe(0);
    });
    await page.keyboard.press("Escape");
    expect(await contentOf("F3")).toBe("");
  });

  // last: Enter after it goes back to where it began
  test("leaves a formula to the right with Tab", async () => {
    await goToCell(page, "G2");
    await typeOn(["=su"], "SUBTOTAL", ["m(a:a", "<Tab>"]);
    await becomes("G2", "=SUM(A:A)", "H2");
  });

  test("enters one input of a plan after the other while it calculates", async () => {
    await page.locator("button.write").click();
    await page.locator("#pane .status", { hasText: "Written" }).waitFor();
    const first = await placeOf(page, "baseWine_volume_hL");
    const row = Number(first.slice(1));
    const entered = [
      ["51", "10.4", "1.1", "0.6"],
      ["52.5", "10.7", "1.3", "0.7"],
    ];
    for (const values of entered) {
      await goToCell(page, first);
      await press(values.flatMap((value) => [value, "<Enter>"]));
      await eventually(async () => {
        for (const [index, value] of values.entries())
          expect(await contentOf(`${first[0]}${row + index}`)).toBe(value);
      });
    }
  });

  describe("when a number is out of range", () => {
    const message = () => page.getByRole("dialog").getByText("Give 5 to 16 % vol");
    const cells: string[] = [];
    const contents = () => Promise.all(cells.map(contentOf));
    const hasKeys = () => document.activeElement instanceof HTMLDivElement;
    beforeAll(async () => {
      const alcohol = await placeOf(page, "baseWine_alcohol_vol");
      for (let below = 0; below < 4; below += 1)
        cells.push(`${alcohol[0]}${Number(alcohol.slice(1)) + below}`);
    });

    test("keeps what is typed on unseen out of every cell", async () => {
      const before = await contents();
      await goToCell(page, cells[0]!);
      await press(["99", "<Enter>", "6.5", "<Enter>", "0.9", "<Enter>", "70", "<Enter>"]);
      await message().waitFor();
      await expect(contents()).resolves.toEqual(before);
      await page.keyboard.press("Escape");
      await page.waitForFunction(hasKeys);
    });

    test.each(["Enter", "Escape"])("takes a number whole or not at all right after %s", async (key) => {
      const [old, ...below] = await contents();
      await goToCell(page, cells[0]!);
      await press(["99", "<Enter>"]);
      await message().waitFor();
      await press([`<${key}>`, "15.11", "<Enter>"]);
      await page.waitForFunction(hasKeys);
      const [now, ...belowNow] = await contents();
      expect([old, "15.11"]).toContain(now);
      expect(belowNow).toEqual(below);
    });

    test("goes on in the cell", async () => {
      await goToCell(page, cells[0]!);
      await press(["99", "<Enter>"]);
      await message().waitFor();
      await page.keyboard.press("Enter");
      await page.waitForFunction(hasKeys);
      await press(["11.2", "<Enter>"]);
      await eventually(async () => expect(await contentOf(cells[0]!)).toBe("11.2"));
    });
  });

  test("adds two tanks in the cell of the volume", async () => {
    const volume = await placeOf(page, "baseWine_volume_hL");
    const sugar = await placeOf(page, "plan_tirageSugar_kg");
    await goToCell(page, volume);
    await press(["=30+25", "<Enter>"]);
    const inputs = sampleInputs("oxlip-hill-brut.json");
    const { tirage } = planBatch({
      ...inputs,
      baseWine: { ...inputs.baseWine, volume_hL: 55, alcohol_vol: 11.2, sugar_gL: 1.3, dissolvedCO2_gL: 0.7 },
    });
    await eventually(async () => {
      expect(await contentOf(volume)).toBe("=30+25");
      expect((await valueOf(sugar)) / tirage.sugarKg).toBeCloseTo(1, 9);
    });
  });
});

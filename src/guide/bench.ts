/**
 * The running workbench, as a chapter drives it: by names on the page, keyboard and mouse.
 */
import type { BrowserContext, Download, Locator, Page } from "playwright-core";
import { activate, formulas, goToCell, holds, placeOf, sheetNames, shownCells, typeIntoCell } from "./grid";

/** Wide enough for a season's table, high enough for a long working. */
export const VIEWPORT = { width: 1640, height: 1500 };

/** What the page names and says at a moment. */
export interface Seen {
  readonly names: ReadonlySet<string>;
  readonly text: string;
}

const NAMES =
  "button, summary, summary .title, label, legend, option, h1, h2, th, td, caption, dt, a, strong";
const TICK_MS = 150;
/** Until the spreadsheet is drawn anew in another size. */
const DRAWN_MS = 700;

const plain = (text: string) => text.replace(/\s+/gu, " ").trim();

export class Bench {
  readonly pane: Locator;
  #other: Page | undefined;

  private constructor(
    private readonly context: BrowserContext,
    readonly page: Page,
    private readonly address: string,
  ) {
    this.pane = page.locator("#pane");
  }

  /** A workbench just opened, as a first visitor meets it. */
  static async open(context: BrowserContext, address: string): Promise<Bench> {
    const page = await context.newPage();
    const bench = new Bench(context, page, address);
    await page.goto(`${address}/workbench.html`);
    await page.locator("button.write:enabled").waitFor();
    await bench.settle();
    return bench;
  }

  /** The page that is looked at: the workbench, or a page of help beside it. */
  get view(): Page {
    return this.#other ?? this.page;
  }

  async lookAt(page: string, width: number): Promise<void> {
    this.#other = await this.context.newPage();
    await this.#other.setViewportSize({ ...VIEWPORT, width });
    await this.#other.goto(`${this.address}/${page}`);
  }

  async press(name: string): Promise<void> {
    await this.page.getByRole("button", { name, exact: true }).click();
    await this.settle();
  }

  /** Opens or closes a part by its title. */
  async turn(title: string): Promise<void> {
    const summary = this.pane.locator("summary");
    const found = summary.filter({ hasText: new RegExp(`^\\s*${title.replaceAll(" ", "\\s+")}`, "u") });
    await found.first().click();
    await this.settle();
  }

  /** A box of the form by its field, "tirage.pressure_bar". */
  box(dotted: string): Locator {
    return this.page.locator(`[id="${dotted}"]`);
  }
  /** The line of the form with its label, box and messages. */
  field(dotted: string): Locator {
    return this.pane.locator(".field", { has: this.box(dotted) });
  }
  async fill(dotted: string, typed: string): Promise<void> {
    await this.box(dotted).fill(typed);
    await this.settle();
  }

  /** Waits until the pane has said it. */
  async said(text: string): Promise<void> {
    await this.pane.locator(".status", { hasText: text }).waitFor();
    await this.settle();
  }
  async writePlan(): Promise<void> {
    await this.press("Write the plan");
    await this.said("Written to");
  }

  async show(sheet: string): Promise<void> {
    await activate(this.page, sheet);
    await this.settle();
  }
  placeOf(name: string): Promise<string> {
    return placeOf(this.page, name);
  }
  /** Goes to a cell as a person does: its address typed into the name box. */
  async select(address: string): Promise<void> {
    await goToCell(this.page, address);
    await this.settle();
  }
  async type(address: string, typed: string): Promise<void> {
    await typeIntoCell(this.page, address, typed);
    await this.page.waitForFunction(holds, address);
    await this.settle();
  }
  /** Selects a cell whose working, or why it refuses, is then under this title. */
  async selectFor(address: string, title: string): Promise<void> {
    await this.select(address);
    await this.pane.locator(".working > summary", { hasText: title }).waitFor();
    await this.settle();
  }

  async download(does: () => Promise<void>): Promise<Download> {
    const [download] = await Promise.all([this.page.waitForEvent("download"), does()]);
    await this.settle();
    return download;
  }

  /** Until neither the sheet nor the pane changes any more. */
  async settle(): Promise<void> {
    let before = "";
    for (let still = 0, waited = 0; still < 3; waited += 1) {
      if (waited > 100) throw new Error("the page does not come to rest");
      await this.page.waitForTimeout(TICK_MS);
      const now = JSON.stringify([await shownCells(this.page), await this.pane.innerText()]);
      still = now === before ? still + 1 : 0;
      before = now;
    }
  }

  /** Makes the page at least so high, for a picture. */
  async stretch(wanted: number): Promise<void> {
    const height = Math.ceil(Math.max(wanted, VIEWPORT.height));
    if (this.page.viewportSize()?.height === height) return;
    await this.page.setViewportSize({ ...VIEWPORT, height });
    await this.page.waitForTimeout(DRAWN_MS);
  }

  async seen(): Promise<Seen> {
    const view = this.view;
    const named = await view
      .locator(NAMES)
      .evaluateAll((all) =>
        all
          .filter((each) => each.matches("option") || each.checkVisibility())
          .map((each) => each.textContent ?? ""),
      );
    const controls = await view
      .locator("input, select, textarea")
      .evaluateAll((all) => all.map((each) => (each as HTMLInputElement).value));
    const body = await view.locator("body").innerText();
    const isWorkbench = view === this.page;
    const cells = isWorkbench ? (await shownCells(view)).flat() : [];
    const sheets = isWorkbench ? await sheetNames(view) : [];
    const typed = isWorkbench ? await formulas(view) : [];
    return {
      names: new Set([...named, ...cells, ...sheets].map(plain)),
      text: plain([body, ...controls, ...cells, ...sheets, ...typed].join(" ")),
    };
  }
}

/**
 * The pages before axe-core, in both languages, the pane in each state that it can be in: no rule of WCAG 2.2 A and AA
 * (2.1 among them) or of good practice is broken.
 */
import { readFileSync } from "node:fs";
import type { Browser, Page } from "playwright-core";
import type { CellCalls, NamedCell } from "../../src/hosts/host";
import type { SheetData, WorkbookData } from "../../src/workbook/data";
import { browserDescribe, launchChromium, serveDist, withoutOffice } from "../support/chromium";

const AXE = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

interface Broken {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}
interface PageWindow {
  mousseHost: Promise<unknown>;
  select(cell: CellCalls): void;
  axe: { run(where: object, options: object): Promise<{ violations: Broken[]; incomplete: Broken[] }> };
}

/** A workbook that holds what is written into it and calculates nothing. */
function noteBook(): void {
  const page = window as unknown as PageWindow;
  const sheets: SheetData[] = [];
  const named = ({ names, cells }: SheetData) =>
    new Map(
      names.map(({ name, row, column }): [string, NamedCell] => {
        const cell = cells.find((each) => each.row === row && each.column === column);
        return [name, { row, column, value: cell?.value ?? null, calculated: cell?.formula !== undefined }];
      }),
    );
  const nothing = () => Promise.resolve(undefined);
  page.mousseHost = Promise.resolve({
    name: "this workbook",
    sheetNames: () => Promise.resolve(sheets.map(({ name }) => name)),
    keepsNotes: () => true,
    write: (book: WorkbookData) => Promise.resolve(sheets.push(...book.sheets)).then(() => []),
    sheetsNaming: (wanted: string) =>
      Promise.resolve(
        sheets
          .filter(({ names }) => names.some(({ name }) => name === wanted))
          .map((sheet) => ({ name: sheet.name, cells: named(sheet) })),
      ),
    watchSelection: (tell: PageWindow["select"]) => (page.select = tell),
    selectedCell: () => Promise.resolve({ sheet: "Plan", address: "B7", content: "=A1+2" }),
    recall: nothing,
    keep: nothing,
  });
}

const box = (dotted: string) => `[id="${dotted}"]`;
const openAll = (page: Page, which: string) =>
  page.evaluate(
    (found) => document.querySelectorAll<HTMLDetailsElement>(found).forEach((each) => (each.open = true)),
    which,
  );
async function written(page: Page): Promise<void> {
  await page.locator("button.write:enabled").click();
  await page.locator(".status .actions button").waitFor();
  await openAll(page, "details.plans");
}
async function chosen(page: Page, id: string): Promise<void> {
  await openAll(page, "details.functions");
  await page.locator("#function-search").fill(id);
  await page.locator("#function-search").press("Enter");
}

type States = Readonly<Record<string, (page: Page) => Promise<unknown>>>;
const untouched: States = { "at first": () => Promise.resolve() };

const pane: States = {
  ...untouched,
  "with every step open": async (page) => {
    await openAll(page, "#pane form.batch details, #pane .glance");
    await page.locator(".picture figure").nth(3).waitFor();
    await page.locator(".bench .trial").first().waitFor();
  },
  "with fields to mend": async (page) => {
    await openAll(page, "#pane form.batch details, #pane .glance, details.what-if");
    await page.locator(box("baseWine.alcohol_vol")).fill("85");
    await page.locator(box("tirage.hottest_C")).fill("1,250");
    await page.locator(box("batch.tirageDate")).fill("");
    await page.locator(box("materials.bottles.price")).fill("x");
    await page.locator(box("readings.r2.date")).fill("2026-05-01");
  },
  "with two variants kept": async (page) => {
    await openAll(page, "details.what-if");
    const keep = page.locator(".variants .actions").nth(1).locator("button").first();
    await keep.click();
    await page.locator("#variant-volume_hL").fill("70");
    await keep.click();
    await page.locator(".side-by-side").waitFor();
  },
  "with a trial of no number": async (page) => {
    await openAll(page, "#step-dosage, details.bench");
    await page.locator(".bench .trial .head input").first().fill("ten");
    await page.locator(".bench .problem:not([hidden])").waitFor();
  },
  "with the list of functions": async (page) => {
    await openAll(page, "details.functions");
    await page.locator("#function-search").waitFor();
    await openAll(page, ".family");
  },
  "with a function's arguments to mend": async (page) => {
    await chosen(page, "TIRAGE.PRESSURE");
    await page.locator(".function .put").click();
    await page.locator("#argument-dose_gL-problem").waitFor();
  },
  "with a cell that is not blank": async (page) => {
    await chosen(page, "TIRAGE.SUGAR");
    await page.locator(".function .actions button").nth(1).click();
    await page.locator(".function .said:not(:empty)").waitFor();
    await page.locator(".function .put").click();
    await page.locator("#function-question").waitFor();
  },
  "with the working of a cell": async (page) => {
    const cell = { address: "B7", calls: [{ id: "TIRAGE.SUGAR", args: [50, 24] }], failed: false };
    await page.evaluate((each) => (window as unknown as PageWindow).select(each), cell);
    await openAll(page, "details.working");
    await page.locator(".working li").first().waitFor();
  },
  "with an update to be decided": async (page) => {
    await written(page);
    await page.locator(".plans .actions button").first().click();
    // what is typed before the sheet has been read would be replaced
    await page.locator(".status.replaced button").waitFor();
    await page.locator(box("tirage.cellar_C")).fill("11");
    await page.locator("footer > .actions button").nth(1).click();
    await page.locator(".changes li").waitFor();
  },
  "with the question before values only": async (page) => {
    await written(page);
    await openAll(page, "details.freeze");
    await page.locator("#freeze-sheet option").first().waitFor({ state: "attached" });
    await page.locator(".freeze button").click();
    await page.locator(".status .actions button").nth(1).waitFor();
  },
};

const PAGES: Readonly<Record<string, States>> = {
  "taskpane.html": pane,
  "workbench.html": { ...untouched, "with a plan written": written },
  "help/index.html": untouched,
  "help/tirage.pressure.html": untouched,
};
const CASES = ["en", "fr"].flatMap((language) =>
  Object.entries(PAGES).flatMap(([file, states]) =>
    Object.keys(states).map((state) => [language, file, state] as const),
  ),
);

/** axe cannot tell the contrast of letters over lines, nor of a digit; accessibility-senses.test.ts looks at pixels. */
const UNTOLD = /^<text |too short to determine/u;

/** Rules that are broken, and contrasts that could not be told. The DOM in #grid is the spreadsheet library's. */
async function broken(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations, incomplete } = await page.evaluate(
    (values) =>
      (window as unknown as PageWindow).axe.run(
        { exclude: [["#grid > *"]] },
        { runOnly: { type: "tag", values } },
      ),
    RULES,
  );
  const said = (found: Broken[]) =>
    found.flatMap(({ id, nodes }) => nodes.map((each) => `${each.html} ${id}: ${each.failureSummary}`));
  const untold = said(incomplete.filter(({ id }) => id === "color-contrast"));
  return [...said(violations), ...untold.filter((each) => !UNTOLD.test(each))];
}

browserDescribe("for everyone", () => {
  let browser: Browser;
  let server: Awaited<ReturnType<typeof serveDist>>;
  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  test.each(CASES)("in %s, %s %s", async (language, file, state) => {
    // so tall that nothing lies below anything else, and each contrast can be told
    const viewport = { width: file.startsWith("taskpane") ? 320 : 1280, height: 16_000 };
    const context = await browser.newContext({ viewport, locale: language });
    const page = await context.newPage();
    if (file.startsWith("taskpane")) await page.addInitScript(noteBook);
    await withoutOffice(page);
    await page.goto(`${server.address}/${language === "fr" ? file.replace("help/", "help/fr/") : file}`);
    await page.locator(`html[lang="${language}"]`).waitFor();
    if (!file.startsWith("help")) await page.locator("button.write:enabled").waitFor();
    await PAGES[file]![state]!(page);
    expect(await broken(page)).toEqual([]);
    await context.close();
  });
});

/**
 * Hostile texts in the form, in a real browser: nothing runs, each is shown as the text that it is; a hostile file leaves
 * the form as it was.
 */
import type { Browser, Page } from "playwright-core";
import { browserDescribe, launchChromium, openWorkbench, serveDist } from "../support/chromium";
import { repeated } from "../support/fuzz";

const MARKUP = [
  "<img src=x onerror=window.ran=1>",
  "'\"><script>window.ran=1</script>",
  "&lt;b&gt;{0}${x}",
  '=HYPERLINK("javascript:1","x")',
];

browserDescribe("hostile texts in the page", () => {
  let browser: Browser;
  let page: Page;
  let server: Awaited<ReturnType<typeof serveDist>>;
  const errors: string[] = [];
  const dialogs: string[] = [];

  beforeAll(async () => {
    server = await serveDist();
    browser = await launchChromium();
    page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    page.on("pageerror", (error) => errors.push(error.message));
    page.on("dialog", (dialog) => {
      dialogs.push(dialog.message());
      void dialog.dismiss();
    });
    await openWorkbench(page, server.address);
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });

  const box = (dotted: string) => page.locator(`[id="${dotted}"]`);
  /** What was put into the form, and what was done. */
  const status = async () => (await page.locator("#pane .status").allInnerTexts()).join("");
  const open = async (name: string, content: string | Buffer) => {
    const before = await status();
    await page.locator("#batch-file").setInputFiles({
      name,
      mimeType: "application/octet-stream",
      buffer: Buffer.from(content),
    });
    await page.waitForFunction(
      (text) =>
        [...document.querySelectorAll<HTMLElement>("#pane .status")]
          .map((each) => each.innerText)
          .join("") !== text,
      before,
    );
    return status();
  };
  /** What would be there if a text had been taken for markup. */
  const strange = () =>
    page.evaluate(() => ({
      ran: (window as { ran?: unknown }).ran,
      elements: document.querySelectorAll("#pane script, #pane img, #pane [onerror]").length,
    }));

  test("names are written to sheets as they are", async () => {
    for (const text of MARKUP) {
      await box("batch.name").fill(text);
      await box("batch.lot").fill(text);
      await page.locator("button.write:enabled").click();
      await page.locator("#pane .status", { hasText: "Written" }).waitFor();
      expect(await box("batch.name").inputValue()).toBe(text);
      expect(await strange()).toEqual({ ran: undefined, elements: 0 });
    }
    // and the list of plans holds texts, too
    expect(await page.locator("select#plans option").count()).toBe(MARKUP.length);
    const shown = await page.locator("select#plans option").allTextContents();
    expect(shown[0]).toContain("<img src=x onerror=");
    expect(await strange()).toEqual({ ran: undefined, elements: 0 });
  });

  test("values that are refused are quoted as text", async () => {
    for (const text of ["<img src=x onerror=window.ran=1>", "'\"><script>window.ran=1</script>"]) {
      await box("baseWine.volume_hL").fill(text);
      await page.locator('[id="baseWine.volume_hL-message"]:not([hidden])').waitFor();
      expect(await page.locator('[id="baseWine.volume_hL-message"]').innerText()).toContain(
        text.slice(0, 30),
      );
      expect(await strange()).toEqual({ ran: undefined, elements: 0 });
    }
    await box("baseWine.volume_hL").fill("50");
  });

  test("files that are no plans leave the form as it was, and say so", async () => {
    await box("batch.name").fill("Stays");
    const deep = `{"batch":{"name":${"[".repeat(10_000)}${"]".repeat(10_000)}}}`;
    for (const [name, content, reason] of [
      ["<b>x.json", "{", "not JSON"],
      ["deep.json", deep, "nested too deep"],
      ["long.json", `{"batch":{"name":"${repeated("x", 2_000_000)}"}}`, "more than 1000 kB"],
      ["a.xlsx", "", "it is empty"],
      ["<img src=x onerror=window.ran=1>.xlsx", "%PDF-1.7", "it is not a whole .xlsx workbook"],
    ] as const) {
      expect(await open(name, content)).toContain(reason);
      expect(await box("batch.name").inputValue()).toBe("Stays");
      expect(await strange()).toEqual({ ran: undefined, elements: 0 });
    }
  });

  test("strange fields of a file are named as text", async () => {
    const said = await open(
      "odd.json",
      '{"batch":{"name":"From a file","<img src=x onerror=window.ran=1>":1}}',
    );
    expect(said).toContain("there are no such fields: batch.<img src=x onerror=window.ran=1>");
    expect(await box("batch.name").inputValue()).toBe("From a file");
    expect(await strange()).toEqual({ ran: undefined, elements: 0 });
  });

  test("no error and no dialog meanwhile", () => expect([errors, dialogs]).toEqual([[], []]));
});

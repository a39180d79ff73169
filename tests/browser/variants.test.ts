/**
 * What if, in a browser: sliders by keyboard, numbers typed, variants kept, put into the form.
 */
import type { Browser, Page } from "playwright-core";
import type { BatchInputs } from "../../src/cellar/batch/fields";
import { planBatch } from "../../src/cellar/batch/plan";
import { atSettings } from "../../src/cellar/batch/what-if";
import { browserDescribe, launchChromium } from "../support/chromium";
import { sampleInputs } from "../support/samples";
import {
  bundled,
  follow,
  frame,
  opened,
  overhang,
  taken,
  type SectionWindow,
} from "../taskpane/variants/page";

const brut = sampleInputs("oxlip-hill-brut.json");
const rose = sampleInputs("oxlip-hill-rose.json");
const zero = sampleInputs("oxlip-hill-magnum-zero.json");

browserDescribe("what if in the pane", () => {
  let browser: Browser;
  let page: Page;
  let section: Awaited<ReturnType<typeof bundled>>;
  const errors: string[] = [];
  beforeAll(async () => {
    section = await bundled("variants", "variantsSection");
    browser = await launchChromium();
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    await page.close();
    expect(errors.splice(0)).toEqual([]);
  });

  async function start(inputs: BatchInputs | null, width = 320, locale?: string): Promise<void> {
    page = await opened(browser, section, width, locale);
    page.on("pageerror", (error) => errors.push(error.message));
    await follow(page, inputs);
  }
  const slider = (name: string) => page.getByRole("slider", { name });
  const box = (name: string) => page.getByRole("textbox", { name, exact: true });
  const press = (name: string) => page.getByRole("button", { name, exact: true }).click();
  const said = () => page.locator(".said").textContent();
  const cells = async (label: string) =>
    page
      .locator(".compared tr", { has: page.getByRole("rowheader", { name: label, exact: true }) })
      .locator("td")
      .allTextContents();
  const setTo = async (name: string, value: string) => {
    await box(name).fill(value);
    await frame(page);
  };

  test("nothing heavy is loaded with it", async () => {
    await start(null);
    expect(section.sources).toContain("src/taskpane/variants/section.ts");
    expect(section.sources.filter((source) => /workbook|hosts|zod/u.test(source))).toEqual([]);
    expect(section.js.length).toBeLessThan(250_000);
  });

  test("a slider moves by its step with the arrow keys, and the figures follow beside the form's", async () => {
    await start(brut);
    const volume = slider("Volume of base wine, slider");
    await volume.focus();
    for (let times = 0; times < 4; times += 1) await page.keyboard.press("ArrowRight");
    await frame(page);
    expect(await box("Volume of base wine").inputValue()).toBe("62");
    expect(await volume.getAttribute("aria-valuetext")).toBe("62 hL");
    const [own, now] = [brut, atSettings(brut, { volume_hL: 62 })].map(
      (each) => planBatch(each).tirage.bottles,
    );
    const shown = (value: number) => value.toLocaleString("en-GB");
    expect(await cells("Bottles")).toEqual([shown(own!), shown(now!), `+${shown(now! - own!)}`]);
    // and back to where it stood
    for (let times = 0; times < 4; times += 1) await page.keyboard.press("ArrowLeft");
    await frame(page);
    expect((await cells("Bottles"))[2]).toBe("same");
  });

  test("a decimal comma is taken, and what is typed is left as it is typed", async () => {
    await start(brut);
    await setTo("Sweetness wanted", "11,5");
    expect(await slider("Sweetness wanted").inputValue()).toBe("11.5");
    expect(await box("Sweetness wanted").inputValue()).toBe("11,5");
    const { eachMl } = planBatch(atSettings(brut, { target_gL: 11.5 })).dosage;
    expect((await cells("Dosage a bottle, mL"))[1]).toBe(eachMl.toFixed(2));
  });

  test("a typed number may lie beyond the slider, but not beyond what the field allows", async () => {
    await start(brut);
    await setTo("Volume of base wine", "240");
    expect(await slider("Volume of base wine").inputValue()).toBe("90");
    expect(await slider("Volume of base wine").getAttribute("aria-valuetext")).toBe("240 hL");
    await setTo("Volume of base wine", "0");
    expect(await page.locator("#variant-volume_hL-message").textContent()).toBe(
      "Volume of base wine is 0; give more than 0, at most 100000 hL",
    );
    expect(await page.locator(".compared").isVisible()).toBe(false);
    expect(await page.getByRole("button", { name: "Keep this variant" }).isDisabled()).toBe(true);
    await setTo("Volume of base wine", "1,250");
    expect(await page.locator("#variant-volume_hL-message").textContent()).toContain(
      "without marks for thousands",
    );
    await press("Back to the form’s values");
    await frame(page);
    expect(await box("Volume of base wine").inputValue()).toBe("60");
    expect(await page.locator(".compared").isVisible()).toBe(true);
  });

  test("a setting that cannot be planned says why, and leaves no figures behind", async () => {
    await start(brut);
    await slider("Sweetness wanted").focus();
    await page.keyboard.press("Home");
    await frame(page);
    expect(await page.locator(".moved .problem").textContent()).toBe(
      "Sweetness wanted is 0; the wine already holds 0.6 g/L; give a target of at least that",
    );
    expect(await page.locator(".compared tbody tr").count()).toBe(0);
    expect(await page.getByRole("button", { name: "Keep this variant" }).isDisabled()).toBe(true);
    // told once the slider rests
    await page
      .locator(".visually-hidden[role=status]", { hasText: "cannot be planned" })
      .waitFor({ state: "attached" });
  });

  test("three are kept side by side, the fourth is refused, a removed one makes room", async () => {
    await start(brut);
    for (const [index, volume] of ["50", "70", "80"].entries()) {
      await setTo("Volume of base wine", volume);
      await press("Keep this variant");
      expect(await said()).toBe(
        `Kept as variant ${"ABC"[index]}: ${volume} hL of base wine instead of 60 hL.`,
      );
    }
    await press("Keep this variant");
    expect(await said()).toBe("3 variants are kept already. Remove one before you keep another.");
    expect(await page.locator(".side-by-side thead th").allTextContents()).toEqual([
      "Variant A",
      "Variant B",
      "Variant C",
    ]);
    await press("Remove variant B");
    expect(await page.locator(".side-by-side thead th").allTextContents()).toEqual([
      "Variant A",
      "Variant C",
    ]);
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Keep this variant");
    await page.keyboard.press("Enter");
    expect(await page.locator(".side-by-side thead th").count()).toBe(3);
    // wide content scrolls in its own box, which the keyboard reaches
    expect(await overhang(page)).toBe(0);
    await page.getByRole("region", { name: "Variants side by side" }).focus();
    expect(await page.evaluate(() => document.activeElement?.getAttribute("role"))).toBe("region");
  });

  test("put into the form: the inputs with the setting, in words what it is; the sliders are the form's again", async () => {
    await start(brut);
    await setTo("Volume of base wine", "70");
    await setTo("Excess pressure wanted, at 12 °C", "5,5");
    await press("Keep this variant");
    await setTo("Volume of base wine", "30");
    await press("Put variant A into the form");
    const changes = "70 hL of base wine instead of 60 hL; excess pressure 5.5 bar instead of 5.2 bar";
    const expected = atSettings(brut, { volume_hL: 70, pressure_bar: 5.5 });
    expect(await taken(page)).toEqual([[expected, `Variant A is in the form: ${changes}.`]]);
    await follow(page, expected);
    expect(await box("Volume of base wine").inputValue()).toBe("70");
    expect((await cells("Bottles"))[2]).toBe("same");
    expect(await page.locator(".kept").textContent()).toContain("The form holds it.");
    await setTo("Sweetness wanted", "6");
    await press("Put into the form");
    expect((await taken(page))[1]).toEqual([
      atSettings(expected, { target_gL: 6 }),
      "The setting is in the form: sweetness 6 g/L instead of 8.5 g/L.",
    ]);
  });

  test("what was kept stays as it was when the form changes, and says so", async () => {
    await start(brut);
    await setTo("Volume of base wine", "70");
    await press("Keep this variant");
    const before = await page.locator(".side-by-side tbody td").allTextContents();
    await follow(page, { ...brut, tirage: { ...brut.tirage, pressure_bar: 4 } });
    const table = page.locator(".kept");
    expect(await table.textContent()).toContain("Made from an earlier form.");
    const after = await page.locator(".side-by-side tbody td").allTextContents();
    expect(after).toEqual(before);
    // what it would put into the form is all of that form
    await press("Put variant A into the form");
    expect(await taken(page)).toEqual([
      [
        atSettings(brut, { volume_hL: 70 }),
        "Variant A is in the form, with all the rest as it was when it was kept: 70 hL of base wine instead of 60 hL.",
      ],
    ]);
    await follow(page, brut);
    expect(await table.textContent()).not.toContain("Made from an earlier form.");
  });

  test("a setting stays while the form changes elsewhere, and gives way where the form itself changes", async () => {
    await start(brut);
    await setTo("Volume of base wine", "70");
    await follow(page, { ...brut, costs: { ...brut.costs, duty_perBottle: 1 } });
    expect(await box("Volume of base wine").inputValue()).toBe("70");
    await follow(page, { ...brut, baseWine: { ...brut.baseWine, volume_hL: 40 } });
    expect(await box("Volume of base wine").inputValue()).toBe("40");
  });

  test("while the form is to be mended it says so; settings come back with it", async () => {
    await start(null);
    expect(await page.locator(".variants").textContent()).toContain("The form has fields to mend.");
    expect(await page.getByRole("slider").count()).toBe(0);
    await follow(page, zero);
    expect(await page.getByRole("slider").count()).toBe(2);
    await follow(page, rose);
    expect(await page.getByRole("slider").evaluateAll((all) => all.map((each) => each.ariaLabel))).toEqual([
      "Volume of base wine, slider",
      "Dose wanted, slider",
      "Sweetness wanted, slider",
    ]);
  });

  test("in the person's own units, and changed at once with them", async () => {
    await start(brut);
    await page.evaluate(() => (window as unknown as SectionWindow).choose("pressure", "psi"));
    await frame(page);
    const wanted = "Excess pressure wanted, at 12 °C";
    // 5.2 bar at 14.5038 psi each
    expect(await box(wanted).inputValue()).toBe("75.4196");
    await slider(`${wanted}, slider`).focus();
    await page.keyboard.press("ArrowRight");
    await frame(page);
    expect(await box(wanted).inputValue()).toBe("76");
    await press("Put into the form");
    const [[inputs, words]] = (await taken(page)) as [[BatchInputs, string]];
    expect(inputs.tirage.pressure_bar).toBeCloseTo(76 / 14.503_77, 4);
    expect(words).toContain("excess pressure 76 psi instead of 75.42 psi");
  });

  test("labour that grows by half: hours as what-if has them", async () => {
    await start(brut);
    await setTo("Volume of base wine", "90");
    await setTo("Labour that grows with the volume", "50");
    await press("Put into the form");
    const [[inputs, words]] = (await taken(page)) as [[BatchInputs, string]];
    // 36 h, half as much wine again, half of the labour
    expect(inputs.costs.tirage_hours).toBeCloseTo(45, 12);
    expect(words).toContain("50 % of the labour grows with it");
  });

  test("many moves of a slider are shown once a frame", async () => {
    await start(brut);
    const shows = await page.evaluate(async () => {
      const range = document.getElementById("variant-volume_hL-slider") as HTMLInputElement;
      let seen = 0;
      new MutationObserver(() => (seen += 1)).observe(document.querySelector(".compared tbody")!, {
        childList: true,
      });
      for (let value = 30; value <= 90; value += 0.5) {
        range.value = String(value);
        range.dispatchEvent(new Event("input", { bubbles: true }));
      }
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
      return seen;
    });
    expect(shows).toBe(1);
  });

  test.each([320, 400])("at %d px nothing sticks out", async (width) => {
    await start(rose, width);
    await press("Keep this variant");
    await setTo("Volume of base wine", "22,5");
    await press("Keep this variant");
    await setTo("Sweetness wanted", "9");
    await press("Keep this variant");
    // another cellar: each figure then says its own
    await follow(page, { ...rose, tirage: { ...rose.tirage, cellar_C: 14 } });
    await press("Remove variant A");
    await press("Keep this variant");
    expect(await overhang(page)).toBe(0);
    if (process.env.SHOTS) {
      await page.setViewportSize({ width, height: 2000 });
      await page.screenshot({ path: `${process.env.SHOTS}/variants-${width}.png` });
    }
  });
});

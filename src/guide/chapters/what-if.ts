/**
 * What if, and a dosage decision at the bench.
 */
import type { Bench } from "../bench";
import type { Chapter } from "../chapter";
import { ofPane, ofRowsFrom } from "../clip";

const DOSES = "Dose and temperature: expected excess pressure under the crown cap, bar";
const DOSE_ROWS = 12;

const added = (bench: Bench) => bench.pane.getByRole("listitem", { name: "Trial at 6 g/L", exact: true });

export const whatIf: Chapter = {
  key: "what-if",
  title: "What if, and a dosage decision",
  about: "Try before you decide. The form stays as it is until you put something into it.",
  steps: [
    {
      text: "Open **What if** below the steps and set **Excess pressure wanted, at 12 °C** to `6` bar, with the slider or in the box.",
      does: async (bench) => {
        await bench.press("Look around first");
        await bench.turn("1 Base wine");
        await bench.turn("2 Tirage");
        await bench.turn("What if");
        await bench.fill("variant-pressure_bar", "6");
      },
      picture: {
        name: "sliders",
        alt: "The sliders of What if for volume, excess pressure and sweetness; the pressure is set to 6 bar, the form's 5.2 bar is marked below it.",
        of: (bench) =>
          ofPane(bench, bench.pane.locator(".what-if > summary"), bench.pane.locator(".knob").last()),
      },
    },
    {
      text: "**This setting beside the form** shows what it would mean: sugar, pressures with their high ends, cost, and the **Worst check**.",
      picture: {
        name: "compared",
        alt: "A table with the columns Form, Setting and Difference: sugar to weigh 128.18 and 148.39 kg, pressure in the cellar 5.20 and 6.00 bar, on the hottest day 7.96 and 9.16 bar, and so on.",
        of: (bench) => ofPane(bench, bench.pane.locator("table.compared"), bench.pane.locator(".moved")),
      },
    },
    {
      text: "**Keep this variant** keeps up to three, side by side. **Put into the form** takes the setting over; **Back to the form’s values** forgets it.",
      does: async (bench) => {
        await bench.press("Keep this variant");
        await bench.fill("variant-target_gL", "5");
        await bench.press("Keep this variant");
      },
      picture: {
        name: "variants",
        alt: "Variants A and B side by side, each with what it changes and its figures.",
        of: (bench) => ofPane(bench, bench.pane.locator(".kept")),
      },
    },
    {
      text: "The sheet **What-if · Oxlip Hill Brut 2025**, written with the plan, has grids for batch size, dose and temperature, and sweetness. Its boxed cells are yours to change. Here the pressure for each dose at each temperature.",
      does: async (bench) => {
        await bench.writePlan();
        await bench.show("What-if · Oxlip Hill Brut 2025");
      },
      picture: {
        name: "what-if-sheet",
        alt: "The grid of dose and temperature on the What-if sheet: the expected excess pressure for doses in steps and temperatures that can be changed.",
        of: (bench) => ofRowsFrom(bench, DOSES, DOSE_ROWS, "J"),
      },
    },
    {
      text: "For the dosage, open **Dosage bench** at the end of **4 Disgorging and dosage**. It says how many millilitres of liqueur go into each glass of a trial, and which terms the label may carry. Taste at once and again after a rest: glasses lose CO2, and wine tastes sweeter just after dosage.",
      does: async (bench) => {
        await bench.turn("4 Disgorging and dosage");
        await bench.turn("Dosage bench");
      },
      picture: {
        name: "bench",
        alt: "The dosage bench: the volume of a glass, and the trials Zero dosage and 1.5 g/L with what goes into the glass, liqueur a bottle, terms permitted, room in the neck.",
        of: (bench) =>
          ofPane(bench, bench.pane.locator(".bench > summary"), bench.pane.locator(".trial").nth(1)),
      },
    },
    {
      text: "**Add a trial** for another sweetness, here `6` g/L, and note what you taste. **Use this sweetness** puts it into the form, and the form's figures follow.",
      does: async (bench) => {
        await bench.press("Add a trial");
        await bench.page.keyboard.type("6");
        await added(bench).getByLabel("Tasting notes").fill("fresher, still round");
        await bench.settle();
      },
      picture: {
        name: "trial",
        alt: "A trial at 6 g/L: into the glass 0.86 mL, liqueur a bottle, terms extra brut and brut, the note fresher, still round, and the button Use this sweetness.",
        of: (bench) => ofPane(bench, added(bench)),
      },
    },
  ],
};

/**
 * First plan in five minutes.
 */
import type { Chapter } from "../chapter";
import { ofPane, ofRows } from "../clip";

const PLAN = "Plan · Oxlip Hill Brut 2025";

export const firstPlan: Chapter = {
  key: "first-plan",
  title: "First plan in five minutes",
  about:
    "Begin with the invented batch: nothing can go wrong with it. In the workbench the pane is there at once; in Excel, **Plan a batch** on the Home tab opens it.",
  steps: [
    {
      text: "The first time, the pane greets you. **Look around first** leaves the invented batch of estate Oxlip Hill in the form. **Begin a batch of my own** empties it.",
      picture: {
        name: "welcome",
        alt: "The head of the pane with Open a file, Keep as a file and Empty; below it the greeting with its two buttons.",
        of: (bench) => ofPane(bench, bench.pane.locator("header"), bench.pane.locator(".welcome")),
      },
    },
    {
      text: "Press **Look around first**. The form follows the wine: **1 Base wine**, **2 Tirage**, **3 On the lees**, **4 Disgorging and dosage**, **5 Costs**. A click on a title opens the step or closes it. What the step comes to stands at the right.",
      does: async (bench) => {
        await bench.press("Look around first");
        await bench.turn("1 Base wine");
        await bench.turn("2 Tirage");
      },
      picture: {
        name: "steps",
        alt: "The five steps, closed: 8,245 bottles, 128.18 kg of sugar, disgorging on 14 October 2027, 9.39 mL of dosage, 4.50 EUR a bottle.",
        of: (bench) => ofPane(bench, bench.pane.locator("#step-wine"), bench.pane.locator("#step-costs")),
      },
    },
    {
      text: "The line above the button says whether anything is out of bounds. Open **All checks are fine.** to see the figures asked for most: `Sugar to weigh`, the pressure in the cellar and on the hottest day, `Dosage a bottle`. What stands in brackets is the high end: one bottle in forty may lie above it.",
      does: (bench) => bench.turn("All checks are fine"),
      picture: {
        name: "at-a-glance",
        alt: "The figures below the form: sugar 128.18 kg, 8,245 bottles, 5.20 bar at 12 °C, 7.96 bar at 24 °C, dosage 9.39 mL, brut, 4.50 EUR. Below them the button Write the plan.",
        of: (bench) => ofPane(bench, bench.pane.locator(".preview"), bench.pane.locator("button.write")),
      },
    },
    {
      text: `Press **Write the plan**. Four sheets appear: **${PLAN}**, **What-if · Oxlip Hill Brut 2025**, **Register · Oxlip Hill Brut 2025** and **Notes**. The plan begins with the figures asked for most, **Worst check** first.`,
      does: (bench) => bench.writePlan(),
      picture: {
        name: "plan-head",
        alt: "The first rows of the plan: worst check fine, sugar to weigh for the tirage 128.18 kg, bottles to have ready 8,245, pressures, dosage, term, planned disgorging, cost of a saleable bottle.",
        of: (bench) => ofRows(bench, "Worst check", "Cost of a saleable bottle", "F"),
      },
    },
    {
      text: "Go to **Checks**. Each line has a value, a limit and a verdict in words; its source stands to the right. Fine is within the limit, look again is worth a second look, stop is out of bounds.",
      picture: {
        name: "checks",
        alt: "Lines of the checks with value, unit, limit and verdict, from the dryness of the base wine to the months on the lees; every verdict is fine.",
        of: (bench) => ofRows(bench, "What", "Months on the lees at least", "E"),
      },
    },
    {
      text: "Boxed, lightly filled cells are inputs. Type `58` into the cell beside **Base wine**, and sugar, bottles and costs follow, in the other sheets too.",
      does: async (bench) => bench.type(await bench.placeOf("baseWine_volume_hL"), "58"),
      picture: {
        name: "inputs",
        alt: "The section Base wine of the plan: boxed cells for volume, alcohol, sugar, CO2, SO2, acidity and a note; the volume is now 58 hL.",
        of: (bench) => ofRows(bench, "Base wine", "Note on dryness", "F"),
      },
    },
    {
      text: "**Throw the example away** takes these sheets away again. A plan of your own has no such button.",
      does: (bench) => bench.press("Throw the example away"),
    },
    {
      text: "Now your own batch: press **Empty** and fill in the boxes. What is still missing is counted at each step and below the form. A value marked `usual value` is ours, not yours: look at it, and type over it where your cellar is different. The unit of a volume, pressure or temperature can be chosen beside its box.",
      does: async (bench) => {
        await bench.press("Empty");
        await bench.turn("2 Tirage");
      },
      picture: {
        name: "usual-values",
        alt: "The step Tirage of the empty form: fields to mend are marked, CO2 yield and headspace are filled in and marked as usual values.",
        of: (bench) =>
          ofPane(bench, bench.pane.locator("#step-tirage > summary"), bench.field("tirage.headspace_pct")),
      },
    },
    {
      text: "**Keep as a file** keeps the form as a batch file for another day; **Open a file** brings it back. **Save as .xlsx** saves the sheets. The workbench keeps nothing by itself.",
    },
  ],
};

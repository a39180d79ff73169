/**
 * Where a number comes from.
 */
import type { Chapter } from "../chapter";
import { ofPane, ofParts, ofRows } from "../clip";

const HELP_WIDTH = 800;

export const behindTheNumbers: Chapter = {
  key: "behind-the-numbers",
  title: "The numbers behind it",
  about: "Check the first numbers by hand. Everything needed for that is shown.",
  steps: [
    {
      text: "Write a plan and select a cell with a figure, here **Sugar to weigh** among the results of the tirage. Open **Working of B57** in the pane: the call with the sheet's own numbers, the steps with the numbers put in, then the constants with their sources.",
      does: async (bench) => {
        await bench.press("Look around first");
        await bench.writePlan();
        await bench.selectFor(await bench.placeOf("plan_tirageSugar_kg"), "Working of B57");
        await bench.turn("Working of");
      },
      picture: {
        name: "working",
        alt: "The working of cell B57: MOUSSE.TIRAGE.SUGAR with its arguments, numbered steps from the volume to the sugar to weigh, two constants and their sources.",
        of: (bench) => ofPane(bench, bench.pane.locator("details.working")),
      },
    },
    {
      text: "A mark follows each source. Read: seen in the published text. Derived: worked out from read figures. Secondary: read in a text about it. Memory: recalled and not seen again. Practice: common practice without a source. The sheet **Notes** lists every regulation figure under **Limits** and the headings below it, with the day it was recorded. Regulation changes; a limit can be typed over in the plan.",
      does: (bench) => bench.show("Notes"),
      picture: {
        name: "notes",
        alt: "The section Limits of the sheet Notes: what, rules, value, unit and source, for example rise of total alcohol at tirage at most 1.5 % vol, Delegated Regulation (EU) 2019/934 annex II, read.",
        of: (bench) => ofRows(bench, "Limits", "Base wine's alcohol, to", "F"),
      },
    },
    {
      text: "**Functions** in the pane finds a function by words of the trade. Here `remuage` was typed under **Search for a function**. Choose one, fill in its arguments, and put the call into the selected cell.",
      does: async (bench) => {
        await bench.turn("1 Base wine");
        await bench.turn("2 Tirage");
        await bench.turn("Functions");
        await bench.pane.getByLabel("Search for a function").fill("remuage");
        await bench.settle();
      },
      picture: {
        name: "functions",
        alt: "The list of functions after a search for remuage: three functions of the family Riddling.",
        of: (bench) => ofPane(bench, bench.pane.locator("details.functions")),
      },
    },
    {
      text: "Every function has a page of [help](../help/index.html): what it gives, its arguments with their ranges, equation, source, an example. Below **The example, step by step** the example is worked out in full. In Excel the tip of the function links to it.",
      does: (bench) => bench.lookAt("help/tirage.pressure.html", HELP_WIDTH),
      picture: {
        name: "help",
        alt: "The help page of MOUSSE.TIRAGE.PRESSURE: a caution about bursting bottles, a table of the arguments with units and ranges, what it gives, equation, source and example.",
        of: (bench) => ofParts(bench, bench.view.locator("h1"), bench.view.locator("main > dl")),
      },
    },
  ],
};

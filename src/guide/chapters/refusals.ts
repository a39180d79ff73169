/**
 * What a refusal says: at a field, in a check, in a cell.
 */
import type { Chapter } from "../chapter";
import { ofPane } from "../clip";

export const refusals: Chapter = {
  key: "refusals",
  title: "Read a refusal",
  about:
    "Mousse never guesses and never cuts a number to size. Where it cannot answer, it says what was given and what is allowed.",
  steps: [
    {
      text: "A field to mend. Here `106` was typed for **Alcohol**, the point forgotten: `Alcohol is 106; give 5 to 16 % vol`. The step counts what is to mend, and the plan cannot be written until then.",
      does: async (bench) => {
        await bench.press("Look around first");
        await bench.fill("baseWine.alcohol_vol", "106");
      },
      picture: {
        name: "to-mend",
        alt: "The field Alcohol with 106 in it, framed in red, and below it the sentence that says what is allowed.",
        of: (bench) => ofPane(bench, bench.field("baseWine.volume_hL"), bench.field("baseWine.sugar_gL")),
      },
    },
    {
      text: "Below the form it says how many fields are to mend, and where: `1 field to mend before there is a plan: Base wine 1.`",
      picture: {
        name: "to-mend-count",
        alt: "The foot of the pane: one field to mend before there is a plan; the button Write the plan is grey.",
        of: (bench) => ofPane(bench, bench.pane.locator(".preview"), bench.pane.locator("button.write")),
      },
    },
    {
      text: "With 10.6 again there is a plan, and the checks judge it. Here `36` is typed for **Hottest temperature in storage**. The pressure then passes the rating that was typed in from the glass maker's sheet: stop. The drawing shows from which temperature on.",
      does: async (bench) => {
        await bench.fill("baseWine.alcohol_vol", "10.6");
        await bench.fill("tirage.hottest_C", "36");
      },
      picture: {
        name: "stop",
        alt: "What the tirage comes to, with the warning: stop, highest pressure in storage, glass rating 11 bar: 12.4. Below it the curve of pressure against temperature, which crosses the dashed line of the rating.",
        of: (bench) =>
          ofPane(
            bench,
            bench.pane.locator("#step-tirage .outcome"),
            bench.pane.locator("#step-tirage .picture"),
          ),
      },
    },
    {
      text: "Below the form stands every check that is not fine, the worst first. Look again means: worth a second look. 36 °C is beyond the range for which the model is taken as good. A plan with a stop can be written all the same; the verdict stands in it.",
      does: (bench) => bench.turn("Stop:"),
      picture: {
        name: "findings",
        alt: "The figures of the form and below them two findings: a stop for the pressure, a look again for the warmest day.",
        of: (bench) => ofPane(bench, bench.pane.locator(".preview")),
      },
    },
    {
      text: "A cell with `#VALUE!`: an argument is outside its range. Here `=MOUSSE.TIRAGE.PRESSURE(24, 85, 10.5)` was typed. Select the cell, and the pane says why: `temperature_C is 85; give -5 to 45 °C`.",
      does: async (bench) => {
        await bench.type("B2", "=MOUSSE.TIRAGE.PRESSURE(24, 85, 10.5)");
        await bench.selectFor("B2", "Why B2 refuses");
      },
      picture: {
        name: "value-error",
        alt: "Why B2 refuses: the call, then temperature_C is 85; give -5 to 45 °C.",
        of: (bench) => ofPane(bench, bench.pane.locator("details.working")),
      },
    },
    {
      text: "A cell with `#N/A`: each argument is allowed, but together they have no answer. A wine that holds 9 g/L cannot be dosed to 8. Read **Why B3 refuses** for what would make an answer possible.",
      does: async (bench) => {
        await bench.type("B3", "=MOUSSE.DOSAGE.VOLUME(750, 9, 8, 600)");
        await bench.selectFor("B3", "Why B3 refuses");
      },
      picture: {
        name: "no-answer",
        alt: "Why B3 refuses: target_gL is 8; the wine already holds 9 g/L; give a target of at least that.",
        of: (bench) => ofPane(bench, bench.pane.locator("details.working")),
      },
    },
  ],
};

/**
 * A plan for someone without the add-in.
 */
import { readFileSync } from "node:fs";
import type { Bench } from "../bench";
import type { Chapter } from "../chapter";
import { ofPane, ofParts, ofRowsFrom } from "../clip";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const PLAN = "Plan · Oxlip Hill Brut 2025";
const WORKINGS = "Workings, for programs without the add-in";
const SHOWN_WORKINGS = 10;

/** What was saved last. */
const saved = new WeakMap<Bench, string>();

export const bookkeeper: Chapter = {
  key: "bookkeeper",
  title: "Send it to the bookkeeper",
  about:
    "The bookkeeper has a spreadsheet program, but not Mousse. The plan can be written so that every number in it is worked out in plain formulas.",
  steps: [
    {
      text: "Beside **Formulas**, choose **for any program** before you write the plan. Excel remembers the choice with the workbook.",
      does: async (bench) => {
        await bench.press("Look around first");
        await bench.box("formulas").selectOption({ label: "for any program" });
      },
      picture: {
        name: "formulas-choice",
        alt: "The foot of the pane: Write the plan, and below it Formulas with the choice for any program.",
        of: (bench) => ofPane(bench, bench.pane.locator("button.write"), bench.pane.locator(".formulas")),
      },
    },
    {
      text: `Press **Write the plan**. The numbers are the same as ever; no cell calls a function of Mousse. At the end of the sheet stand the **${WORKINGS}**: the constants, then the steps, each in a cell of its own. The sources are in the plan's checks and on the sheet **Notes**.`,
      does: (bench) => bench.writePlan(),
      picture: {
        name: "workings",
        alt: "The beginning of the workings at the end of the plan: constants with their values and units, then the first step, a temperature in kelvin.",
        of: (bench) => ofRowsFrom(bench, WORKINGS, SHOWN_WORKINGS, "C"),
      },
    },
    {
      text: "Press **Save as .xlsx** and send the file. It opens with all its numbers, and follows its inputs, in Excel without the add-in, in LibreOffice and in others.",
      does: async (bench) => {
        const download = await bench.download(() => bench.press("Save as .xlsx"));
        saved.set(bench, await download.path());
      },
      picture: {
        name: "saved",
        alt: "The bar above the spreadsheet says: Saved as mousse-season.xlsx, with the numbers as they stand. Beside it values only and Save as .xlsx.",
        of: (bench) => ofParts(bench, bench.page.locator("#message"), bench.page.locator("#save")),
      },
    },
    {
      text: `What comes back, with actual figures or another price typed in, is opened with **Open a file**. One plan goes straight into the form; of several you choose. \`Read from “${PLAN}”\` says where it came from. Choose **with Mousse** again and write it, and it is a plan of your workbook.`,
      does: async (bench) => {
        await bench.page.locator("#batch-file").setInputFiles({
          name: "from-the-bookkeeper.xlsx",
          mimeType: XLSX,
          buffer: readFileSync(saved.get(bench)!),
        });
        await bench.said("Read from");
      },
      picture: {
        name: "opened",
        alt: "The pane says from which sheet of from-the-bookkeeper.xlsx it has read; a button brings the form back as it was.",
        of: (bench) => ofPane(bench, bench.pane.locator(".replaced")),
      },
    },
    {
      text: "Numbers that are to stand still: tick **values only** beside the button before you save. Each result is then saved as a number, with its formula as a note on the cell. One sheet of the workbook can be made so under **A sheet as values only**, with **Keep its values only**; you are asked first.",
      does: async (bench) => {
        await bench.page.locator("#values").check();
        await bench.turn("A sheet as values only");
        await bench.box("freeze-sheet").selectOption({ label: PLAN });
      },
      picture: {
        name: "values-only",
        alt: "The section A sheet as values only, with the sheet to choose and the button Keep its values only.",
        of: (bench) => ofPane(bench, bench.pane.locator("details.freeze")),
      },
    },
  ],
};

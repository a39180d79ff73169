/**
 * A season: all plans of a workbook in one sheet.
 */
import type { Chapter } from "../chapter";
import { ofPane, ofRows } from "../clip";

const BATCHES = ["Oxlip Hill Brut 2025", "Oxlip Hill Rosé 2025", "Oxlip Hill Magnum Zero 2024"];

export const season: Chapter = {
  key: "season",
  title: "A season",
  about: "For the estate manager: what must be ordered and done next, what is out of bounds, what it costs.",
  steps: [
    {
      text: "Write a plan for each batch. Here the three invented ones are written, each chosen under **Examples …**. **Plans in the workbook** lists them. **Read into the form** brings one back, to be changed there and updated in its sheet.",
      does: async (bench) => {
        await bench.press("Look around first");
        for (const label of BATCHES) {
          await bench.pane.locator("select.examples").selectOption({ label });
          await bench.writePlan();
        }
        await bench.turn("Plans in the workbook");
      },
      picture: {
        name: "plans",
        alt: "The section Plans in the workbook with the list of plans and the buttons Read into the form, Write the season and Refresh the list.",
        of: (bench) => ofPane(bench, bench.pane.locator("details.plans")),
      },
    },
    {
      text: "Press **Write the season**. The sheet **Season** begins with **Batches**: a line for each plan, totals below. It reads the plan sheets and follows them. A plan written later is not in it: write the season again.",
      does: async (bench) => {
        await bench.press("Write the season");
        await bench.said("“Season”, from 3 plans");
        await bench.show("Season");
      },
      picture: {
        name: "season",
        alt: "The table Batches of the season: three batches with bottle size, base wine, tirage sugar, bottles, pressures and tirage date, and the totals.",
        of: (bench) => ofRows(bench, "Batches", "Season", "I"),
      },
    },
    {
      text: "**Work month by month** is the calendar: wine to fill, bottles to riddle, to disgorge and to release, hours of labour, money to pay. Below it the costs stand by their parts.",
      picture: {
        name: "calendar",
        alt: "The calendar from March 2026 on: tirage in hL, bottles to fill, to riddle, to disgorge, released, labour in hours and the amount to pay, month by month.",
        of: (bench) => ofRows(bench, "Work month by month", "2026-12", "I"),
      },
    },
    {
      text: "**Orders** says what to order, in packs. Batches that agree on a pack size share packs: **Packs together** is what to order, **Packs saved** what that spares.",
      picture: {
        name: "orders",
        alt: "The orders of the season: sugar, yeast, bottles, caps, corks and more, each with what is needed, pack size, packs together, packs batch by batch, packs saved, cost and the day it is first needed.",
        of: (bench) => ofRows(bench, "Orders", "Cartons, 1500 mL", "I"),
      },
    },
  ],
};

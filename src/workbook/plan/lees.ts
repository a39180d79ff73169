/**
 * Section On the lees: how long, and the dates that follow.
 */
import { cell, monthsAfter, mousse } from "../formula";
import { readingRows } from "./readings";
import { FORMATS, heading, input, inputRow, resultRow, type Section } from "./rows";

export const leesSection: Section = (batch) => {
  const { dates } = batch.plan;
  return [
    ...heading("On the lees"),
    inputRow("lees.lees_months", batch),
    inputRow("lees.rest_months", batch),
    resultRow({
      name: "plan_earliestDisgorging",
      label: "Earliest disgorging by the designation",
      format: FORMATS.date,
      value: dates.earliestDisgorging,
      formula: mousse("AGEING.EARLIEST", input("batch.tirageDate"), input("batch.designation")),
      note: "the local text of the designation decides",
    }),
    resultRow({
      name: "plan_disgorging",
      label: "Planned disgorging",
      format: FORMATS.date,
      value: dates.disgorging,
      formula: monthsAfter(input("batch.tirageDate"), input("lees.lees_months")),
    }),
    resultRow({
      name: "plan_release",
      label: "Planned release",
      format: FORMATS.date,
      value: dates.release,
      formula: monthsAfter(cell("plan_disgorging"), input("lees.rest_months")),
    }),
    ...readingRows(batch),
  ];
};

/**
 * AGEING workings: the row of the table, and the last-day rule.
 */
import { addMonths, dateFromSerial, isoFromSerial } from "../cellar/ageing";
import { domains } from "../cellar/domains";
import { designationNamed, designations, type Designation } from "../cellar/rules/designations";
import { sourceText } from "../cellar/rules/source";
import { explainer, type Notebook } from "./notebook";
import { LAST_DAY_RULE, ofRow } from "./sources";

const CLOCKS = ["lees", "total"] as const;
const LOCAL_TEXT = "The local text decides.";

function rowUsed(on: Notebook): { row: Designation; months: number } {
  const row = designationNamed(on.raw("designation"), "designation");
  on.said("designation", "Designation", row.name);
  const clock = on.word(
    "clock",
    CLOCKS,
    'Which clock: "lees", tirage to disgorging, or "total", tirage to release',
    "lees",
  );
  const months = clock === "lees" ? row.leesMonths : row.totalMonths;
  on.say(`Row used: "${row.name}"`, `${row.leesMonths} months on the lees, ${row.totalMonths} in all`);
  on.found(clock === "lees" ? "Asked for on the lees" : "Asked for in all", months, "months");
  return { row, months };
}

export const ageing = {
  "AGEING.MINIMUM": explainer("designation clock", (on) => {
    const { row, months } = rowUsed(on);
    return { result: months, unit: "months", sources: [ofRow(row.source)], cautions: [LOCAL_TEXT] };
  }),

  "AGEING.EARLIEST": explainer("tirage_date designation clock", (on) => {
    const start = on.number("tirage_date", domains.dateSerial, "Tirage date");
    on.reworded("tirage_date", isoFromSerial(start));
    const { row, months } = rowUsed(on);
    const result = addMonths(start, months);
    const sameDay = dateFromSerial(result).day === dateFromSerial(start).day;
    on.found(
      sameDay
        ? `${months} months from ${isoFromSerial(start)}, on the same day of the last month`
        : `${months} months from ${isoFromSerial(start)}; the last month has no such day, so on its last`,
      result,
      "",
      isoFromSerial(result),
    );
    return {
      result,
      unit: "spreadsheet date",
      sources: [ofRow(row.source), LAST_DAY_RULE],
      cautions: [LOCAL_TEXT],
    };
  }),

  "AGEING.DESIGNATIONS": explainer("", (on) => {
    on.found("The table itself, a row for each designation", designations.length, "rows");
    for (const { name, leesMonths, totalMonths, source } of designations)
      on.say(`${name}: ${sourceText(source)}`, `${leesMonths} months on the lees, ${totalMonths} in all`);
    const sources = new Map(designations.map(({ source }) => [source.text, ofRow(source)]));
    return {
      result: designations.map(({ name, leesMonths, totalMonths, source }) => [
        name,
        leesMonths,
        totalMonths,
        sourceText(source),
      ]),
      unit: "rows of name, months on the lees, months in all, source",
      sources: [...sources.values()],
      cautions: [LOCAL_TEXT],
    };
  }),
};

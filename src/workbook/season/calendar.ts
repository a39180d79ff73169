/**
 * The work month by month, what is to be paid, and the money tied up.
 */
import {
  MOST_MONTHS,
  batchMoney,
  monthNumber,
  seasonMonths,
  type SeasonMonth,
} from "../../cellar/season/calendar";
import { seasonTotals } from "../../cellar/season/season";
import { builtin, cell, minus, operation, plus, times, type Expression } from "../formula";
import type { LinkedPlan } from "../linked-plan";
import type { Row } from "../layout";
import { FORMATS, columnHeads, resultCell, text } from "../plan/rows";
import { unlessSeveral } from "./batch-table";
import { calendarColumns } from "./calendar-columns";
import { monthNumberOf } from "./money-table";
import { columnOf, seasonName } from "./names";

const monthCell = (index: number, key: string) => seasonName("month", index + 1, key);

export function calendarRows(plans: readonly LinkedPlan[]): Row[] {
  const months = seasonMonths(plans);
  const canAdd = seasonTotals(plans).cost !== null;
  const unlessMoney = (money: boolean, value: number) => (money && !canAdd ? "" : value);
  const all = (key: string) => columnOf(key, plans.length);
  const columns = calendarColumns(all);
  const seriesOf = (key: string) =>
    ({ kind: "range", first: monthCell(0, key), last: monthCell(months.length - 1, key) }) as const;
  return [
    { ...columnHeads("Month", ">Year·12 + month", ...columns.map(({ head }) => head)), lines: 2 },
    ...months.map((month, index): Row => {
      const number = cell(monthCell(index, "number"));
      return {
        cells: [
          resultCell({
            key: monthCell(index, "date"),
            value: month.date,
            style: "unit",
            format: "yyyy-mm",
            formula:
              index === 0
                ? firstMonth(all("tirage"), all("riddling"))
                : nextMonth(cell(monthCell(index - 1, "date"))),
          }),
          resultCell({
            key: monthCell(index, "number"),
            value: monthNumber(month.date),
            format: "0",
            formula: monthNumberOf(cell(monthCell(index, "date"))),
          }),
          ...columns.map(({ key, format, money, formula }) =>
            resultCell({
              name: monthCell(index, key),
              value: unlessMoney(money, month[key]),
              format,
              formula: money ? unlessSeveral(formula(number)) : formula(number),
            }),
          ),
        ],
      };
    }),
    {
      cells: [
        text("All months", "total"),
        text("", "total"),
        ...columns.map(({ key, format, money, isState }) => {
          if (isState) return text("", "total");
          const added = builtin("SUM", seriesOf(key));
          return resultCell({
            name: seasonName("months", key),
            value: unlessMoney(
              money,
              months.reduce((sum, month) => sum + month[key], 0),
            ),
            format,
            style: "total",
            formula: money ? unlessSeveral(added) : added,
          });
        }),
      ],
    },
    ...notShown(plans, months, canAdd),
  ];
}

/** Whether the months shown hold all of it: dates can be moved after the sheet was written. */
function notShown(plans: readonly LinkedPlan[], months: readonly SeasonMonth[], canAdd: boolean): Row[] {
  const last = monthNumber(months.at(-1)!.date);
  const beyond = plans.filter((plan) => batchMoney(plan).releaseMonth > last).length;
  const sums = months.reduce((sum, { toPay, interest }) => sum + toPay + interest, 0);
  const cost = seasonTotals(plans).cost ?? 0;
  return [
    {
      cells: [
        text("Releases beyond the last month", "label"),
        resultCell({
          name: "season_beyond",
          value: beyond,
          format: FORMATS.whole,
          formula: builtin(
            "SUMPRODUCT",
            times(
              1,
              operation(
                columnOf("releaseMonth", plans.length),
                ">",
                cell(monthCell(months.length - 1, "number")),
              ),
            ),
          ),
        }),
        text("batches", "unit"),
        text(`With some months to spare, at most ${MOST_MONTHS}; write the season again for more.`, "note"),
      ],
    },
    {
      cells: [
        text("Cost not in the months above", "label"),
        resultCell({
          name: "season_notShown",
          value: canAdd ? Math.round((cost - sums) * 10) / 10 : "",
          format: FORMATS.one,
          formula: unlessSeveral(
            builtin(
              "ROUND",
              minus(
                cell(seasonName("total", "cost")),
                plus(cell(seasonName("months", "toPay")), cell(seasonName("months", "interest"))),
              ),
              1,
            ),
          ),
        }),
        text("", "unit"),
        text(
          "Nothing, but for the rounding of each batch's parts. Money tied up: what was paid for the tirage from then on, for the finishing from disgorging on, with interest; not storage, duty and packing.",
          "note",
        ),
      ],
    },
  ];
}

const firstMonth = (...days: readonly Expression[]) => {
  const first = builtin("MIN", ...days);
  return builtin("DATE", builtin("YEAR", first), builtin("MONTH", first), 1);
};
const nextMonth = (date: Expression) =>
  builtin("DATE", builtin("YEAR", date), plus(builtin("MONTH", date), 1), 1);

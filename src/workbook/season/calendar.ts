/**
 * The work month by month, what is to be paid, and the money tied up.
 */
import { MONTHS_PER_YEAR } from "../../cellar/costing";
import {
  MOST_MONTHS,
  batchMoney,
  monthNumber,
  seasonMonths,
  type SeasonMonth,
} from "../../cellar/season/calendar";
import { seasonTotals } from "../../cellar/season/season";
import { builtin, cell, divided, minus, operation, plus, times, type Expression } from "../formula";
import type { LinkedPlan } from "../linked-plan";
import type { Row } from "../layout";
import { FORMATS, columnHeads, resultCell, text } from "../plan/rows";
import { unlessSeveral } from "./batch-table";
import { monthNumberOf } from "./money-table";
import { columnOf, seasonName } from "./names";

const monthCell = (index: number, key: string) => seasonName("month", index + 1, key);

export function calendarRows(plans: readonly LinkedPlan[]): Row[] {
  const months = seasonMonths(plans);
  const canAdd = seasonTotals(plans).cost !== null;
  const unlessMoney = (money: boolean, value: number) => (money && !canAdd ? "" : value);
  const all = (key: string) => columnOf(key, plans.length);
  const columns = columnsFor(all);
  const seriesOf = (key: string) =>
    ({ kind: "range", first: monthCell(0, key), last: monthCell(months.length - 1, key) }) as const;
  return [
    { ...columnHeads("Month", ">No.", ...columns.map(({ head }) => head)), lines: 2 },
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

interface Column {
  readonly key: Exclude<keyof SeasonMonth, "date">;
  readonly head: string;
  readonly format: string;
  readonly money: boolean;
  /** How things stand in a month, so that months are not added. */
  readonly isState?: boolean;
  readonly formula: (month: Expression) => Expression;
}

function columnsFor(all: (key: string) => Expression): readonly Column[] {
  const inMonth = (monthKey: string, amountKey: string) => (month: Expression) =>
    builtin("SUMIF", all(monthKey), month, all(amountKey));
  const factor = operation(1, "+", divided(all("interestPct"), 100));
  // as an operator: some programs take no list in the function POWER
  const power = (exponent: Expression) => operation(factor, "^", exponent);
  /** Amounts from one month on, grown by the interest of the months before. */
  const grown = (amount: Expression, from: string, month: Expression) =>
    builtin(
      "SUMPRODUCT",
      times(
        operation(all(from), "<", month),
        operation(all("releaseMonth"), ">=", month),
        amount,
        power(divided(minus(minus(month, all(from)), 1), MONTHS_PER_YEAR)),
      ),
    );
  const interestOf = (amount: Expression, from: string, month: Expression) =>
    builtin(
      "SUMPRODUCT",
      times(
        operation(all(from), "<", month),
        operation(all("releaseMonth"), ">=", month),
        amount,
        power(divided(minus(minus(month, all(from)), 1), MONTHS_PER_YEAR)),
        minus(power(divided(1, MONTHS_PER_YEAR)), 1),
      ),
    );
  const atTirage = all("paidAtTirage");
  const atDisgorging = plus(all("paidAtDisgorging"), all("paidAtRiddling"));
  const storage = (month: Expression) =>
    builtin(
      "SUMPRODUCT",
      times(
        all("storageAMonth"),
        plus(
          times(operation(all("tirageMonth"), "<", month), operation(all("releaseMonth"), ">=", month)),
          times(operation(all("tirageMonth"), "=", month), operation(all("releaseMonth"), "=", month)),
        ),
      ),
    );
  return [
    {
      key: "tirageHl",
      head: ">Tirage, hL",
      format: FORMATS.twoOrDash,
      money: false,
      formula: inMonth("tirageMonth", "volume_hL"),
    },
    {
      key: "filled",
      head: ">Bottles to fill",
      format: FORMATS.wholeOrDash,
      money: false,
      formula: inMonth("tirageMonth", "bottles"),
    },
    {
      key: "riddling",
      head: ">To riddle, bottles",
      format: FORMATS.wholeOrDash,
      money: false,
      formula: inMonth("riddlingMonth", "bottles"),
    },
    {
      key: "disgorging",
      head: ">To disgorge, bottles",
      format: FORMATS.wholeOrDash,
      money: false,
      formula: inMonth("disgorgingMonth", "finished"),
    },
    {
      key: "released",
      head: ">Released, bottles",
      format: FORMATS.wholeOrDash,
      money: false,
      formula: inMonth("releaseMonth", "saleable"),
    },
    {
      key: "hours",
      head: ">Labour, h",
      format: FORMATS.twoOrDash,
      money: false,
      formula: (month) =>
        plus(
          inMonth("tirageMonth", "tirageHours")(month),
          inMonth("riddlingMonth", "riddlingHours")(month),
          inMonth("disgorgingMonth", "disgorgingHours")(month),
          inMonth("releaseMonth", "finishingHours")(month),
        ),
    },
    {
      key: "toPay",
      head: ">To pay",
      format: FORMATS.twoOrDash,
      money: true,
      formula: (month) =>
        plus(
          inMonth("tirageMonth", "paidAtTirage")(month),
          inMonth("riddlingMonth", "paidAtRiddling")(month),
          inMonth("disgorgingMonth", "paidAtDisgorging")(month),
          inMonth("releaseMonth", "paidAtRelease")(month),
          storage(month),
        ),
    },
    {
      key: "tiedUp",
      head: ">Money tied up",
      format: FORMATS.twoOrDash,
      money: true,
      isState: true,
      formula: (month) =>
        plus(grown(atTirage, "tirageMonth", month), grown(atDisgorging, "disgorgingMonth", month)),
    },
    {
      key: "interest",
      head: ">Interest",
      format: FORMATS.twoOrDash,
      money: true,
      formula: (month) =>
        plus(interestOf(atTirage, "tirageMonth", month), interestOf(atDisgorging, "disgorgingMonth", month)),
    },
  ];
}

const firstMonth = (...days: readonly Expression[]) => {
  const first = builtin("MIN", ...days);
  return builtin("DATE", builtin("YEAR", first), builtin("MONTH", first), 1);
};
const nextMonth = (date: Expression) =>
  builtin("DATE", builtin("YEAR", date), plus(builtin("MONTH", date), 1), 1);

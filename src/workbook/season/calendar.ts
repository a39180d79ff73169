/**
 * The work month by month, what is to be paid, and the money tied up.
 */
import { MONTHS_PER_YEAR } from "../../cellar/costing";
import { MOST_MONTHS, monthNumber, seasonMonths, type SeasonMonth } from "../../cellar/season/calendar";
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
            formula: index === 0 ? firstMonth(all("tirage")) : nextMonth(cell(monthCell(index - 1, "date"))),
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
    {
      cells: [
        text("Releases beyond the last month", "label"),
        resultCell({
          name: "season_beyond",
          value: 0,
          format: FORMATS.wholeOrDash,
          formula: builtin(
            "SUMPRODUCT",
            times(1, operation(all("releaseMonth"), ">", cell(monthCell(months.length - 1, "number")))),
          ),
        }),
        text("batches", "unit"),
        text(
          `The months shown were counted when this sheet was written, at most ${MOST_MONTHS}. Paid and interest together are the batches' cost, to the rounding of its parts.`,
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
  const power = (exponent: Expression) => builtin("POWER", factor, exponent);
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

const firstMonth = (days: Expression) => {
  const first = builtin("MIN", days);
  return builtin("DATE", builtin("YEAR", first), builtin("MONTH", first), 1);
};
const nextMonth = (date: Expression) =>
  builtin("DATE", builtin("YEAR", date), plus(builtin("MONTH", date), 1), 1);

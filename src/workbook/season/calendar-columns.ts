/**
 * The columns of the calendar: what falls into a month, from the table of each batch's months and money.
 */
import { MONTHS_PER_YEAR } from "../../cellar/costing";
import type { SeasonMonth } from "../../cellar/season/calendar";
import { builtin, divided, minus, operation, plus, times, type Expression } from "../formula";
import { FORMATS } from "../plan/rows";

export interface Column {
  readonly key: Exclude<keyof SeasonMonth, "date">;
  readonly head: string;
  readonly format: string;
  readonly money: boolean;
  /** How things stand in a month, so that months are not added. */
  readonly isState?: boolean;
  readonly formula: (month: Expression) => Expression;
}

export function calendarColumns(all: (key: string) => Expression): readonly Column[] {
  const inMonth = (monthKey: string, amountKey: string) => (month: Expression) =>
    builtin("SUMIF", all(monthKey), month, all(amountKey));
  const factor = operation(1, "+", divided(all("interestPct"), 100));
  // as an operator: some programs take no list in the function POWER
  const power = (exponent: Expression) => operation(factor, "^", exponent);
  /** Amounts from one month on, grown by the interest of the months before. */
  const grown = (amount: Expression, from: string, month: Expression, ...also: readonly Expression[]) =>
    builtin(
      "SUMPRODUCT",
      times(
        operation(all(from), "<", month),
        operation(all("releaseMonth"), ">=", month),
        amount,
        power(divided(minus(minus(month, all(from)), 1), MONTHS_PER_YEAR)),
        ...also,
      ),
    );
  const monthly = minus(power(divided(1, MONTHS_PER_YEAR)), 1);
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
        plus(
          grown(atTirage, "tirageMonth", month, monthly),
          grown(atDisgorging, "disgorgingMonth", month, monthly),
        ),
    },
  ];
}

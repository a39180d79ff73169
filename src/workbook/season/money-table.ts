/**
 * When each batch's money is paid, for the calendar to add up.
 */
import { batchMoney, type BatchMoney } from "../../cellar/season/calendar";
import { MONTHS_PER_YEAR } from "../../cellar/costing";
import { builtin, cell, divided, equals, iff, minus, plus, times, type Expression } from "../formula";
import type { LinkedPlan } from "../linked-plan";
import type { Row } from "../layout";
import { FORMATS, columnHeads, resultCell } from "../plan/rows";
import { batchCell } from "./names";

/** Months counted as year·12 + month, so that they can be compared and subtracted. */
export const monthNumberOf = (date: Expression) =>
  plus(times(builtin("YEAR", date), MONTHS_PER_YEAR), builtin("MONTH", date));

type At = (name: string) => Expression;
const sum = (at: At, ...parts: readonly string[]) => {
  const [first = at(""), ...rest] = parts.map((part) => at(`plan_cost_${part}`));
  return plus(first, ...rest);
};

/** `at` gives a cell of the batch's plan, `here` one of its line in this sheet. */
const COLUMNS: readonly (readonly [
  key: keyof BatchMoney,
  head: string,
  format: string,
  formula: (at: At, here: At) => Expression,
])[] = [
  ["tirageMonth", ">Tirage, month no.", "0", (_, here) => monthNumberOf(here("tirage"))],
  ["riddlingMonth", ">First turn, month no.", "0", (_, here) => monthNumberOf(here("riddling"))],
  ["disgorgingMonth", ">Disgorging, month no.", "0", (_, here) => monthNumberOf(here("disgorging"))],
  ["releaseMonth", ">Release, month no.", "0", (_, here) => monthNumberOf(here("release"))],
  [
    "paidAtTirage",
    ">Paid at tirage",
    FORMATS.two,
    (at) => sum(at, "baseWine", "tirageMaterials", "tirageLabour"),
  ],
  ["paidAtRiddling", ">At riddling", FORMATS.two, (at) => at("plan_cost_riddlingLabour")],
  [
    "paidAtDisgorging",
    ">At disgorging",
    FORMATS.two,
    (at) => sum(at, "finishingWine", "finishingMaterials", "disgorgingLabour"),
  ],
  ["paidAtRelease", ">At release", FORMATS.two, (at) => sum(at, "finishingLabour", "duty")],
  [
    "storageAMonth",
    ">Storage a month",
    FORMATS.two,
    (at, here) =>
      divided(
        at("plan_cost_storage"),
        iff(
          equals(here("releaseMonth"), here("tirageMonth")),
          1,
          minus(here("releaseMonth"), here("tirageMonth")),
        ),
      ),
  ],
  ["interestPct", ">Interest, % a year", "General", (at) => at("costs_interest_pct")],
  ["leesDays", ">On the lees, days", FORMATS.whole, (_, here) => minus(here("disgorging"), here("tirage"))],
  ["restDays", ">Rest, days", FORMATS.whole, (_, here) => minus(here("release"), here("disgorging"))],
  ["finished", ">To disgorge, bottles", FORMATS.whole, (at) => at("plan_finished_bottles")],
  ["tirageHours", ">Tirage, h", FORMATS.one, (at) => at("costs_tirage_hours")],
  ["riddlingHours", ">Riddling, h", FORMATS.one, (at) => at("plan_costs_riddling_hours")],
  ["disgorgingHours", ">Disgorging, h", FORMATS.one, (at) => at("costs_disgorging_hours")],
  ["finishingHours", ">Finishing, h", FORMATS.one, (at) => at("costs_finishing_hours")],
];

export function moneyTable(plans: readonly LinkedPlan[]): Row[] {
  return [
    { ...columnHeads("Batch", ...COLUMNS.map(([, head]) => head)), lines: 2 },
    ...plans.map((linked, index) => {
      const money = batchMoney(linked);
      const number = index + 1;
      const at: At = (name) => cell(`${number}:${name}`);
      const here: At = (key) => cell(batchCell(number, key));
      return {
        cells: [
          resultCell({ value: linked.inputs.batch.name, formula: here("name"), style: "label" }),
          ...COLUMNS.map(([key, , format, formula]) =>
            resultCell({
              key: batchCell(number, key),
              value: money[key],
              formula: formula(at, here),
              format,
            }),
          ),
        ],
      };
    }),
  ];
}

/**
 * The table of all batches, one line each, and the totals.
 */
import { SEVERAL_CURRENCIES, seasonTotals } from "../../cellar/season/season";
import { builtin, cell, divided, equals, iff, operation, times, type Expression } from "../formula";
import type { CellValue } from "../data";
import type { LinkedPlan } from "../linked-plan";
import type { CellSpec, Row } from "../layout";
import { worstOfWords } from "../plan/checks";
import { FORMATS, columnHeads, placed, resultCell, text } from "../plan/rows";
import { batchCell, columnOf, seasonName } from "./names";

interface Column {
  readonly key: string;
  readonly head: string;
  readonly format: string;
  /** The plan's cell that stands here. */
  readonly from: string;
  readonly value: (linked: LinkedPlan) => CellValue;
  /** How the column's total is made; nothing where a total would mean nothing. */
  readonly total?: "sum" | "money" | "perBottle" | "worst" | "currency";
  readonly style?: "result" | "verdict" | "label";
  readonly judged?: boolean;
  /** In signs, where the usual width is too narrow. */
  readonly width?: number;
}

const field = (dotted: string) => placed(dotted).name;
/** Money in several currencies is not added. */
export const unlessSeveral = (amount: Expression) =>
  iff(equals(cell("season_currency"), SEVERAL_CURRENCIES), "", amount);

const COLUMNS: readonly Column[] = [
  {
    key: "name",
    head: "Batch",
    format: "General",
    from: field("batch.name"),
    value: ({ inputs }) => inputs.batch.name,
    style: "label",
  },
  {
    key: "bottle_mL",
    head: ">Bottle, mL",
    format: FORMATS.whole,
    from: field("batch.bottle_mL"),
    value: ({ inputs }) => inputs.batch.bottle_mL,
  },
  {
    key: "volume_hL",
    head: ">Base wine, hL",
    format: FORMATS.two,
    from: field("baseWine.volume_hL"),
    value: ({ inputs }) => inputs.baseWine.volume_hL,
    total: "sum",
  },
  {
    key: "sugar_kg",
    head: ">Tirage sugar, kg",
    format: FORMATS.two,
    from: "plan_tirageSugar_kg",
    value: ({ plan }) => plan.tirage.sugarKg,
    total: "sum",
  },
  {
    key: "bottles",
    head: ">Bottles filled",
    format: FORMATS.whole,
    from: "plan_bottles",
    value: ({ plan }) => plan.tirage.bottles,
    total: "sum",
  },
  {
    key: "saleable",
    head: ">Bottles for sale",
    format: FORMATS.whole,
    from: "plan_saleable_bottles",
    value: ({ plan }) => plan.costs.saleableBottles,
    total: "sum",
  },
  {
    key: "cellar_bar",
    head: ">Cellar, bar",
    format: FORMATS.two,
    from: "plan_pressure_cellar_bar",
    value: ({ plan }) => plan.tirage.pressures.cellar.expected,
  },
  {
    key: "hottest_bar",
    head: ">Hottest, high, bar",
    format: FORMATS.two,
    from: "plan_pressure_hottest_high_bar",
    value: ({ plan }) => plan.tirage.pressures.hottest.high,
  },
  {
    key: "tirage",
    head: ">Tirage",
    format: FORMATS.date,
    from: field("batch.tirageDate"),
    value: ({ plan }) => plan.dates.tirage,
  },
  {
    key: "riddling",
    head: ">First turn",
    format: FORMATS.date,
    from: "plan_riddlingStart",
    value: ({ plan }) => plan.riddling.start,
  },
  {
    key: "disgorging",
    head: ">Disgorging",
    format: FORMATS.date,
    from: "plan_disgorging",
    value: ({ plan }) => plan.dates.disgorging,
  },
  {
    key: "release",
    head: ">Release",
    format: FORMATS.date,
    from: "plan_release",
    value: ({ plan }) => plan.dates.release,
  },
  {
    key: "currency",
    head: "~Currency",
    format: "General",
    from: field("batch.currency"),
    value: ({ inputs }) => inputs.batch.currency,
    total: "currency",
    style: "verdict",
    width: 17,
  },
  {
    key: "cost",
    head: ">Cost",
    format: FORMATS.two,
    from: "plan_cost_total",
    value: ({ plan }) => plan.costs.total,
    total: "money",
  },
  {
    key: "perBottle",
    head: ">A bottle for sale",
    format: FORMATS.two,
    from: "plan_perBottle",
    value: ({ plan }) => plan.costs.perBottle,
    total: "perBottle",
  },
  {
    key: "worst",
    head: "~Worst check",
    format: "General",
    from: "plan_worst",
    value: ({ plan }) => plan.worst,
    total: "worst",
    style: "verdict",
    judged: true,
  },
];

export const columnWidth = (column: number, usual: number) => COLUMNS[column]?.width ?? usual;

export function batchTable(plans: readonly LinkedPlan[]): Row[] {
  const all = (key: string) => columnOf(key, plans.length);
  const totals = seasonTotals(plans);
  const totalOf = ({ key, total, format, style, judged }: Column): CellSpec | undefined => {
    const made = (value: CellValue, formula: Expression, name = seasonName("total", key)): CellSpec =>
      resultCell({
        name,
        value,
        formula,
        format,
        style: style === "verdict" ? "totalWord" : "total",
        judged,
      });
    switch (total) {
      case undefined:
        return text("", "total");
      case "sum":
        return made(sumOf(key, plans), builtin("SUM", all(key)));
      case "money":
        return made(totals.cost ?? "", unlessSeveral(builtin("SUM", all(key))));
      case "perBottle":
        return made(
          totals.perBottle ?? "",
          unlessSeveral(divided(cell(seasonName("total", "cost")), cell(seasonName("total", "saleable")))),
        );
      case "worst":
        return made(totals.worst, worstOfWords(all(key), plans.length));
      case "currency":
        return made(
          totals.currency,
          iff(
            operation(
              builtin("SUMPRODUCT", times(1, equals(all(key), cell(batchCell(1, key))))),
              "=",
              plans.length,
            ),
            cell(batchCell(1, key)),
            SEVERAL_CURRENCIES,
          ),
          "season_currency",
        );
    }
  };
  return [
    { ...columnHeads(...COLUMNS.map(({ head }) => head)), lines: 2 },
    ...plans.map((linked, index) => ({
      cells: COLUMNS.map(({ key, format, from, value, style = "result", judged }) =>
        resultCell({
          name: batchCell(index + 1, key),
          value: value(linked),
          formula: cell(`${index + 1}:${from}`),
          format,
          style,
          judged,
        }),
      ),
    })),
    { cells: [text("Season", "total"), ...COLUMNS.slice(1).map(totalOf)] },
  ];
}

function sumOf(key: string, plans: readonly LinkedPlan[]): number {
  const { value } = COLUMNS.find((column) => column.key === key)!;
  return plans.reduce((sum, linked) => sum + Number(value(linked)), 0);
}

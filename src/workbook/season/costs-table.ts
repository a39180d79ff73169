/**
 * The parts of each batch's cost, and what really came of it.
 */
import { seasonTotals } from "../../cellar/season/season";
import { builtin, cell, iff, isBlank, type Expression } from "../formula";
import type { LinkedPlan } from "../linked-plan";
import type { Row } from "../layout";
import { PARTS, partName } from "../plan/cost-parts";
import { FORMATS, columnHeads, resultCell, text } from "../plan/rows";
import { unlessSeveral } from "./batch-table";
import { batchCell, columnOf, seasonName } from "./names";

/** The total, and the actual figures beside it. */
const ACTUAL = [
  ["actualCost", ">Actual cost", FORMATS.two, "cost"],
  ["actualFinished", ">Finished, actual", FORMATS.whole, "bottlesFinished"],
] as const;

export function costsTable(plans: readonly LinkedPlan[]): Row[] {
  const canAdd = seasonTotals(plans).cost !== null;
  const sumRow = (key: string, sum: number, format: string, isMoney: boolean) => {
    const added: Expression = builtin("SUM", columnOf(key, plans.length));
    return resultCell({
      name: seasonName("total", key),
      value: isMoney && !canAdd ? "" : sum,
      format,
      style: "total",
      formula: isMoney ? unlessSeveral(added) : added,
    });
  };
  return [
    {
      ...columnHeads("Batch", ...PARTS.map(([, label]) => `>${label}`), ...ACTUAL.map(([, head]) => head)),
      lines: 3,
    },
    ...plans.map((linked, index) => {
      const number = index + 1;
      const { costs } = linked.plan;
      const { actual } = linked.inputs;
      return {
        cells: [
          resultCell({
            value: linked.inputs.batch.name,
            formula: cell(batchCell(number, "name")),
            style: "label",
          }),
          ...PARTS.map(([key]) =>
            resultCell({
              key: batchCell(number, `part_${key}`),
              value: costs[key],
              format: FORMATS.two,
              formula: cell(`${number}:${partName(key)}`),
            }),
          ),
          ...ACTUAL.map(([key, , format, input]) => {
            const there = cell(`${number}:actual_${input}`);
            return resultCell({
              key: batchCell(number, key),
              value: actual[input] ?? "",
              format,
              formula: iff(isBlank(there), "", there),
            });
          }),
        ],
      };
    }),
    {
      cells: [
        text("Season", "total"),
        ...PARTS.map(([key]) =>
          sumRow(
            `part_${key}`,
            plans.reduce((sum, { plan }) => sum + plan.costs[key], 0),
            FORMATS.two,
            true,
          ),
        ),
        ...ACTUAL.map(([key, , format, input]) =>
          sumRow(
            key,
            plans.reduce((sum, { inputs }) => sum + (inputs.actual[input] ?? 0), 0),
            format,
            input === "cost",
          ),
        ),
      ],
    },
  ];
}

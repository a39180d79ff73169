/**
 * What to order for the whole season, in packs, and the needs of each batch that it is added up from.
 */
import {
  SEVERAL_PACKS,
  orderLines,
  orderOf,
  type BatchNeed,
  type OrderLine,
} from "../../cellar/season/orders";
import { seasonTotals } from "../../cellar/season/season";
import { builtin, cell, equals, iff, isNumber, minus, mousse, operation, times } from "../formula";
import type { LinkedPlan } from "../linked-plan";
import type { Row } from "../layout";
import { FORMATS, columnHeads, resultCell, text } from "../plan/rows";
import { unlessSeveral } from "./batch-table";
import { columnOf, seasonName } from "./names";

export type Kind = keyof BatchNeed;
export const keyOf = ({ material, sizeMl }: OrderLine, kind: Kind) =>
  [material, ...(sizeMl === null ? [] : [sizeMl]), kind].join("_");
const FORMAT_OF: Readonly<Record<Kind, string>> = {
  needed: FORMATS.two,
  pack: "General",
  packs: FORMATS.whole,
  cost: FORMATS.two,
  day: FORMATS.date,
};
export const formatOf = ({ unit }: OrderLine, kind: Kind) =>
  kind === "needed" && unit === "pieces" ? FORMATS.whole : FORMAT_OF[kind];

export const linesOf = (plans: readonly LinkedPlan[]) =>
  orderLines(plans.map(({ inputs }) => inputs.batch.bottle_mL));

export function orderRows(plans: readonly LinkedPlan[]): Row[] {
  return [
    {
      ...columnHeads(
        "To order for the season",
        "~Unit",
        ">Needed, with spare",
        ">Pack size",
        ">Packs together",
        ">Packs batch by batch",
        ">Packs saved",
        ">Cost batch by batch",
        ">First needed",
      ),
      lines: 2,
    },
    ...linesOf(plans).map((line) => orderRow(line, plans)),
    unlistedSizes(plans),
    {
      cells: [
        text(
          `Together: batches that agree on a pack size share packs. Labels, liqueurs and other materials are a batch's own. “${SEVERAL_PACKS}”: the plans give different pack sizes. Cost is that of the plans.`,
          "note",
        ),
      ],
    },
  ];
}

/** The sizes are those at the time of writing; a plan that has since changed to another is in no line. */
function unlistedSizes(plans: readonly LinkedPlan[]): Row {
  const sizes = [...new Set(plans.map(({ inputs }) => inputs.batch.bottle_mL))];
  const others = sizes.map((size) => operation(columnOf("bottle_mL", plans.length), "<>", size));
  return {
    cells: [
      text("Bottle sizes without a line above", "label"),
      text("batches", "unit"),
      resultCell({
        name: "season_unlistedSizes",
        value: 0,
        format: FORMATS.whole,
        style: "key",
        formula: builtin("SUMPRODUCT", times(1, ...others)),
      }),
      undefined,
      text("0, or write the season again: their bottles, capsules and cartons are missing.", "note"),
    ],
  };
}

function orderRow(line: OrderLine, plans: readonly LinkedPlan[]): Row {
  const order = orderOf(line, plans);
  const canAdd = seasonTotals(plans).cost !== null;
  const all = (kind: Kind) => columnOf(keyOf(line, kind), plans.length);
  const name = (what: string) =>
    seasonName("order", line.material, ...(line.sizeMl === null ? [] : [line.sizeMl]), what);
  const packs = all("pack");
  const pack = cell(name("pack"));
  const alone = cell(name("packsAlone"));
  return {
    cells: [
      text(line.label, "label"),
      text(line.unit, "unit"),
      resultCell({
        name: name("needed"),
        value: order.needed,
        format: formatOf(line, "needed"),
        formula: builtin("SUM", all("needed")),
      }),
      resultCell({
        name: name("pack"),
        value: order.pack,
        format: "General",
        formula: iff(
          equals(builtin("COUNT", packs), 0),
          "",
          iff(equals(builtin("MIN", packs), builtin("MAX", packs)), builtin("MAX", packs), SEVERAL_PACKS),
        ),
      }),
      resultCell({
        name: name("packs"),
        value: order.packs,
        format: FORMATS.whole,
        style: "key",
        formula: line.together
          ? iff(isNumber(pack), mousse("COST.PACKS", cell(name("needed")), pack, 0), alone)
          : alone,
      }),
      resultCell({
        name: name("packsAlone"),
        value: order.packsAlone,
        format: FORMATS.whole,
        formula: builtin("SUM", all("packs")),
      }),
      resultCell({
        name: name("saved"),
        value: order.saved,
        format: FORMATS.whole,
        formula: minus(alone, cell(name("packs"))),
      }),
      resultCell({
        name: name("cost"),
        value: canAdd ? order.cost : "",
        format: FORMATS.two,
        formula: unlessSeveral(builtin("SUM", all("cost"))),
      }),
      resultCell({
        name: name("first"),
        value: order.first,
        format: FORMATS.date,
        formula: iff(equals(builtin("COUNT", all("day")), 0), "", builtin("MIN", all("day"))),
      }),
    ],
  };
}

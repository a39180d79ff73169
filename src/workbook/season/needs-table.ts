/**
 * The needs of each batch that the season's order is added up from, and what each calls its other materials.
 */
import { OTHER_KEYS } from "../../cellar/batch/materials";
import { batchNeed, phaseOf, type OrderLine } from "../../cellar/season/orders";
import { cell, divided, equals, iff, isBlank, operation, plus, times, type Expression } from "../formula";
import type { CellSpec, Row } from "../layout";
import type { LinkedPlan } from "../linked-plan";
import { FORMATS, columnHeads, resultCell } from "../plan/rows";
import { batchCell } from "./names";
import { formatOf, keyOf, linesOf, type Kind } from "./orders";

const KINDS: readonly (readonly [kind: Kind, title: string])[] = [
  ["needed", "Needed, spare included"],
  ["pack", "Pack size, where something is needed"],
  ["packs", "Packs if the batch orders alone"],
  ["cost", "Cost of those packs"],
  ["day", "Needed on"],
];

/** The needs of each batch, one block for each kind of figure. */
export function needRows(plans: readonly LinkedPlan[]): Row[] {
  const lines = linesOf(plans);
  return KINDS.flatMap(([kind, title]): Row[] => [
    { cells: [] },
    { ...columnHeads(title, ...lines.map(({ label }) => `>${label}`)), lines: 3 },
    ...plans.map((linked, index) => ({
      cells: [
        resultCell({
          value: linked.inputs.batch.name,
          formula: cell(batchCell(index + 1, "name")),
          style: "label",
        }),
        ...lines.map((line) => needCell(line, kind, linked, index + 1)),
      ],
    })),
  ]);
}

/** What each batch calls its other materials. */
export const otherRows = (plans: readonly LinkedPlan[]): Row[] => [
  { cells: [] },
  columnHeads(
    "Other materials of each batch",
    "Other 1",
    ">Needed",
    ">Packs",
    "~Other 2",
    ">Needed",
    ">Packs",
  ),
  ...plans.map((linked, index) => {
    const { materials } = linked.inputs;
    const { lines } = linked.plan.costs;
    const at = (name: string) => cell(`${index + 1}:${name}`);
    return {
      cells: [
        resultCell({
          value: linked.inputs.batch.name,
          formula: cell(batchCell(index + 1, "name")),
          style: "label",
        }),
        ...OTHER_KEYS.flatMap((key) => [
          resultCell({
            value: materials[key].name,
            formula: iff(isBlank(at(`materials_${key}_name`)), "", at(`materials_${key}_name`)),
            style: key === OTHER_KEYS[0] ? "label" : "verdict",
          }),
          resultCell({
            value: materials[key].need,
            formula: at(`materials_${key}_need`),
            format: FORMATS.whole,
          }),
          resultCell({ value: lines[key].packs, formula: at(`plan_${key}_packs`), format: FORMATS.whole }),
        ]),
      ],
    };
  }),
];

function needCell(line: OrderLine, kind: Kind, linked: LinkedPlan, number: number): CellSpec {
  const at = (name: string) => cell(`${number}:${name}`);
  const isOther = (OTHER_KEYS as readonly string[]).includes(line.material);
  const need = at(isOther ? `materials_${line.material}_need` : `plan_${line.material}_need`);
  const figures: Readonly<Record<Kind, Expression>> = {
    needed: times(need, plus(1, divided(at(`materials_${line.material}_spare_pct`), 100))),
    pack: iff(operation(need, ">", 0), at(`materials_${line.material}_pack`), ""),
    packs: at(`plan_${line.material}_packs`),
    cost: at(`plan_${line.material}_cost`),
    day: iff(
      operation(need, ">", 0),
      cell(batchCell(number, phaseOf(line.material) === "tirage" ? "tirage" : "disgorging")),
      "",
    ),
  };
  const ofSize = (figure: Expression) =>
    line.sizeMl === null
      ? figure
      : iff(
          equals(cell(batchCell(number, "bottle_mL")), line.sizeMl),
          figure,
          kind === "pack" || kind === "day" ? "" : 0,
        );
  return resultCell({
    key: batchCell(number, keyOf(line, kind)),
    value: batchNeed(line, linked)[kind],
    format: formatOf(line, kind),
    formula: ofSize(figures[kind]),
  });
}

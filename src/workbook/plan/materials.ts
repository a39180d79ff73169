/**
 * Section Materials: what is needed, what to order, what it costs.
 */
import {
  OTHER_KEYS,
  materialKeys,
  materials,
  type MaterialKey,
  type OtherKey,
} from "../../cellar/batch/materials";
import {
  builtin,
  cell,
  choose,
  divided,
  equals,
  iff,
  isBlank,
  mousse,
  operation,
  plus,
  times,
  type Expression,
} from "../formula";
import type { CellSpec, Row } from "../layout";
import {
  FORMATS,
  columnHeads,
  heading,
  input,
  inputCell,
  resultCell,
  text,
  type Batch,
  type Section,
} from "./rows";

const byRate = (rate: string): Expression => divided(times(input(rate), input("baseWine.volume_hL")), 1000);
const bottles = cell("plan_bottles");
const finished = cell("plan_finished_bottles");
const kind = input("dosage.kind");

const needs: Readonly<Record<MaterialKey, Expression>> = {
  tirageSugar: cell("plan_tirageSugar_kg"),
  yeast: byRate("tirage.yeast_gHL"),
  nutrient: byRate("tirage.nutrient_gHL"),
  riddlingAid: byRate("tirage.riddlingAid_gHL"),
  bottles,
  crownCaps: bottles,
  bidules: bottles,
  dosageSugar: cell("plan_dosageSugar_kg"),
  dosageLiqueur: choose(kind, [
    ["none", 0],
    ["sugar in wine", 0],
    ["concentrate", cell("plan_dosageBatch_L")],
    ["sweet reserve wine", cell("plan_dosageBatch_L")],
  ]),
  corks: finished,
  muselets: finished,
  capsules: finished,
  labels: finished,
  cartons: builtin("ROUNDUP", operation(finished, "/", input("batch.bottlesPerCase")), 0),
};

const hours = [
  input("costs.tirage_hours"),
  cell("plan_costs_riddling_hours"),
  input("costs.disgorging_hours"),
  input("costs.finishing_hours"),
];

export const costName = (key: MaterialKey | OtherKey) => `plan_${key}_cost`;
const needName = (key: MaterialKey | OtherKey) => `plan_${key}_need`;

export const materialsSection: Section = (batch) => {
  const { inputs, plan } = batch;
  const last = OTHER_KEYS[OTHER_KEYS.length - 1]!;
  const first = materialKeys[0]!;
  const needRange = { kind: "range", first: needName(first), last: `materials_${last}_need` } as const;
  const priceRange = {
    kind: "range",
    first: `materials_${first}_price`,
    last: `materials_${last}_price`,
  } as const;
  return [
    ...heading("Materials"),
    columnHeads(
      "Item",
      ">Need",
      "~Unit",
      ">Spare, %",
      ">Pack size",
      ">Packs to order",
      ">Price for 1",
      ">Cost",
    ),
    ...materialKeys.map((key) =>
      line(
        batch,
        key,
        text(materials[key].label, "label"),
        needCell(batch, key),
        text(materials[key].unit, "unit"),
      ),
    ),
    ...OTHER_KEYS.map((key) =>
      line(
        batch,
        key,
        inputCell(`materials.${key}.name`, inputs),
        inputCell(`materials.${key}.need`, inputs),
        text("", "unit"),
      ),
    ),
    {
      cells: [
        text("Without a price (riddling: without hours)", "label"),
        resultCell({
          name: "plan_unpriced",
          value: plan.costs.unpriced,
          format: FORMATS.whole,
          formula: plus(
            builtin("SUMPRODUCT", times(operation(needRange, ">", 0), equals(priceRange, ""))),
            iff(isBlank(input("costs.baseWine_perL")), 1, 0),
            iff(
              builtin(
                "AND",
                isBlank(input("costs.labour_perHour")),
                operation(builtin("SUM", ...hours), ">", 0),
              ),
              1,
              0,
            ),
            iff(
              builtin(
                "AND",
                isBlank(input("costs.riddling_hours")),
                isBlank(input("riddling.bottlesPerHour")),
              ),
              1,
              0,
            ),
          ),
        }),
        text("items", "unit"),
        text("Cost is packs × pack size × price: what is ordered is paid for.", "note"),
      ],
    },
  ];
};

function needCell({ plan }: Batch, key: MaterialKey): CellSpec {
  const counted = materials[key].unit === "pieces";
  return resultCell({
    name: needName(key),
    value: plan.costs.lines[key].need,
    formula: needs[key],
    format: counted ? FORMATS.whole : FORMATS.two,
  });
}

function line(
  { inputs, plan }: Batch,
  key: MaterialKey | OtherKey,
  item: CellSpec,
  need: CellSpec,
  unit: CellSpec,
): Row {
  const at = (which: string) => input(`materials.${key}.${which}`);
  const { packs, cost } = plan.costs.lines[key];
  const packsName = `plan_${key}_packs`;
  return {
    cells: [
      item,
      need,
      unit,
      inputCell(`materials.${key}.spare_pct`, inputs),
      inputCell(`materials.${key}.pack`, inputs),
      resultCell({
        name: packsName,
        value: packs,
        format: FORMATS.whole,
        formula: mousse("COST.PACKS", cell((need.key ?? need.name)!), at("pack"), at("spare_pct")),
      }),
      inputCell(`materials.${key}.price`, inputs),
      resultCell({
        name: costName(key),
        value: cost,
        format: FORMATS.two,
        formula: builtin("ROUND", times(cell(packsName), at("pack"), at("price")), input("costs.decimals")),
      }),
    ],
  };
}

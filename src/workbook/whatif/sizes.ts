/**
 * The first grid: batch sizes, and below it how each figure comes about.
 */
import { USUAL_LABOUR_PCT, USUAL_SIZES_PCT, atSize, planIf } from "../../cellar/batch/what-if";
import { number } from "../../cellar/batch/field-kinds";
import { domains } from "../../cellar/domains";
import {
  builtin,
  cell,
  divided,
  equals,
  iff,
  isBlank,
  isNumber,
  minus,
  plus,
  times,
  type Expression,
} from "../formula";
import type { CellSpec, Row } from "../layout";
import { FORMATS, columnHeads, heading, resultCell, text, type Batch } from "../plan/rows";
import { planRows } from "../plan/sheet";
import { LAST_COLUMN } from "./columns";
import { namedCells, renamed, varyingCells, type PlanCell } from "./recast";

const sizeField = number("Batch size", { what: "batch size", unit: "% of the plan", min: 1, max: 1000 });
const labourField = number("Labour that grows with the batch", domains.percent, {
  blank: USUAL_LABOUR_PCT,
});

const BOTTLES = "plan_bottles";
const TOTAL = "plan_cost_total";
/** The figures of the first grid. */
const RESULTS = [
  ["baseWine_volume_hL", "Base wine, hL", FORMATS.two],
  ["plan_tirageSugar_kg", "Sugar, kg", FORMATS.two],
  ["plan_tirageLiqueur_L", "Tirage liqueur, L", FORMATS.one],
  [BOTTLES, "Bottles", FORMATS.whole],
  ["plan_dosageBatch_L", "Dosage liqueur, L", FORMATS.two],
  [TOTAL, "Total cost", FORMATS.two],
  ["plan_perBottle", "A saleable bottle", FORMATS.two],
] as const;

const AS_PLANNED_PCT = 100;
const AS_PLANNED = "As planned";
const LABOUR = "whatif_labour_pct";
const sizeName = (index: number) => `whatif_size_${index + 1}_pct`;
const nameAt = (index: number, name: string) => `size${index + 1} ${name}`;

const HOURS = ["tirage", "riddling", "disgorging", "finishing"].map((step) => `costs_${step}_hours`);
const OTHERS = ["materials_other1_need", "materials_other2_need"];
const CHANGED = ["baseWine_volume_hL", ...HOURS, ...OTHERS];

/** Blank hours of riddling are worked out elsewhere, and must stay blank; others count as 0. */
const staysBlank = ({ field }: CellSpec) => field?.kind === "optional";

/** A changed input at one size, from the plan's. */
function changedFormula({ name, spec }: PlanCell, index: number): Expression {
  const size = divided(cell(sizeName(index)), 100);
  const own = cell(name);
  if (!HOURS.includes(name)) return times(own, size);
  const grown = times(own, plus(1, times(divided(cell(LABOUR), 100), minus(size, 1))));
  return staysBlank(spec) ? iff(isBlank(own), "", grown) : grown;
}

/** A figure that the plan itself cannot give is not given; nor is a sum of what is left of it where there are no bottles. */
function shownFigure(name: string, index: number): Expression {
  const figure = iff(isNumber(cell(name)), cell(nameAt(index, name)), "");
  return name === TOTAL ? iff(isNumber(cell(nameAt(index, BOTTLES))), figure, "") : figure;
}

/** The grid itself, and how its figures come about. */
export function sizeRows(batch: Batch): { readonly grid: Row[]; readonly workings: Row[] } {
  const cells = namedCells(planRows(batch));
  const wanted = RESULTS.map(([name]) => name);
  const varying = varyingCells(cells, wanted, new Set(CHANGED));
  const written = [...CHANGED.map((name) => cells.get(name)!), ...varying];
  const isWritten = new Set(written.map(({ name }) => name));
  const plans = USUAL_SIZES_PCT.map((size) => {
    const inputs = atSize(batch.inputs, size, USUAL_LABOUR_PCT);
    const plan = planIf(inputs);
    return plan && namedCells(planRows({ inputs, plan }));
  });

  /** One figure at one size, blank where no size is given. */
  const figure = (there: PlanCell, index: number): CellSpec => {
    const { name, spec } = there;
    const formula = CHANGED.includes(name)
      ? changedFormula(there, index)
      : renamed(spec.formula!, (each) => (isWritten.has(each) ? nameAt(index, each) : each));
    return {
      key: nameAt(index, name),
      style: "result",
      value: plans[index]?.get(name)?.spec.value ?? (plans[index] && HOURS.includes(name) ? "" : null),
      formula: iff(isNumber(cell(sizeName(index))), builtin("IFERROR", formula, ""), ""),
      format: spec.format ?? FORMATS.two,
    };
  };
  const grid: Row[] = [
    ...heading("Batch size", LAST_COLUMN),
    {
      cells: [
        text(labourField.label, "label"),
        { value: USUAL_LABOUR_PCT, style: "input", name: LABOUR, field: labourField },
        text("%", "unit"),
        text("of the hours typed in the plan; other materials grow with the batch", "note"),
      ],
    },
    {
      ...columnHeads("Your own sizes", ">% of the plan", ...RESULTS.map(([, head]) => `>${head}`)),
      lines: 2,
    },
    ...USUAL_SIZES_PCT.map((size, index) => ({
      cells: [
        {
          value: size === AS_PLANNED_PCT ? AS_PLANNED : "",
          style: "label" as const,
          formula: iff(equals(cell(sizeName(index)), AS_PLANNED_PCT), AS_PLANNED, ""),
        },
        { value: size, style: "input" as const, name: sizeName(index), field: sizeField },
        ...RESULTS.map(([name, , format]) =>
          resultCell({
            name: `whatif_size_${index + 1}_${name}`,
            value: plans[index]?.get(name)?.spec.value ?? null,
            formula: shownFigure(name, index),
            format,
          }),
        ),
      ],
    })),
  ];
  const workings: Row[] = [
    ...heading("How the figures of each size come about", LAST_COLUMN),
    {
      cells: [
        text("Size, % of the plan", "columnHead"),
        ...USUAL_SIZES_PCT.map((size, index) => ({
          value: size,
          style: "numberHead" as const,
          formula: cell(sizeName(index)),
          format: FORMATS.whole,
        })),
      ],
    },
    ...written.map((each) => ({
      cells: [text(labelOf(each), "label"), ...USUAL_SIZES_PCT.map((_, index) => figure(each, index))],
    })),
  ];
  return { grid, workings };
}

/** What a figure is: the plan's own label, with what its column says where that is not the value's. */
function labelOf({ name, label, unit, column }: PlanCell): string {
  const kind = /_(packs|cost)$/.exec(name)?.[1];
  if (kind !== undefined && column > 1) return `${label}: ${kind}`;
  return unit === "" ? label : `${label}, ${unit}`;
}

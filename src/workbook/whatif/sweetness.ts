/**
 * The third grid: sweetness wanted, the liqueur that takes, and the terms it permits.
 */
import { optional } from "../../cellar/batch/field-kinds";
import { atSweetness, planIf } from "../../cellar/batch/what-if";
import { domains } from "../../cellar/domains";
import { builtin, cell, equals, iff, isNumber, operation } from "../formula";
import type { BatchPlan } from "../../cellar/batch/plan";
import type { CellSpec, Row } from "../layout";
import { FORMATS, columnHeads, heading, input, placed, resultCell, text, type Batch } from "../plan/rows";
import { LAST_COLUMN } from "./columns";
import { planRows } from "../plan/sheet";
import { namedCells, renamed, varyingCells } from "./recast";

const USUAL_TARGETS_GL = [0, 2, 4, 6, 8, 10, 11.5, 15, 20, 25, 35, 50] as const;
const targetField = optional("Sweetness wanted", domains.wineSugarGL);

const FIGURES = [
  ["plan_dosage_mL", "Liqueur a bottle, mL", FORMATS.two],
  ["plan_dosageBatch_L", "For the batch, L", FORMATS.two],
  ["plan_stock_bottles", "Stock doses, bottles", FORMATS.whole],
  ["plan_sugar_gL", "Sugar reached, g/L", FORMATS.two],
  ["plan_finishedAlcohol_vol", "Alcohol after, % vol", FORMATS.two],
  ["plan_term_1", "Driest term", "General"],
  ["plan_term_2", "or", "General"],
  ["plan_term_3", "or", "General"],
] as const;

const NO_DOSAGE = "no dosage";
const TOO_DRY = "too dry";
const NOT_SO = "no answer";
const TARGET = placed("dosage.target_gL").name;
const targetName = (index: number) => `whatif_target_${index + 1}_gL`;
const nameAt = (index: number, name: string) => `target${index + 1} ${name}`;

export function sweetnessRows(batch: Batch): Row[] {
  const cells = namedCells(planRows(batch));
  const figures = FIGURES.map(([name]) => name);
  const varying = varyingCells(cells, figures, new Set([TARGET]));
  const isShown = new Set<string>(figures);
  const unseen = varying.find(({ name }) => !isShown.has(name) && name !== "plan_liqueur_vol");
  if (unseen) throw new Error(`${unseen.name} changes with the sweetness and has no column`);
  const { residual_gL, kind } = batch.inputs.dosage;

  return [
    ...heading("Sweetness, with the liqueur of the plan", LAST_COLUMN),
    {
      cells: [
        text(
          `“${TOO_DRY}”: the wine is sweeter already. “${NOT_SO}”: the liqueur is not strong enough, or something is missing.`,
          "note",
        ),
      ],
    },
    {
      ...columnHeads(
        "Your own sweetness",
        ">g/L wanted",
        ...FIGURES.map(([, head]) => `>${head}`),
        ">In the neck",
      ),
      lines: 3,
    },
    ...USUAL_TARGETS_GL.map((target, index): Row => {
      const inputs = atSweetness(batch.inputs, target);
      const plan = planIf(inputs);
      const then = plan && namedCells(planRows({ inputs, plan }));
      const isFirst = (name: string) => name === figures[0];
      return {
        cells: [
          text("", "label"),
          { value: target, style: "input", name: targetName(index), field: targetField },
          ...FIGURES.map(([name, , format]) => {
            const said = (words: string) => (isFirst(name) ? words : "");
            const planned = then?.get(name)?.spec.value ?? said(NOT_SO);
            const formula = renamed(cells.get(name)!.spec.formula!, (each) =>
              each === TARGET ? targetName(index) : isShown.has(each) ? nameAt(index, each) : each,
            );
            return resultCell({
              key: nameAt(index, name),
              value: kind === "none" ? said(NO_DOSAGE) : target < residual_gL ? said(TOO_DRY) : planned,
              format,
              formula: iff(
                isNumber(cell(targetName(index))),
                iff(
                  equals(input("dosage.kind"), "none"),
                  said(NO_DOSAGE),
                  iff(
                    operation(cell(targetName(index)), "<", input("dosage.residual_gL")),
                    said(TOO_DRY),
                    builtin("IFERROR", formula, said(NOT_SO)),
                  ),
                ),
                "",
              ),
            });
          }),
          roomCell(index, kind === "none" || target < residual_gL ? null : plan),
        ],
      };
    }),
  ];
}

const ROOM = { fits: "fits", not: "no room" } as const;

/** Whether the liqueur has room after disgorging. */
function roomCell(index: number, plan: BatchPlan | null): CellSpec {
  const ml = cell(nameAt(index, "plan_dosage_mL"));
  const room = plan?.dosage.spaceMl ?? null;
  const said = plan && (room !== null && plan.dosage.eachMl <= room ? ROOM.fits : ROOM.not);
  return resultCell({
    name: `whatif_target_${index + 1}_room`,
    value: said ?? "",
    formula: iff(
      isNumber(ml),
      iff(
        builtin("AND", isNumber(cell("plan_space_mL")), operation(ml, "<=", cell("plan_space_mL"))),
        ROOM.fits,
        ROOM.not,
      ),
      "",
    ),
  });
}

/**
 * The sheet What-if · batch: three grids that follow the inputs of a plan.
 */
import type { SheetData } from "../data";
import { builtin } from "../formula";
import { layOut, type Row, type Rendering } from "../layout";
import { addressIn, type LinkedPlan } from "../linked-plan";
import { heading, input, text } from "../plan/rows";
import { planRows } from "../plan/sheet";
import { freeSheetName } from "../sheet-names";
import { COLUMN_WIDTHS, LAST_COLUMN } from "./columns";
import { doseRows } from "./doses";
import { namedCells } from "./recast";
import { sizeRows } from "./sizes";
import { sweetnessRows } from "./sweetness";
import { withTaken } from "./taken";

const PAGE = { frozenRows: 1, pagesTall: 0, landscape: true };
const TITLE = "What if: ";

export function whatIfSheet(
  linked: LinkedPlan,
  takenNames: readonly string[],
  rendering?: Rendering,
): SheetData {
  const { inputs, plan } = linked;
  const { grid, workings } = sizeRows({ inputs, plan });
  const head: Row[] = [
    {
      cells: [
        {
          value: `${TITLE}${inputs.batch.name}`,
          formula: builtin("CONCATENATE", TITLE, input("batch.name")),
          style: "title",
        },
      ],
    },
    {
      cells: [
        text(
          `Everything follows the sheet “${linked.sheet}”; boxed, lightly filled cells are yours to change. Nothing here changes the plan.`,
          "subtitle",
        ),
      ],
    },
  ];
  const grids = [...grid, ...doseRows({ inputs, plan }), ...sweetnessRows({ inputs, plan }), ...workings];
  const { rows, block } = withTaken(grids, namedCells(planRows({ inputs, plan })));
  return layOut({
    name: freeSheetName("What-if", inputs.batch.name, takenNames),
    rows: [...head, ...rows, ...heading("Taken from the plan", LAST_COLUMN), ...block],
    columnWidths: COLUMN_WIDTHS,
    page: PAGE,
    ...(rendering && { rendering }),
    elsewhere: (name) => addressIn(linked, name),
  });
}

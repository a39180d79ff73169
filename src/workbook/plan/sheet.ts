/**
 * The sheet Plan · batch: its sections in the order in which they are read.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import type { SheetData } from "../data";
import { layOut, type Layout, type Row } from "../layout";
import { freeSheetName } from "../sheet-names";
import { actualSection } from "./actual";
import { baseWineSection, batchSection } from "./batch";
import { chartsSection, planCharts } from "./charts";
import { cautionsSection } from "./cautions";
import { checksSection } from "./checks";
import { costsSection } from "./costs";
import { dosageSection } from "./dosage";
import { glanceSection } from "./glance";
import { leesSection } from "./lees";
import { materialsSection } from "./materials";
import { riddlingSection } from "./riddling";
import { COLUMN_WIDTHS, type Batch, type Section } from "./rows";
import { tirageSection } from "./tirage";

const SECTIONS: readonly Section[] = [
  glanceSection,
  batchSection,
  baseWineSection,
  tirageSection,
  checksSection,
  leesSection,
  riddlingSection,
  dosageSection,
  materialsSection,
  costsSection,
  actualSection,
  chartsSection,
  cautionsSection,
];

/** Room for a chart that is wider than the tables. */
const BESIDE = [13, 13, 13] as const;

/** The title stays in sight; a batch prints on two pages. */
const PAGE = { frozenRows: 1, pagesTall: 2, landscape: false };

export const planRows = (batch: Batch): Row[] => SECTIONS.flatMap((section) => section(batch));

/** One batch's plan; its name avoids the sheets there are. */
export function planSheet(
  inputs: BatchInputs,
  plan: BatchPlan,
  takenNames: readonly string[],
  { rendering, listOf }: Pick<Layout, "rendering" | "listOf"> = {},
): SheetData {
  return layOut({
    name: freeSheetName("Plan", inputs.batch.name, takenNames),
    rows: planRows({ inputs, plan }),
    columnWidths: [...COLUMN_WIDTHS, ...BESIDE],
    page: PAGE,
    ...(rendering && { rendering }),
    charts: planCharts,
    ...(listOf && { listOf }),
  });
}

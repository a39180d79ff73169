/**
 * The sheet Plan · batch: its sections in the order in which they are read.
 */
import type { BatchInputs } from "../../cellar/batch/fields";
import type { BatchPlan } from "../../cellar/batch/plan";
import type { SheetData } from "../data";
import { addinFormula, type Dialect } from "../formula";
import { layOut } from "../layout";
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
import { COLUMN_WIDTHS, type Section } from "./rows";
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

/** The title stays in sight; a batch prints on two pages. */
const PAGE = { frozenRows: 1, pagesTall: 2, landscape: false };

/** One batch's plan; its name avoids the sheets there are. */
export function planSheet(
  inputs: BatchInputs,
  plan: BatchPlan,
  takenNames: readonly string[],
  dialect: Dialect = addinFormula,
): SheetData {
  const rows = SECTIONS.flatMap((section) => section({ inputs, plan }));
  return layOut({
    name: freeSheetName("Plan", inputs.batch.name, takenNames),
    rows,
    columnWidths: COLUMN_WIDTHS,
    page: PAGE,
    write: dialect,
    charts: planCharts(),
  });
}

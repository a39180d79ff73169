/**
 * The sheet Notes: legend, units, every regulation figure that the sheets use, cautions, version. One for a workbook.
 */
import packageJson from "../../../package.json";
import type { Field } from "../../cellar/batch/field-kinds";
import { fields } from "../../cellar/batch/fields";
import { RECORDED } from "../../cellar/rules/source";
import type { Area, SheetData } from "../data";
import { layOut, type Row, type Rendering } from "../layout";
import { CAUTIONS } from "../plan/cautions";
import { text } from "../plan/rows";
import { freeName } from "../sheet-names";
import { DESIGNATIONS_TABLE, designationRows, FIRST_DESIGNATION, LAST_DESIGNATION } from "./designations";
import { NOTES_LANGUAGE } from "./names";
import { gaugeRows, limitRows, pressureRows, sweetnessRows } from "./regulation";
import { NOTES_WIDTHS, headed, line, wrapped } from "./rows";

/** By this name the sheet is known in a workbook. */
export const NOTES_MARK = "notes_version";

const LEGEND = [
  ["Boxed, lightly filled", "an input: change it and what follows is calculated again"],
  ["Plain", "a result, calculated from the inputs and from the figures on this sheet"],
  ["Bold", "a figure that is weighed, poured, ordered or compared"],
  ["fine, look again, stop", "the verdict of a check: within its limit; worth a second look; out of bounds"],
  [
    "#VALUE! or #N/A",
    "refused, or without an answer: with the add-in, select the cell to see why; in a portable sheet Checks counts the inputs to mend",
  ],
] as const;

const UNITS = [
  ["hL, L, mL", "tank volume; liqueurs and starter; bottles and doses"],
  ["g/L as sucrose", "sugar as it is weighed: the dose, the strength of a liqueur made from sugar"],
  [
    "g/L glucose + fructose",
    "sugar as it is analysed and labelled; 1 g of weighed sugar analyses as 1.0526 g",
  ],
  ["bar", "excess pressure, above atmospheric, always at a temperature"],
  ["% vol", "alcohol by volume at 20 °C"],
  ["dates", "year-month-day; periods in months end on the same day of the last month, or on its last day"],
  [
    "money",
    "in the currency of the plan, prices with or without VAT as you type them; each amount is rounded by itself, totals add the rounded amounts",
  ],
] as const;

export function notesSheet(takenNames: readonly string[], rendering?: Rendering): SheetData {
  const rows: Row[] = [
    { cells: [text("Notes", "title")] },
    { cells: [text("What the sheets of this workbook mean and where their figures come from.", "subtitle")] },
    ...headed("How to read the sheets"),
    ...LEGEND.map(([what, meaning]) => line(what, meaning)),
    ...headed("Units"),
    ...UNITS.map(([unit, meaning]) => line(unit, meaning)),
    ...headed("Where the regulation figures come from"),
    wrapped(
      `Recorded ${RECORDED}. read: seen in the published text or an official copy. secondary: read in a text about it. memory: recalled, not seen again. Regulation changes: the local text decides, and a limit can be typed over in the plan.`,
    ),
    ...limitRows(),
    ...pressureRows(),
    ...sweetnessRows(),
    ...designationRows(),
    ...gaugeRows(),
    ...headed("Cautions"),
    ...CAUTIONS.map((caution) => wrapped(`•  ${caution}`)),
    ...headed("Version"),
    {
      cells: [
        text("Mousse", "label"),
        { value: packageJson.version, style: "label", name: NOTES_MARK },
        text("The figures are estimates from published equations and from what was typed in.", "note"),
      ],
    },
    {
      cells: [
        text("Language", "label"),
        { value: "en", style: "label", name: NOTES_LANGUAGE },
        text("of the sheets; plans written later are in the same", "note"),
      ],
    },
  ];
  return layOut({
    name: freeName("Notes", takenNames),
    rows,
    columnWidths: NOTES_WIDTHS,
    page: { frozenRows: 1, pagesTall: 0, landscape: false },
    tables: [DESIGNATIONS_TABLE],
    ...(rendering && { rendering }),
  });
}

/** The cells of a Notes sheet that hold the options of a field, where they are too many for a rule. */
export function listsOn(sheet: string, places: ReadonlyMap<string, { row: number; column: number }>) {
  const [first, last] = [places.get(FIRST_DESIGNATION), places.get(LAST_DESIGNATION)];
  return (field: Field): Area | undefined =>
    field === fields.batch.designation && first && last
      ? { sheet, row: first.row, column: first.column, lastRow: last.row, lastColumn: last.column }
      : undefined;
}

/**
 * The sheet Season: every batch in one table, the work month by month, what to order. It reads the plan sheets, so
 * that it follows them.
 */
import { seasonMonths } from "../../cellar/season/calendar";
import type { SheetData } from "../data";
import { layOut, type ChartSpec, type Row, type Rendering } from "../layout";
import { addressIn, type LinkedPlan } from "../linked-plan";
import { heading, text } from "../plan/rows";
import { freeName } from "../sheet-names";
import { batchTable, columnWidth } from "./batch-table";
import { calendarRows } from "./calendar";
import { costsTable } from "./costs-table";
import { moneyTable } from "./money-table";
import { batchCell } from "./names";
import { needRows, otherRows } from "./needs-table";
import { orderRows } from "./orders";

const FIRST_WIDTH = 30;
const WIDTH = 13;
const COLUMNS = 24;
const PRINTED_COLUMNS = 16;
/** The workings below are as wide as there are materials, and would make the rest too small to read. */
const END_OF_PRINT = "season_end";
const PAGE = {
  frozenRows: 1,
  frozenColumns: 1,
  pagesTall: 0,
  landscape: true,
  first: true,
  printed: { columns: PRINTED_COLUMNS, to: END_OF_PRINT },
};

/** Bars of more batches could not be told apart. */
const MOST_BARS = 40;
const CHART = "season_chart";
const CHART_COLUMNS = [0, 11] as const;

const headed = (title: string) => heading(title, PRINTED_COLUMNS - 1);

export function seasonSheet(
  plans: readonly LinkedPlan[],
  takenNames: readonly string[],
  rendering?: Rendering,
): SheetData {
  const bars = Math.min(plans.length, MOST_BARS);
  const chartRows = 8 + bars;
  const rows: Row[] = [
    { cells: [text("Season", "title")] },
    {
      cells: [
        text(
          "Read from the plan sheets, and following them. A plan written later is not in it: write the season again.",
          "subtitle",
        ),
      ],
    },
    ...headed("Batches"),
    ...batchTable(plans),
    { cells: [] },
    { cells: [{ value: null, style: "label", key: CHART }] },
    ...Array.from({ length: chartRows }, (): Row => ({ cells: [] })),
    ...headed("Work month by month"),
    ...calendarRows(plans),
    ...headed("Costs by their parts, and as they came"),
    ...costsTable(plans),
    ...headed("Orders"),
    ...orderRows(plans),
    ...otherRows(plans),
    { cells: [{ value: null, style: "label", key: END_OF_PRINT }] },
    ...headed("How the calendar comes about"),
    ...moneyTable(plans),
    ...headed("How the orders come about"),
    ...needRows(plans),
  ];
  return layOut({
    name: freeName("Season", takenNames),
    rows,
    columnWidths: [
      FIRST_WIDTH,
      ...Array.from({ length: COLUMNS }, (_, index) => columnWidth(index + 1, WIDTH)),
    ],
    page: PAGE,
    ...(rendering && { rendering }),
    charts: [barsOf(plans, bars, chartRows)],
    elsewhere: (name) => {
      const [, number, wanted] = /^(\d+):(.+)$/.exec(name) ?? [];
      const plan = plans[Number(number) - 1];
      if (!plan || wanted === undefined) return undefined;
      const address = addressIn(plan, wanted);
      if (address === undefined) {
        throw new Error(
          `The sheet “${plan.sheet}” has no cell named ${wanted}: it was written by an older version, or the name was deleted. Write that plan anew, or delete its sheet.`,
        );
      }
      return address;
    },
  });
}

function barsOf(plans: readonly LinkedPlan[], bars: number, rows: number): ChartSpec {
  const months = seasonMonths(plans);
  const column = (key: string) => ({ first: batchCell(1, key), last: batchCell(bars, key) });
  const more = plans.length > bars ? ` (the first ${bars} batches)` : "";
  return {
    kind: "stackedBars",
    title: `From tirage to release${more}`,
    description: "A bar for each batch: from tirage to disgorging on the lees, then the rest until release.",
    categories: column("name"),
    series: [
      { title: "Before the tirage", values: column("tirage"), look: "gap" },
      { title: "On the lees", values: column("leesDays"), look: "dark" },
      { title: "Rest after disgorging", values: column("restDays"), look: "light" },
    ],
    horizontal: {
      title: "Month",
      format: "yyyy-mm",
      min: months[0]!.date,
      max: Math.max(...plans.map(({ plan }) => plan.dates.release)) + 31,
    },
    vertical: { title: "" },
    at: CHART,
    rows,
    columns: CHART_COLUMNS,
  };
}

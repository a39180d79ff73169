/**
 * A sheet with one chart of each kind, for the tests of every host. Its numbers are invented.
 */
import type { Area, ChartData, PlacedCell, SheetData } from "../../src/workbook/data";

export const column = (at: number, row: number, lastRow: number, sheet?: string): Area => ({
  ...(sheet !== undefined && { sheet }),
  row,
  column: at,
  lastRow,
  lastColumn: at,
});

export const place = (row: number, lastRow: number, at = 6, lastColumn = 13): Area => ({
  row,
  column: at,
  lastRow,
  lastColumn,
});

/** x in A2:A6, three columns beside it. */
export const lines: ChartData = {
  kind: "lines",
  title: "Pressure & temperature",
  description: "Pressure rises with temperature; the rating lies above it.",
  categories: column(0, 1, 5),
  series: [
    { title: "Planned", values: column(1, 1, 5), look: "solid" },
    { title: "Half <dose>", values: column(2, 1, 5), look: "dashed" },
    { title: "Rating", values: column(3, 1, 5), look: "dotted" },
  ],
  horizontal: { title: "Temperature, °C", format: "0" },
  vertical: { title: "Pressure, bar", format: "0.0", min: 0, max: 12 },
  place: place(0, 14),
};

/** Words in A10:A13. */
export const bars: ChartData = {
  kind: "bars",
  title: "Cost of a bottle",
  description: "What each part of a bottle costs.",
  categories: column(0, 9, 12),
  series: [{ title: "Cost", values: column(1, 9, 12), look: "dark" }],
  horizontal: { title: "EUR a bottle", format: "0.00" },
  vertical: { title: "" },
  place: place(16, 28),
};

/** Begin, first and second part of each stage in B17:D19. */
export const stages: ChartData = {
  kind: "stackedBars",
  title: "Stages",
  description: "When each stage begins and how long it takes.",
  categories: column(0, 16, 18),
  series: [
    { title: "Begins", values: column(1, 16, 18), look: "gap" },
    { title: "Work", values: column(2, 16, 18), look: "dark" },
    { title: "Rest", values: column(3, 16, 18), look: "light" },
  ],
  horizontal: { title: "Days from tirage", format: "0" },
  vertical: { title: "Stage" },
  place: place(30, 44),
};

const row = (at: number, values: readonly (string | number)[]): PlacedCell[] =>
  values.map((value, index) => ({ row: at, column: index, value, style: "label" }));

export const chartSheet: SheetData = {
  name: "Charts & baker's dozen",
  cells: [
    ...row(0, ["°C", "Planned", "Half", "Rating"]),
    ...[0, 5, 10, 15, 20].flatMap((x, index) => row(index + 1, [x, 4 + x / 5, 2 + x / 10, 9])),
    ...[
      ["Glass", 0.62],
      ["Wine", 1.4],
      ["Closure and wire", 0.21],
      ["Label", 0.09],
    ].flatMap((values, index) => row(index + 9, values)),
    ...[
      ["Tirage", 0, 2, 60],
      ["On lees", 62, 0, 500],
      ["Disgorging", 562, 3, 90],
    ].flatMap((values, index) => row(index + 16, values)),
    {
      row: 20,
      column: 1,
      value: 8,
      formula: "B6",
      style: "result",
    },
  ],
  columnWidths: [18, 10, 10, 10],
  rowHeights: new Map(),
  merges: [],
  frozenRows: 0,
  names: [],
  validations: [],
  frozenColumns: 0,
  highlights: [],
  tables: [],
  charts: [lines, bars, stages],
  gridlines: false,
  pagesTall: 0,
  landscape: true,
};

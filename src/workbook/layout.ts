/**
 * Rows of cells to a sheet: addresses are given out here, and only then are formulas written.
 */
import {
  cellAddress,
  type Area,
  type CellStyle,
  type CellValue,
  type ChartData,
  type ChartSeries,
  type DefinedName,
  type Highlight,
  type HighlightLook,
  type PlacedCell,
  type SheetData,
  type Validation,
} from "./data";
import { formulaText, type Expression } from "./formula";
import type { Field } from "../cellar/batch/field-kinds";
import { validationOf } from "./validation";

export interface CellSpec {
  readonly value: CellValue;
  readonly formula?: Expression;
  readonly style: CellStyle;
  readonly format?: string;
  /** Defined name within the sheet, and the name by which formulas ask for the cell. */
  readonly name?: string;
  /** The same for a cell that is only asked for by formulas, and needs no defined name. */
  readonly key?: string;
  /** The input field this cell holds. */
  readonly field?: Field;
  /** Holds the word of a check, and stands out where that is not good. */
  readonly judged?: boolean;
}

export interface Row {
  readonly cells: readonly (CellSpec | undefined)[];
  /** A cell that runs on over the columns to the right: the column it starts in, and the last one. */
  readonly merge?: readonly [column: number, lastColumn: number];
  /** Lines of wrapped text, where more than one. */
  readonly lines?: number;
  /** Points, where the row is not as tall as its lines. */
  readonly height?: number;
}

const POINTS_PER_LINE = 13.5;
const LINE_PADDING = 2;

const STANDING_OUT: readonly (readonly [word: string, look: HighlightLook])[] = [
  ["stop", "bad"],
  ["look again", "doubtful"],
];

export interface Page extends Pick<SheetData, "frozenRows" | "pagesTall" | "landscape" | "first"> {
  readonly frozenColumns?: number;
  /** Only so many columns are printed, down to the row of this cell. */
  readonly printed?: { readonly columns: number; readonly to: string };
}

/** A chart asks for its cells by their names, as formulas do. */
export interface ChartSpec extends Omit<ChartData, "categories" | "series" | "place"> {
  /** The row of this cell is the first that it lies over. */
  readonly at: string;
  readonly rows: number;
  readonly columns: readonly [first: number, last: number];
  readonly categories: NamedArea;
  readonly series: readonly (Omit<ChartSeries, "values"> & { readonly values: NamedArea })[];
}
export interface NamedArea {
  readonly first: string;
  readonly last: string;
}

/** In which formulas a sheet is written: with our functions, or worked out for any program. */
export interface Rendering {
  readonly rows: (rows: readonly Row[]) => readonly Row[];
  /** Where the cells are that it reads besides. */
  readonly elsewhere: (name: string) => string | undefined;
}
export const asTheyAre: Rendering = { rows: (rows) => rows, elsewhere: () => undefined };

export interface Layout {
  readonly name: string;
  readonly rows: readonly Row[];
  readonly columnWidths: readonly number[];
  readonly page: Page;
  readonly rendering?: Rendering;
  readonly charts?: readonly ChartSpec[];
  readonly tables?: readonly ({ readonly name: string } & NamedArea)[];
  /** Where a cell is that is not on this sheet. */
  readonly elsewhere?: (name: string) => string | undefined;
  /** Cells of another sheet that hold the options of a field. */
  readonly listOf?: (field: Field) => Area | undefined;
}

export function layOut({
  name,
  rows: given,
  columnWidths,
  page,
  rendering = asTheyAre,
  charts = [],
  tables = [],
  elsewhere = () => undefined,
  listOf = () => undefined,
}: Layout): SheetData {
  const rows = rendering.rows(given);
  const { printed, ...rest } = page;
  const places = new Map<string, { readonly row: number; readonly column: number }>();
  const names: DefinedName[] = [];
  rows.forEach(({ cells }, row) =>
    cells.forEach((spec, column) => {
      const asked = spec?.name ?? spec?.key;
      if (asked === undefined) return;
      if (places.has(asked)) throw new Error(`two cells are named ${asked}`);
      places.set(asked, { row, column });
      if (spec?.name !== undefined) names.push({ name: spec.name, row, column });
    }),
  );
  const placeOf = (wanted: string) => {
    const place = places.get(wanted);
    if (place === undefined) throw new Error(`no cell is named ${wanted}`);
    return place;
  };
  const locate = (wanted: string) => {
    const far = places.has(wanted) ? undefined : (elsewhere(wanted) ?? rendering.elsewhere(wanted));
    if (far !== undefined) return far;
    const { row, column } = placeOf(wanted);
    return cellAddress(row, column);
  };
  const areaOf = ({ first, last }: NamedArea): Area => {
    const [start, end] = [placeOf(first), placeOf(last)];
    return { row: start.row, column: start.column, lastRow: end.row, lastColumn: end.column };
  };

  const cells: PlacedCell[] = [];
  const validations: Validation[] = [];
  rows.forEach((each, row) =>
    each.cells.forEach((spec, column) => {
      if (spec === undefined) return;
      const { value, formula, style, format, field } = spec;
      cells.push({
        row,
        column,
        value,
        style,
        ...(formula && { formula: formulaText(formula, locate) }),
        ...(format !== undefined && { format }),
      });
      if (field) validations.push({ row, column, ...validationOf(field, listOf(field)) });
    }),
  );
  return {
    name,
    cells,
    columnWidths,
    rowHeights: new Map(
      rows.flatMap(({ lines = 1, height }, row) => {
        const points = height ?? (lines > 1 ? lines * POINTS_PER_LINE + LINE_PADDING : undefined);
        return points === undefined ? [] : [[row, points] as const];
      }),
    ),
    merges: rows.flatMap(({ merge }, row) =>
      merge ? [{ row, column: merge[0], lastColumn: merge[1] }] : [],
    ),
    names,
    validations,
    charts: charts.map(({ categories, series, at, rows: tall, columns, ...chart }) => ({
      ...chart,
      place: {
        row: placeOf(at).row,
        column: columns[0],
        lastRow: placeOf(at).row + tall - 1,
        lastColumn: columns[1],
      },
      categories: areaOf(categories),
      series: series.map(({ values, ...each }) => ({ ...each, values: areaOf(values) })),
    })),
    highlights: highlightsOf(rows),
    tables: tables.map(({ name: called, ...area }) => ({ name: called, area: areaOf(area) })),
    gridlines: false,
    frozenColumns: 0,
    ...rest,
    ...(printed && {
      printArea: { row: 0, column: 0, lastRow: placeOf(printed.to).row, lastColumn: printed.columns - 1 },
    }),
    // what a rendering adds at the end is there to be looked up, not to be printed
    ...(!printed &&
      rows.length > given.length && {
        printArea: { row: 0, column: 0, lastRow: given.length - 1, lastColumn: columnWidths.length - 1 },
      }),
  };
}

function highlightsOf(rows: readonly Row[]): Highlight[] {
  const judged = rows.flatMap(({ cells }, row) =>
    cells.flatMap((spec, column) => (spec?.judged ? [{ row, column }] : [])),
  );
  return judged.length === 0 ? [] : STANDING_OUT.map(([word, look]) => ({ word, look, cells: judged }));
}

/**
 * The workbench's formula engine without a page: a column of our function against the same arithmetic as native
 * formulas and against trivial ones; and one call that spills against as many single calls.
 */
import type { IWorkbookData } from "@univerjs/core";
import { injectorOf } from "../../src/hosts/grid/book";
import { refuseCircles } from "../../src/hosts/grid/refuse-circles";
import { headlessGrid, type HeadlessGrid } from "../support/grid";
import { median } from "./clock";
import type { Report } from "./report";

const ROWS = 10_000;
const ROUNDS = 3;
/** Single calls that spill take long, and are far enough from one call to be told apart at once. */
const TRIAL_ROUNDS = 1;
const PATIENCE_MS = 300_000;
/** The engine gathers edits for so long before it calculates. */
const ENGINE_WAITS_MS = 100;
const AGAINST_NATIVE = 0.4;
const AGAINST_TRIVIAL = 1.8;

/** A sheet with the doses in column A, what all rows share in D1 to D5, and formulas in the columns from G on. */
interface Column {
  readonly what: string;
  /** For the row with this number, from 1; undefined leaves the cell empty. */
  readonly formula: (row: number) => string | undefined;
  /** Where the figure that is compared stands in the result. */
  readonly resultColumn?: number;
}

const FIRST_RESULT = 6;
const dose = (row: number) => 15 + (row % 1000) / 100 + row / 1e6;
/** °C, % vol, yield, headspace %, dissolved CO2. */
const SHARED = [10, 10.5, 0.95, 4, 0.2];
const CHANGED_C = 14;
/** 529.31… = 100·M(CO2)/R, 2970.73… = ΔH/R, and so on: the constants of the module. */
const INVERT = (2 * 180.156) / 342.297;
const GAS = (100 * 44.0095) / 8.314462;
const native = (row: number) =>
  `=(A${row}*${(4 * 44.0095) / 342.297}*$D$3+$D$5)` +
  `/(1.951*EXP(${24_700 / 8.314462}*(1/($D$1+273.15)-1/293.15))` +
  `*(0.86-0.01*($D$2*(1-A${row}*0.000625)+A${row}*${INVERT / 16.83}))+$D$4/100*${GAS}/($D$1+273.15))` +
  `+0.79*($D$1+273.15)/293.15-1.01325`;

const COLUMNS: readonly Column[] = [
  { what: "native formula", formula: native },
  {
    what: "TIRAGE.PRESSURE",
    formula: (row) => `=MOUSSE.TIRAGE.PRESSURE(A${row},$D$1,$D$2,$D$3,$D$4,$D$5)`,
  },
  { what: "trivial, =A1+$D$1", formula: (row) => `=A${row}+$D$1` },
];
const TRIALS: readonly Column[] = [
  {
    what: "DOSAGE.TRIAL, one call",
    formula: (row) => (row === 1 ? `=MOUSSE.DOSAGE.TRIAL(750,$D$1/10,600,A1:A${ROWS})` : undefined),
    resultColumn: 1,
  },
  {
    what: "DOSAGE.TRIAL, a call for each row",
    formula: (row) => `=MOUSSE.DOSAGE.TRIAL(750,$D$1/10,600,A${row})`,
    resultColumn: 1,
  },
];

function workbook({ formula }: Column): Partial<IWorkbookData> {
  const cellData: Record<number, Record<number, { v?: number; f?: string }>> = {};
  for (let row = 0; row < ROWS; row++) {
    const text = formula(row + 1);
    cellData[row] = { 0: { v: dose(row) } };
    if (text !== undefined) cellData[row]![FIRST_RESULT] = { f: text };
    if (row < SHARED.length) cellData[row]![3] = { v: SHARED[row]! };
  }
  const sheet = { id: "column", name: "Column", cellData, rowCount: ROWS + 10, columnCount: 12 };
  return { sheetOrder: ["column"], sheets: { column: sheet } };
}

/** Milliseconds until the engine says that it has calculated. */
function calculated(grid: HeadlessGrid, start: () => void): Promise<number> {
  return new Promise((resolve, reject) => {
    const overdue = setTimeout(() => reject(new Error("the grid did not finish")), PATIENCE_MS);
    const formulas = grid.api.getFormula();
    const ended = formulas.calculationEnd(() => {
      const took = performance.now() - started;
      clearTimeout(overdue);
      ended.dispose();
      // the results reach the cells right after
      setTimeout(() => resolve(took), 300);
    });
    const started = performance.now();
    start();
  });
}

interface Measured {
  readonly first: number;
  readonly edit: number;
  readonly results: readonly unknown[];
}

async function measured(column: Column): Promise<Measured> {
  const grid = await headlessGrid({ id: "empty" });
  refuseCircles(injectorOf(grid.api));
  try {
    const first = await calculated(grid, () => {
      grid.api.createWorkbook({ id: "measured", name: "Measured", ...workbook(column) });
      grid.api.getFormula().executeCalculation();
    });
    const sheet = grid.api.getUniverSheet("measured")!.getSheets()[0]!;
    const edit = await calculated(grid, () => sheet.getRange("D1").setValue(CHANGED_C));
    const at = FIRST_RESULT + (column.resultColumn ?? 0);
    // not the raw values: what a call spills is not kept in the cells
    const results = sheet.getRange(0, at, ROWS, 1).getValues().flat();
    return { first: first / 1000, edit: edit / 1000, results };
  } finally {
    grid.dispose();
  }
}

function assertSame(one: Measured, other: Measured, what: string): void {
  one.results.forEach((value, row) => {
    const there = other.results[row];
    if (
      typeof value !== "number" ||
      typeof there !== "number" ||
      Math.abs(value - there) > 1e-9 * Math.abs(value)
    )
      throw new Error(`${what}, row ${row + 1}: ${String(value)} and ${String(there)}`);
  });
}

/** Each in turn, some rounds, in a fresh engine and workbook each time. */
async function inTurn(columns: readonly Column[], most: number) {
  const rounds: Measured[][] = [];
  for (let round = 0; round < most; round++) {
    const one: Measured[] = [];
    for (const column of columns) one.push(await measured(column));
    assertSame(one[0]!, one[1]!, `${columns[0]!.what} and ${columns[1]!.what}`);
    rounds.push(one);
  }
  return columns.map(({ what }, index) => ({
    what,
    first: median(rounds.map((round) => round[index]!.first)),
    edit: median(rounds.map((round) => round[index]!.edit)),
  }));
}

export async function grid(): Promise<Report> {
  const [nativeTook, own, trivial] = await inTurn(COLUMNS, ROUNDS);
  const [spill, single] = await inTurn(TRIALS, TRIAL_ROUNDS);
  const all = [nativeTook!, own!, trivial!, spill!, single!];
  const ratio = (what: string, value: number, atMost: number, of: string, floor: number) => ({
    what,
    value,
    unit: "×",
    atMost,
    least: { value: floor, what: of },
  });
  const least = "what a trivial formula takes";
  return {
    title: "Formula engine of the workbench",
    notes: [
      `${ROWS} rows, Univer's engine without a page, a fresh engine and workbook for each figure, medians of ${ROUNDS} rounds that take turns; DOSAGE.TRIAL ${TRIAL_ROUNDS} round. An edit changes one cell that all rows read. The engine waits ${ENGINE_WAITS_MS} ms before it calculates an edit; that is in every figure. The results of function and native formula, and of one call and single calls, agree to 1e-9.`,
    ],
    tables: [
      {
        caption: "seconds",
        columns: ["column", "first", "after an edit", "µs a row, first"],
        rows: all.map(({ what, first, edit }) => [what, first, edit, (first * 1e6) / ROWS]),
      },
    ],
    judged: [
      ratio(
        "Function : native, first",
        own!.first / nativeTook!.first,
        AGAINST_NATIVE,
        least,
        trivial!.first / nativeTook!.first,
      ),
      ratio(
        "Function : native, edit",
        own!.edit / nativeTook!.edit,
        AGAINST_NATIVE,
        least,
        trivial!.edit / nativeTook!.edit,
      ),
      ratio("Function : trivial, first", own!.first / trivial!.first, AGAINST_TRIVIAL, least, 1),
      ratio("Function : trivial, edit", own!.edit / trivial!.edit, AGAINST_TRIVIAL, least, 1),
      {
        what: "One call that spills : single calls, first",
        value: spill!.first / single!.first,
        unit: "×",
        atMost: 1,
      },
      {
        what: "One call that spills : single calls, edit",
        value: spill!.edit / single!.edit,
        unit: "×",
        atMost: 1,
      },
    ],
  };
}

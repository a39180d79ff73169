/**
 * Each function as Excel calls it against its arithmetic written by hand: nanoseconds a call, side by side.
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { runInThisContext } from "node:vm";
import { variedFrom, type Bare } from "./bare";
import { bareBottle } from "./bare-bottle";
import { bareDosage } from "./bare-dosage";
import { bareLabel } from "./bare-label";
import { barePressure } from "./bare-pressure";
import { bareTirage } from "./bare-tirage";
import { bareWords } from "./bare-words";
import { median } from "./clock";
import type { Report } from "./report";

const DIST = path.resolve(__dirname, "../../dist");
const ROUNDS = 15;
/** How many times a round goes round before it counts. */
const WARM = 5;
const MS_A_ROUND = 3;
/** Calls with inputs of their own; a power of two, so that going round is cheap. */
const ROWS = 256;
const EACH_AT_MOST = 3;
const ALL_AT_MOST = 2;

type Called = (...args: readonly unknown[]) => unknown;

/** The script that Excel loads, not its source: what it associates is what is called. */
function builtFunctions(): ReadonlyMap<string, Called> {
  const file = path.join(DIST, "functions.js");
  runInThisContext(readFileSync(file, "utf8"), { filename: file });
  const { associated } = (globalThis as unknown as { CustomFunctions: { associated: Map<string, Called> } })
    .CustomFunctions;
  return associated;
}

const flat = (result: unknown): unknown[] => (Array.isArray(result) ? result.flat(2) : [result]);

function isSame(one: unknown, other: unknown): boolean {
  const [left, right] = [flat(one), flat(other)];
  return (
    left.length === right.length &&
    left.every((value, index) => {
      const there = right[index];
      if (typeof value !== "number" || typeof there !== "number") return value === there;
      return Math.abs(value - there) <= 1e-9 * Math.max(1, Math.abs(value), Math.abs(there));
    })
  );
}

let kept: unknown;

/** One place from which everything is called, with a list of arguments, as Excel does; nothing is inlined into it. */
function run(called: Called, rows: readonly (readonly unknown[])[], calls: number): number {
  const start = performance.now();
  for (let call = 0; call < calls; call++) kept = called(...rows[call & (ROWS - 1)]!);
  return ((performance.now() - start) * 1e6) / calls;
}

/** Several times as much before, unmeasured: a function that was compiled for others' arguments is compiled anew meanwhile. */
function warm(called: Called, rows: Pair["adapterRows"], calls: number): number {
  run(called, rows, WARM * calls);
  return run(called, rows, calls);
}

interface Pair {
  readonly id: string;
  readonly adapter: Called;
  readonly bare: Called;
  readonly adapterRows: readonly (readonly unknown[])[];
  readonly bareRows: readonly (readonly unknown[])[];
  readonly found: { readonly adapter: number; readonly bare: number }[];
}

function paired({ id, bare, inputs }: Bare, adapter: Called | undefined): Pair {
  if (!adapter) throw new Error(`${id} is not among the functions`);
  const varied = variedFrom(id.length);
  const rows = Array.from({ length: ROWS }, () => inputs(varied));
  const invocation = {};
  for (const row of rows) {
    const [given, wanted] = [adapter(...row, invocation), (bare as Called)(...row)];
    if (!isSame(given, wanted))
      throw new Error(
        `${id}(${JSON.stringify(row)}): ${JSON.stringify(given)}, by hand ${JSON.stringify(wanted)}`,
      );
  }
  return {
    id,
    adapter,
    bare: bare as Called,
    // Excel passes its invocation as one argument more
    adapterRows: rows.map((row) => [...row, invocation]),
    bareRows: rows,
    found: [],
  };
}

export function functions(): Report {
  const built = builtFunctions();
  const all = [...bareTirage, ...bareBottle, ...bareLabel, ...barePressure, ...bareDosage, ...bareWords];
  const missing = [...built.keys()].filter((id) => !all.some((each) => each.id === id));
  if (missing.length > 0) throw new Error(`nothing by hand for ${missing.join(", ")}`);
  const pairs = all.map((each) => paired(each, built.get(each.id)));

  const calls = pairs.map(({ adapter, bare, adapterRows, bareRows }) => {
    const took = (called: Called, rows: Pair["adapterRows"]) => {
      run(called, rows, 2000);
      return Math.max(ROWS, Math.round((MS_A_ROUND * 1e6) / run(called, rows, 2000)));
    };
    return { adapter: took(adapter, adapterRows), bare: took(bare, bareRows) };
  });
  const nothing: number[] = [];
  const empty: Called = () => 0;
  // the first rounds compile
  for (let round = -3; round < ROUNDS; round++) {
    const none = run(empty, pairs[0]!.bareRows, 200_000);
    if (round >= 0) nothing.push(none);
    for (const [index, { adapter, bare, adapterRows, bareRows, found }] of pairs.entries()) {
      const took = {
        adapter: warm(adapter, adapterRows, calls[index]!.adapter),
        bare: warm(bare, bareRows, calls[index]!.bare),
      };
      if (round >= 0) found.push(took);
    }
  }
  if (kept === undefined) throw new Error("nothing was called");

  const call = median(nothing);
  const rows = pairs.map(({ id, found }) => {
    const [adapter, bare] = [
      median(found.map((each) => each.adapter)),
      median(found.map((each) => each.bare)),
    ];
    const ratio = median(found.map((each) => each.adapter / each.bare));
    return { id, adapter, bare, ratio, over: adapter - bare };
  });
  const ratios = rows.map(({ ratio }) => ratio);
  const slowest = rows.reduce((worst, each) => (each.ratio > worst.ratio ? each : worst));
  const pressure = rows.find(({ id }) => id === "TIRAGE.PRESSURE")!;
  return {
    title: "Functions",
    notes: [
      `dist/functions.js, each function called with a list of arguments, as Excel does, against the same arithmetic by hand in plain code without checks, called in the same way. ${ROWS} different calls in turn; the results of all of them agree to 1e-9. Medians of ${ROUNDS} rounds that take turns. An empty function called like this takes ${short1(call)} ns; that is in both columns.`,
    ],
    tables: [
      {
        caption: "ns a call, the dearest by comparison first",
        columns: ["function", "function ns", "by hand ns", "ratio", "more ns"],
        rows: [...rows]
          .sort((a, b) => b.ratio - a.ratio)
          .map(({ id, adapter, bare, ratio, over }) => [id, adapter, bare, ratio, over]),
      },
    ],
    judged: [
      { what: "Median of all ratios", value: median(ratios), unit: "×", atMost: ALL_AT_MOST, least: BY_HAND },
      {
        what: `Largest ratio, ${slowest.id}`,
        value: slowest.ratio,
        unit: "×",
        atMost: EACH_AT_MOST,
        least: BY_HAND,
        why: DEARER,
      },
      {
        what: "Functions above three times",
        value: ratios.filter((ratio) => ratio > EACH_AT_MOST).length,
        unit: "",
        atMost: 0,
        why: DEARER,
      },
      {
        what: "TIRAGE.PRESSURE",
        value: pressure.adapter,
        unit: "ns",
        least: { value: pressure.bare, what: "by hand, in the same run" },
      },
    ],
  };
}

const DEARER =
  "by hand a word or a sugar is compared without looking whether it is allowed, blank or written otherwise; that takes some 40 ns a call, in DOSAGE.TRIAL for each row. SUGAR.BRIX halves the span in the module's general way";
const BY_HAND = { value: 1, what: "as fast as by hand" };
const short1 = (value: number) => value.toFixed(1);

/**
 * The table of gauge readings in section On the lees: how far the fermentation has got, by plain rules.
 */
import { READING_KEYS, type ReadingKey } from "../../cellar/batch/cellar-book";
import { ABOVE_ALL, READING_RULES, READING_STATES } from "../../cellar/batch/plan-lees";
import { NITROGEN_AT_20C_BAR } from "../../cellar/constants";
import { domains } from "../../cellar/domains";
import {
  builtin,
  cell,
  equals,
  iff,
  isNumber,
  minus,
  mousse,
  nth,
  operation,
  range,
  times,
  type Expression,
} from "../formula";
import type { Row } from "../layout";
import {
  FORMATS,
  columnHeads,
  input,
  inputCell,
  placed,
  resultCell,
  text,
  expectedAt,
  spreadAt,
  wineAndBottle,
  type Batch,
  gap,
} from "./rows";

const dose = cell("plan_dose_gL");
const alcohol = input("baseWine.alcohol_vol");
const table = domains.gaugeTableC;
const { finishedShare, stuckDays, stuckRise } = READING_RULES;

export const readingRows = (batch: Batch): Row[] => [
  gap,
  columnHeads(
    "Gauge readings as they come",
    ">Day",
    ">Read, bar",
    ">At, °C",
    ">Fermented",
    ">At 20 °C, bar",
    ">… by table",
    "~State",
  ),
  ...READING_KEYS.map((key, index) => readingRow(key, index, batch)),
  {
    cells: [
      text(
        `finished: at least ${finishedShare * 100} % fermented. stuck: less, and up by less than ${stuckRise * 100} points on a line above that is ${stuckDays} days older or more. too high: above the spread (common practice, no source).`,
        "note",
      ),
    ],
  },
];

/** What stands for a figure that this bottle cannot have. */
const CANNOT_BE = "cannot be";

export const stateName = (key: ReadingKey) => `plan_reading_${key}_state`;
const shareName = (key: ReadingKey) => `plan_reading_${key}_share`;

function readingRow(key: ReadingKey, index: number, { inputs, plan }: Batch): Row {
  const { share, at20, at20ByTable, state } = plan.readings[key];
  const at = (which: string) => input(`readings.${key}.${which}`);
  const [bar, celsius] = [at("pressure_bar"), at("at_C")];
  const unlessUnread = (figure: Expression) =>
    iff(builtin("AND", isNumber(bar), isNumber(celsius)), figure, "");
  return {
    cells: [
      text(`Reading ${index + 1}`, "label"),
      inputCell(`readings.${key}.date`, inputs),
      inputCell(`readings.${key}.pressure_bar`, inputs),
      inputCell(`readings.${key}.at_C`, inputs),
      resultCell({
        name: shareName(key),
        value: share ?? CANNOT_BE,
        format: FORMATS.percent,
        formula: unlessUnread(
          iff(
            operation(bar, ">=", expectedAt(dose, celsius)),
            ABOVE_ALL,
            builtin(
              "IFERROR",
              mousse("TIRAGE.PROGRESS", bar, celsius, dose, alcohol, ...wineAndBottle),
              CANNOT_BE,
            ),
          ),
        ),
      }),
      resultCell({
        name: `plan_reading_${key}_at20_bar`,
        value: at20 ?? CANNOT_BE,
        format: FORMATS.two,
        formula: unlessUnread(
          builtin(
            "IFERROR",
            mousse(
              "PRESSURE.SHIFT",
              bar,
              celsius,
              20,
              cell("plan_alcoholAfter_vol"),
              0,
              input("tirage.headspace_pct"),
              NITROGEN_AT_20C_BAR,
            ),
            CANNOT_BE,
          ),
        ),
      }),
      resultCell({
        name: `plan_reading_${key}_at20ByTable_bar`,
        value: at20ByTable ?? `not ${table.min} to ${table.max}`,
        format: FORMATS.two,
        formula: unlessUnread(
          builtin("IFERROR", mousse("PRESSURE.AT20", bar, celsius), `not ${table.min} to ${table.max}`),
        ),
      }),
      resultCell({
        name: stateName(key),
        value: state,
        style: "verdict",
        formula: stateOf(key, READING_KEYS.slice(0, index), bar, celsius),
      }),
    ],
  };
}

function stateOf(
  key: ReadingKey,
  earlier: readonly ReadingKey[],
  bar: Expression,
  celsius: Expression,
): Expression {
  const { finished, working, stuck, tooHigh, check } = READING_STATES;
  const share = cell(shareName(key));
  const day = input(`readings.${key}.date`);
  const high = nth(spreadAt(dose, celsius), 3);
  const [first, last] = [earlier[0], earlier[earlier.length - 1]];
  const rests =
    first && last
      ? iff(
          isNumber(day),
          iff(operation(restsSince(first, last, day, share), ">", 0), stuck, working),
          working,
        )
      : working;
  const isTooEarly = builtin("AND", isNumber(day), operation(day, "<", input("batch.tirageDate")));
  return iff(
    equals(share, ""),
    "",
    iff(
      builtin("OR", equals(share, CANNOT_BE), isTooEarly),
      check,
      iff(
        equals(share, ABOVE_ALL),
        iff(operation(bar, ">", high), tooHigh, finished),
        iff(operation(share, ">=", finishedShare), finished, rests),
      ),
    ),
  );
}

/** How many lines above are old enough and hardly lower. */
function restsSince(first: ReadingKey, last: ReadingKey, day: Expression, share: Expression): Expression {
  const days = range(placed(`readings.${first}.date`).name, placed(`readings.${last}.date`).name);
  const shares = range(shareName(first), shareName(last));
  return builtin(
    "SUMPRODUCT",
    times(
      isNumber(days),
      isNumber(shares),
      operation(days, "<=", minus(day, stuckDays)),
      operation(shares, ">", minus(share, stuckRise)),
    ),
  );
}

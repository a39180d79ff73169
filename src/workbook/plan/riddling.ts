/**
 * Section Riddling: racks, dates, hours and the turns day by day.
 */
import type { Turn } from "../../cellar/riddling";
import { builtin, cell, iff, isBlank, minus, mousse, operation, plus, times } from "../formula";
import type { CellSpec, Row } from "../layout";
import { FORMATS, columnHeads, heading, input, inputRow, resultCell, resultRow, type Section } from "./rows";

const CHOICES = ["places", "days", "turnsPerDay", "bottlesPerHour", "wait_days"] as const;
/** As many turns as are shown; a longer riddling goes on beyond the sheet. */
const MOST_TURNS = 60;

const start = cell("plan_riddlingStart");
const turns = cell("plan_turns");
const schedule = mousse("RIDDLING.SCHEDULE", start, input("riddling.days"), input("riddling.turnsPerDay"));

export const riddlingSection: Section = (batch) => {
  const { riddling } = batch.plan;
  const shown = Math.min(riddling.turns, MOST_TURNS);
  return [
    ...heading("Riddling"),
    ...CHOICES.map((key) => inputRow(`riddling.${key}`, batch)),
    resultRow({
      name: "plan_racks",
      label: "Racks or cages",
      unit: "racks",
      format: FORMATS.whole,
      value: riddling.racks,
      formula: mousse("RIDDLING.RACKS", cell("plan_bottles"), input("riddling.places")),
    }),
    resultRow({
      name: "plan_riddlingStart",
      label: "First turn",
      format: FORMATS.date,
      value: riddling.start,
      formula: plus(minus(cell("plan_riddlingEnd"), input("riddling.days")), 1),
    }),
    resultRow({
      name: "plan_riddlingEnd",
      label: "Last turn",
      format: FORMATS.date,
      value: riddling.end,
      formula: minus(cell("plan_disgorging"), input("riddling.wait_days")),
      note: "counted back from the planned disgorging",
    }),
    resultRow({
      name: "plan_turns",
      label: "Turns of each bottle",
      unit: "turns",
      format: FORMATS.whole,
      value: riddling.turns,
      formula: times(input("riddling.days"), input("riddling.turnsPerDay")),
    }),
    resultRow({
      name: "plan_riddling_hours",
      label: "Hours of one person",
      unit: "h",
      format: FORMATS.one,
      value: riddling.hours,
      formula: iff(
        isBlank(input("riddling.bottlesPerHour")),
        "",
        mousse("RIDDLING.HOURS", cell("plan_bottles"), turns, input("riddling.bottlesPerHour")),
      ),
    }),
    resultRow({
      label: "Turns not shown below",
      unit: "turns",
      format: FORMATS.whole,
      value: riddling.turns - shown,
      formula: builtin("MAX", 0, minus(turns, shown)),
      note: "eighths of a turn, clockwise positive, from a mark at six o'clock (common practice)",
    }),
    ...scheduleRows(riddling.schedule, shown),
  ];
};

/** Two halves side by side, so that a fortnight takes seven lines. */
function scheduleRows(turnsPlanned: readonly Turn[], shown: number): Row[] {
  const half = Math.ceil(shown / 2);
  return [
    columnHeads("Turn", ">Day", ">Eighths", ">Rack, °", ">Turn", ">Day", ">Eighths", ">Rack, °"),
    ...Array.from({ length: half }, (_, index) => ({
      cells: [
        ...turnCells(index + 1, turnsPlanned, "label"),
        ...(half + index < shown ? turnCells(half + index + 1, turnsPlanned, "result") : []),
      ],
    })),
  ];
}

function turnCells(number: number, turnsPlanned: readonly Turn[], style: "label" | "result"): CellSpec[] {
  const turn = turnsPlanned[number - 1];
  const figure = (value: number | undefined, column: number, format: string) =>
    resultCell({
      // no answer where the first turn lies before the calendar begins
      value: value ?? "",
      format,
      formula: iff(
        operation(number, ">", turns),
        "",
        builtin("IFERROR", builtin("INDEX", schedule, number, column), ""),
      ),
    });
  return [
    { value: number, style, format: FORMATS.whole },
    figure(turn?.date, 1, FORMATS.date),
    figure(turn?.eighths, 3, "+0;-0;0"),
    figure(turn?.rackDegrees, 5, FORMATS.one),
  ];
}

/**
 * Riddling by hand: racks, the turns day by day, labour.
 *
 * The pattern is common practice, no source: a mark at six o'clock; the first turn an eighth one way, then a quarter
 * the other way and back, turn after turn, while the rack goes from nearly flat to nearly upright.
 */
import { domains } from "./domains";
import { unanswerable } from "./refusal";
import { wholeUp } from "./whole";

/** Places in a rack, 60 a side (read). */
export const RACK_PLACES = 120;
/** Rack against the floor at the first and at the last turn, ° (common practice, no source). */
export const FLATTEST_DEGREES = 15;
export const STEEPEST_DEGREES = 75;
const EIGHTHS_FIRST = 1;
const EIGHTHS_AFTER = 2;

export interface Turn {
  readonly date: number;
  /** From 1. */
  readonly number: number;
  /** Eighths of a turn, clockwise positive. */
  readonly eighths: number;
  /** Where the mark stands afterwards, eighths clockwise from six o'clock. */
  readonly mark: number;
  readonly rackDegrees: number;
}

export function riddlingSchedule(startDate: number, days: number, turnsPerDay: number): Turn[] {
  if (startDate + days - 1 > domains.dateSerial.max) {
    throw unanswerable(
      "start_date",
      startDate,
      `${days} days later lies beyond the calendar; give an earlier date`,
    );
  }
  const turns = days * turnsPerDay;
  const schedule: Turn[] = [];
  let mark = 0;
  for (let index = 0; index < turns; index++) {
    const direction = index % 2 === 0 ? 1 : -1;
    const eighths = direction * (index === 0 ? EIGHTHS_FIRST : EIGHTHS_AFTER);
    mark += eighths;
    schedule.push({
      date: Math.floor(startDate) + Math.floor(index / turnsPerDay),
      number: index + 1,
      eighths,
      mark,
      rackDegrees: FLATTEST_DEGREES + ((STEEPEST_DEGREES - FLATTEST_DEGREES) * index) / (turns - 1),
    });
  }
  return schedule;
}

export const racksNeeded = (bottles: number, places: number) => wholeUp(bottles / places);

export function riddlingHours(bottles: number, turns: number, bottlesPerHour: number): number {
  const hours = (bottles * turns) / bottlesPerHour;
  if (hours === Infinity) {
    throw unanswerable(
      "bottles_per_hour",
      bottlesPerHour,
      "more hours than can be counted; give a higher rate",
    );
  }
  return hours;
}

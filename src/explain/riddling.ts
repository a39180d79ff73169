/**
 * RIDDLING workings.
 */
import { USUAL } from "../cellar/constants";
import { isoFromSerial } from "../cellar/ageing";
import { domains } from "../cellar/domains";
import {
  FLATTEST_DEGREES,
  racksNeeded,
  riddlingHours,
  riddlingSchedule,
  STEEPEST_DEGREES,
} from "../cellar/riddling";
import { explainer } from "./notebook";
import { ARITHMETIC, COMMON_PRACTICE, RIDDLING_CARE } from "./sources";

const angle = (symbol: string, value: number, what: string) => ({
  symbol,
  value,
  unit: "°",
  what,
  source: COMMON_PRACTICE,
});

export const riddling = {
  "RIDDLING.SCHEDULE": explainer("start_date days turns_per_day", (on) => {
    const start = on.number("start_date", domains.dateSerial, "Day of the first turn");
    on.reworded("start_date", isoFromSerial(start));
    const days = on.optional("days", domains.riddlingDays, "[D] Days of riddling", USUAL.riddlingDays);
    const perDay = on.optional("turns_per_day", domains.turnsPerDay, "[j] Turns a day", USUAL.turnsPerDay);
    const turns = riddlingSchedule(start, days, perDay);
    const [first, second, last] = [turns[0]!, turns[1]!, turns.at(-1)!];
    on.step("Turns in all", "n = D·j", turns.length, "turns");
    on.found("A mark starts at six o'clock. The first turn, clockwise", first.eighths, "eighths of a turn");
    on.found(
      "Every later turn is twice as far, the other way and back. The second",
      second.eighths,
      "eighths of a turn",
    );
    on.constant(angle("α0", FLATTEST_DEGREES, "rack against the floor at the first turn"));
    on.constant(angle("α1", STEEPEST_DEGREES, "rack against the floor at the last turn"));
    on.step(
      "The rack goes from nearly flat to nearly upright in equal steps of",
      "i = (α1 − α0)/(n − 1)",
      second.rackDegrees - first.rackDegrees,
      "°",
    );
    on.found("The last turn is on", last.date, "", isoFromSerial(last.date));
    return {
      result: turns.map(({ date, number, eighths, mark, rackDegrees }) => [
        date,
        number,
        eighths,
        mark,
        rackDegrees,
      ]),
      unit: "rows of date, turn, eighths of a turn, mark in eighths from six o'clock, rack angle °",
      sources: [COMMON_PRACTICE],
      cautions: [RIDDLING_CARE],
    };
  }),

  "RIDDLING.RACKS": explainer("bottles places", (on) => {
    const bottles = on.number("bottles", domains.bottles, "[n] Bottles to riddle");
    const places = on.optional("places", domains.places, "[R1] Places in a rack", "R1");
    const result = racksNeeded(bottles, places);
    on.step("Racks, rounded up: the last may stand partly empty", "r = ⌈n/R1⌉", result, "racks");
    return { result, unit: "whole racks", sources: [ARITHMETIC] };
  }),

  "RIDDLING.HOURS": explainer("bottles turns bottles_per_hour", (on) => {
    const bottles = on.number("bottles", domains.bottles, "[n] Bottles to riddle");
    const turns = on.number("turns", domains.turns, "[j] Turns of each");
    const rate = on.number(
      "bottles_per_hour",
      domains.bottlesPerHour,
      "[r] Bottles that one person turns in an hour",
    );
    const result = riddlingHours(bottles, turns, rate);
    on.step("Every bottle at every turn, at that rate", "w = n·j/r", result, "h");
    return { result, unit: "hours", sources: [ARITHMETIC] };
  }),
};
